"""Slips that go with knives: the customer's stub, the handle tags, the summary after a close-out."""

from datetime import datetime

from queueboard.papers.text import boxes_to_tick, page, section
from queueboard.phrases.cautions import FOR_CUSTOMERS, NO_ADVICE
from queueboard.phrases.closing import settled_words
from queueboard.phrases.counts import box_sum_words
from queueboard.phrases.dates import date_words, many, promise_date_words, time_words
from queueboard.phrases.knives import knife_name
from queueboard.phrases.money import money
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.gone import GoneBox

_ONES = (
    *("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
    *("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


def count_in_words(count: int) -> str:
    """A count spelled out, 0 to 999: thirteen, twenty-one, four hundred seventeen."""
    if count < 20:
        return _ONES[count]
    if count < 100:
        return _TENS[count // 10] + (f"-{_ONES[count % 10]}" if count % 10 else "")
    rest = f" {count_in_words(count % 100)}" if count % 100 else ""
    return f"{_ONES[count // 100]} hundred{rest}"


def stub(box: BoxPicture, picture: Picture) -> str:
    """The customer's stub: box, count in figures and words, what it comes with, the date told, the price as known."""
    counted = box.box.counted if box.sum.plain else box.sum.on_hand
    later = "" if box.sum.plain else box_sum_words(box.sum)
    beyond = f"{len(box.apart)} of them beyond your note: we ask before we begin it" if box.apart else ""
    today = picture.now.date()
    held = box.promise
    price = (f"{money(box.price_cents, picture.settings)}, without work found later",) if box.price_cents else ()
    lines = (
        picture.settings.name,
        f"BOX {box.box.number}",
        f"{many(counted, 'knife')} ({count_in_words(counted)})" if box.box.opened else "not opened yet, not counted",
        *filter(None, (later, beyond)),
        *(f"comes with: {thing.name}" for thing in box.things),
        promise_date_words(held, today, box.box.goes_by) if held is not None else "no date told",
        *price,
        f"received {date_words(box.box.received_at.astimezone(picture.now.tzinfo).date(), today)}",
        "",
        "Sharpening takes metal off and may show. Tell us of cracks and loose handles.",
        "Dates and prices are estimates; the shop may decline a knife.",
    )
    return page(lines)


def handle_tags(box: BoxPicture, picture: Picture) -> str:
    """One tag for each knife, to be cut apart: number, kind, wish, day, first word of the name; no phone, no price."""
    first_name = box.customer.name.split(" ", maxsplit=1)[0]
    due = date_words(box.ship_by.date(), picture.now.date()) if box.ship_by is not None else ""
    parts = []
    for knife in box.knives:
        parts += [f"-- {knife.tag} --", *([due] if due else []), knife_name(knife, picture.settings)]
        parts += [f"WISH: {knife.wish}"] if knife.wish else []
        parts += [first_name, ""]
    return page(parts)


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
        section("MONEY", (money(gone.price_cents, settings), settled_words(gone, settings))),
        section("PLEASE", FOR_CUSTOMERS),
        ("", NO_ADVICE, _signed(gone, at)),
    )


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
