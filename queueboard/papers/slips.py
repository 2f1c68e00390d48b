"""Slips that go with knives: the customer's stub, the handle tags, the summary after a close-out."""

from datetime import date, datetime

from queueboard.clean import cell_text
from queueboard.papers.large import large
from queueboard.papers.text import NARROW, boxes_to_tick, cut_to, page, section, wrapped
from queueboard.phrases.bill import sums_words
from queueboard.phrases.cautions import FOR_CUSTOMERS, NO_ADVICE
from queueboard.phrases.closing import settled_words
from queueboard.phrases.counts import box_sum_words, count_in_words
from queueboard.phrases.dates import date_words, many, promise_date_words, time_words
from queueboard.phrases.knives import found_words, knife_name, wish_in_capitals
from queueboard.phrases.money import money, owed_words
from queueboard.phrases.typed import WEEKDAYS
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.values.gone import GoneBox

_TITLES = frozenset({"mr", "mrs", "ms", "mx", "miss", "dr", "prof", "herr", "frau"})

TERMS = (
    "Sharpening takes metal off and may show. Tell us of cracks and loose handles.",
    "Dates and prices are estimates; the shop may decline a knife.",
)
"""What the customer agrees to, under every stub."""


def stub(box: BoxPicture, picture: Picture, width: int = NARROW) -> str:
    """The customer's stub: box, count in figures and words, what it comes with, the date told, the price as known.

    No line is wider than *width* columns; the customer's name is not on it, for stubs get lost.
    """
    lines = (f"BOX {box.box.number}", *stub_lines(box, picture), "-" * width, *TERMS, *phone_lines(picture.settings))
    head = (*wrapped(picture.settings.name, width), "", *large(f"{box.box.number}", width), "")
    return page(head, (part for line in lines for part in wrapped(line, width)))


def stub_lines(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    """What the stub says beside the number of the box and the terms."""
    today, settings, held = picture.now.date(), picture.settings, box.promise
    count = len(box.knives) if box.sum.plain else box.sum.on_hand
    knives = f"{count}, {count_in_words(count)} {'knife' if count == 1 else 'knives'}"
    later = "" if box.sum.plain else box_sum_words(box.sum)
    beyond = f"{len(box.apart)} of them beyond your note: we ask before we begin it" if box.apart else ""
    return (
        knives if box.box.opened else "not opened yet, not counted",
        *filter(None, (later, beyond)),
        *(f"comes with: {thing.name}" for thing in box.things),
        promise_date_words(held, today, box.box.goes_by) if held is not None else "no date told",
        *_told(box, settings),
        f"received {date_words(box.box.received_at.astimezone(picture.now.tzinfo).date(), today)}",
    )


def phone_lines(settings: Settings) -> tuple[str, ...]:
    """The shop's own phone, where it has written one."""
    return (f"Ask us: {settings.papers.phone}",) if settings.papers.phone else ()


def _told(box: BoxPicture, settings: Settings) -> tuple[str, ...]:
    """What it is said to come to: its parts, the sum, what was paid of it, the most that was agreed."""
    limit = box.box.not_above_cents
    lines = (
        sums_words(box.totals, settings),
        f"{money(box.price_cents, settings)}, without work found later" if box.price_cents else "",
        f"{money(box.paid_cents, settings)} paid, {owed_words(box.owed_cents, settings)}" if box.paid_cents else "",
        f"not above {money(limit, settings)} without your yes" if limit is not None else "",
    )
    return tuple(line for line in lines if line)


@dataclass(frozen=True, slots=True, kw_only=True)
class TagWords:
    """What stands on one handle tag; no phone, no address, no price."""

    tag: str
    name: str
    """The first name."""
    says: tuple[str, ...]
    """Kind and length, what the lamp showed, the wish in capitals, the weekday by which it is due."""


def tag_words(box: BoxPicture, picture: Picture, *, only: int | None = None) -> tuple[TagWords, ...]:
    """The words of one tag for each knife, or for one number only."""
    due = "" if box.ship_by is None else _weekday(box.ship_by.date(), picture.now.date())
    name, settings = cell_text(name_on_tag(box.customer.name)), picture.settings
    return tuple(
        TagWords(
            tag=knife.tag,
            name=name,
            says=tuple(filter(None, (knife_name(knife, settings), found_words(knife), wish_in_capitals(knife), due))),
        )
        for knife in box.knives
        if only in (None, knife.number)
    )


def handle_tags(box: BoxPicture, picture: Picture, width: int = NARROW, *, only: int | None = None) -> str:
    """One tag for each knife, or for one number only, to be cut apart: no phone, no price, nothing wider than *width*.

    The tag large, the first name, kind and length, the wish in capitals, the weekday by which it is due.
    """
    parts: list[str] = []
    for one in tag_words(box, picture, only=only):
        parts += ["-" * width, *large(one.tag, width), "", one.tag, *wrapped(cut_to(one.name, width), width)]
        parts += [part for line in one.says for part in wrapped(line, width)]
    return page((*parts, "-" * width))


def _weekday(day: date, today: date) -> str:
    """The day as it is read on a handle: due THURSDAY, 26 Nov."""
    weekday, dated = WEEKDAYS[day.weekday()].upper(), date_words(day, today).partition(" ")[2]
    return f"due {weekday}, {dated}"


def name_on_tag(name: str) -> str:
    """The first name, or what can stand for it: behind a title or an initial the next word; else the name itself."""
    words = name.split()
    called = [word for word in words if word.rstrip(".").casefold() not in _TITLES and len(word.rstrip(".")) > 1]
    return (called or words)[0]


def gone_summary(gone: GoneBox, settings: Settings) -> str:
    """The summary printed after a close-out, to lie in the box: what left, what did not and why, money, cautions."""
    at = gone.at.astimezone(settings.zone)
    whole = "" if gone.closed else " (a part of it)"
    return page(
        (settings.name, f"BOX {gone.box.number}{whole}, {gone.customer.name}"),
        section("IN THIS BOX", boxes_to_tick(_left(gone, settings))),
        section("NOT SHARPENED", _declined(gone)),
        section("STAYS WITH US", (f"{knife.tag} {knife_name(knife, settings)}" for knife in gone.staying)),
        section("WE ARE LOOKING FOR", _missing(gone, settings)),
        section("MONEY", _money(gone, settings)),
        section("PLEASE", FOR_CUSTOMERS),
        ("", NO_ADVICE, _signed(gone, at)),
    )


def _money(gone: GoneBox, settings: Settings) -> tuple[str, ...]:
    """What it is made of, what it comes to, what was paid, how it was left."""
    sums = sums_words(gone.totals, settings)
    paid = gone.totals.paid_cents
    lines = (
        sums,
        "" if sums else money(gone.totals.total_cents, settings),
        f"{money(paid, settings)} paid" if 0 < paid != gone.totals.total_cents else "",
        settled_words(gone, settings),
    )
    return tuple(line for line in lines if line)


def _left(gone: GoneBox, settings: Settings) -> list[str]:
    knives = [f"{knife.tag} {knife_name(knife, settings)}" for knife in gone.knives]
    return [f"{many(len(knives), 'knife')} ({count_in_words(len(knives))})", *knives, *(t.name for t in gone.things)]


def _declined(gone: GoneBox) -> list[str]:
    return [f"{knife.tag}: {knife.declined.value}" for knife in gone.knives if knife.declined is not None]


def _missing(gone: GoneBox, settings: Settings) -> list[str]:
    """What is looked for; why the box went without it is the shop's own note and not printed."""
    knives = [f"{knife.tag} {knife_name(knife, settings)}" for knife in gone.missing]
    return knives + [thing.name for thing in gone.missing_things]


def _signed(gone: GoneBox, at: datetime) -> str:
    handed = f", handed to {gone.handed_to}" if gone.handed_to else ""
    return f"{date_words(at.date(), at.date())} {at.year} {time_words(at)}, {gone.by}{handed}"
