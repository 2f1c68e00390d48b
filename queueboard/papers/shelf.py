"""What is ready and not fetched, boxes that are gone, and messages: as plain text and as plain data."""

from collections.abc import Sequence

from queueboard.papers.facts import Fact
from queueboard.papers.text import page, section
from queueboard.phrases.messages import NOTHING_SENT, law_words
from queueboard.phrases.phone import gone_sentence_of
from queueboard.phrases.shelf import rule_words, shelf_groups, shelf_line, shelf_sum, since_words
from queueboard.settings.shapes import Settings
from queueboard.shelf_words import MessageSort
from queueboard.shop.picture import Picture
from queueboard.shop.shelving import ShelfBox
from queueboard.values.shelf import GoneSeen, Notice


def shelf_list(shelf: Sequence[ShelfBox], picture: Picture) -> str:
    """Every box on the shelf with days, place, money and what was told; names last, then the shop's own days."""
    settings, today = picture.settings, picture.now.date()
    groups = (
        section(
            heading,
            (
                line
                for one in boxes
                for line in (f"{shelf_line(one, picture)}: {one.box.customer.name}", f"    {since_words(one, today)}")
            ),
        )
        for heading, boxes in shelf_groups(shelf)
    )
    return page((shelf_sum(shelf),), *groups, ("", rule_words(settings), law_words(settings, today)))


def message_text(text: str, sort: MessageSort, settings: Settings, picture: Picture) -> str:
    """A message alone, so that it can be sent as it is; under a notice to fetch what the shop is to look up first."""
    law = ("", law_words(settings, picture.now.date())) if sort is MessageSort.UNCLAIMED else ()
    return page((text,), law)


def message_paper(text: str, sort: MessageSort, number: int, picture: Picture) -> str:
    """A message in a file, with what is no part of it below."""
    law = (law_words(picture.settings, picture.now.date()),) if sort is MessageSort.UNCLAIMED else ()
    return page((text,), ("", "-" * 40, f"Box {number}, {sort.value}. {NOTHING_SENT}", *law))


def gone_list(gone: Sequence[GoneSeen], picture: Picture) -> str:
    """One sentence to read aloud for each box that is gone; empty for none."""
    lines = [gone_sentence_of(one, picture.now, picture.settings) for one in gone]
    return page(lines) if lines else ""


def shelf_facts(shelf: Sequence[ShelfBox], picture: Picture) -> dict[str, Fact]:
    """The same as plain data, the longest on the shelf first."""
    settings = picture.settings
    return {
        "shop": settings.name,
        "now": picture.now.isoformat(),
        "currency": settings.currency,
        "notice_days": list(settings.shelf.notice_days),
        "long_days": settings.shelf.long_days,
        "law_last_checked": None if (day := settings.shelf.last_checked) is None else day.isoformat(),
        "boxes": [_on_shelf(one) for one in shelf],
    }


def message_facts(text: str, sort: MessageSort, number: int, picture: Picture) -> dict[str, Fact]:
    """A message as plain data."""
    unclaimed = sort is MessageSort.UNCLAIMED
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "number": number,
        "sort": sort.value,
        "text": text,
        "law": law_words(picture.settings, picture.now.date()) if unclaimed else None,
    }


def gone_facts(gone: GoneSeen, picture: Picture) -> dict[str, Fact]:
    """A box that is gone as plain data."""
    customer = gone.customer
    return {
        "number": gone.box.number,
        "customer": {"name": customer.name, "phone": customer.phone, "town": customer.town},
        "left_at": gone.left_at.isoformat(),
        "knives": len(gone.left),
        "goes_by": gone.box.goes_by.value,
        "handed_to": gone.handed_to,
        "carrier": gone.carrier,
        "settled": None if gone.settled is None else gone.settled.value,
        "owed_cents": gone.owed_cents,
        "said": gone_sentence_of(gone, picture.now, picture.settings),
    }


def _on_shelf(one: ShelfBox) -> dict[str, Fact]:
    customer = one.box.customer
    return {
        "number": one.box.box.number,
        "customer": {"name": customer.name, "phone": customer.phone, "town": customer.town},
        "ready_since": one.since.isoformat(),
        "days": one.days,
        "place": one.box.box.place,
        "knives": len(one.box.on_hand),
        "owed_cents": one.box.owed_cents,
        "notices": [_notice(notice) for notice in one.notices],
        "notice_due": one.notice_due,
        "too_long": one.too_long,
    }


def _notice(notice: Notice) -> dict[str, Fact]:
    return {
        "sort": notice.sort.value,
        "way": notice.way.value,
        "told_at": notice.told_at.isoformat(),
        "told_by": notice.told_by,
    }
