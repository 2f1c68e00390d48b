"""What is ready and not fetched, in words: days, place, what was told and how, what is due."""

from collections.abc import Sequence
from datetime import date

from queueboard.phrases.dates import date_words, many
from queueboard.phrases.messages import CHECK_LAW
from queueboard.phrases.money import box_owed_words
from queueboard.settings.shapes import Settings
from queueboard.shelf_words import MessageSort
from queueboard.shop.picture import Picture
from queueboard.shop.shelving import ShelfBox
from queueboard.values.shelf import Notice

NOTHING_WAITS = "Nothing is ready and waits to be fetched."
UNPAID, PAID = "READY, NOT PAID", "PAID, NOT FETCHED"


def shelf_groups(shelf: Sequence[ShelfBox]) -> tuple[tuple[str, tuple[ShelfBox, ...]], ...]:
    """Those with money still to come, then those that are paid, each the longest on the shelf first; no empty group."""
    unpaid = tuple(one for one in shelf if one.box.owed_cents > 0)
    paid = tuple(one for one in shelf if one.box.owed_cents <= 0)
    return tuple(group for group in ((UNPAID, unpaid), (PAID, paid)) if group[1])


def shelf_line(one: ShelfBox, picture: Picture) -> str:
    """402 94 days, 47.00 EUR to pay, NOTICE 2 DUE, CHECK LOCAL LAW FIRST, at C4; whose it is stands behind."""
    days = many(one.days, "day") if one.days else "today"
    said = (
        f"{one.box.box.number} {days}",
        box_owed_words(one.box, picture.settings),
        due_words_of(one),
        CHECK_LAW.upper() if one.too_long else "",
        f"at {one.box.box.place}" if one.box.box.place else "no place noted",
    )
    return ", ".join(filter(None, said))


def due_words_of(one: ShelfBox) -> str:
    """NOTICE 2 DUE; empty while none is."""
    return "" if one.notice_due is None else f"NOTICE {one.notice_due} DUE"


def since_words(one: ShelfBox, today: date) -> str:
    """Five knives ready since Mon 3 Aug, in figures; what was told since, oldest first."""
    told = notices_words(one.notices, today)
    count = many(len(one.box.on_hand), "knife")
    return f"{count} ready since {date_words(one.since.date(), today)}; {told or 'nobody was told yet'}"


def notices_words(notices: Sequence[Notice], today: date) -> str:
    """Told Mon 10 Aug by text (MB), Mon 24 Aug by call (MB); empty for none."""
    return ", ".join(f"{'' if place else 'told '}{notice_words(notice, today)}" for place, notice in enumerate(notices))


def notice_words(notice: Notice, today: date) -> str:
    """Mon 10 Aug by text: not fetched (MB)."""
    sort = "" if notice.sort is MessageSort.UNCLAIMED else f": {notice.sort.value}"
    return f"{date_words(notice.told_at.date(), today)} by {notice.way.value}{sort} ({notice.told_by})"


def shelf_sum(shelf: Sequence[ShelfBox]) -> str:
    """Six boxes, four not paid, two notices due, one longer than the shop's own days."""
    if not shelf:
        return NOTHING_WAITS
    counted = (
        (sum(one.box.owed_cents > 0 for one in shelf), "not paid"),
        (sum(one.notice_due is not None for one in shelf), "with a notice due"),
        (sum(one.too_long for one in shelf), "longer than the shop's own days"),
    )
    return ", ".join((many(len(shelf), "box"), *(f"{count} {what}" for count, what in counted if count)))


def rule_words(settings: Settings) -> str:
    """Notices after 7, 21 and 42 days; longer than 60 days: check local law first."""
    days = settings.shelf.notice_days
    due = f"Notices are due {_and(days)} days after a box is ready" if days else "No notices are due by the shop's days"
    return f"{due}; longer than {settings.shelf.long_days} days on the shelf: {CHECK_LAW}."


def _and(days: Sequence[int]) -> str:
    *first, last = map(str, days)
    return f"{', '.join(first)} and {last}" if first else last
