"""A market day as text and as plain data: what was typed of it, its tags, and what is brought to the next one."""

from collections.abc import Sequence

from queueboard.papers.facts import Fact
from queueboard.papers.large import large
from queueboard.papers.text import NARROW, boxes_to_tick, page, section
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.market import (
    BRING,
    NOTHING_TO_BRING,
    NOTHING_TYPED,
    SWITCHED_OFF,
    MarketDay,
    SeenLine,
    bring_words,
    line_words,
    sums_words,
    tags_words,
    who_words,
)
from queueboard.shop.market import brought_to_market, next_market
from queueboard.shop.picture import BoxPicture, Picture


def market_sheet(day: MarketDay, picture: Picture, *, taken: bool) -> str:
    """What was typed, gaps and doubles of the tags, what it comes to; and what is brought to the next market."""
    if not picture.settings.market.on:
        return page((SWITCHED_OFF,))
    today = picture.now.date()
    coming = next_market(picture.settings, today)
    bring = brought_to_market(picture)
    due = "no market day is to come" if coming is None else f"next market {date_words(coming[0], today)}"
    state = "taken in" if taken else "not taken in yet"
    typed = section(f"TYPED {date_words(day.pad.day, today)}, {state}", (_line(seen, day) for seen in day.lines))
    sums = (*tags_words(day), sums_words(day, picture.settings)) if day.lines else ()
    knives = sum(len(box.on_hand) for box in bring)
    head = f"{BRING}, {many(knives, 'knife')}" if bring else BRING
    to_bring = section(head, boxes_to_tick(bring_words(box, today) for box in bring), nothing=NOTHING_TO_BRING)
    return page((f"Market stall · {due}",), typed or ("", NOTHING_TYPED), section("TAGS AND SUMS", sums), to_bring)


def printed_tags(numbers: Sequence[int]) -> str:
    """Tags to be printed before the market, each large, to be cut apart; nothing but the number stands on one."""
    return page(*(("", *large(f"{number}", NARROW), "", "-" * NARROW) for number in numbers))


def market_facts(day: MarketDay, picture: Picture, *, taken: bool) -> dict[str, Fact]:
    """The same as plain data; without lines and boxes while the shop has no stall."""
    coming = next_market(picture.settings, picture.now.date())
    on = picture.settings.market.on
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "currency": picture.settings.currency,
        "on": on,
        "day": day.pad.day.isoformat(),
        "taken_in": taken,
        "next_market": None if coming is None else coming[0].isoformat(),
        "tags": {
            "first": day.first,
            "last": day.last,
            "used": list(day.tags.used),
            "gaps": list(day.tags.gaps),
            "left": list(day.tags.left),
            "twice": list(day.tags.duplicates),
            "not_printed": list(day.tags.not_printed),
        },
        "lines": [_line_facts(seen) for seen in day.lines] if on else [],
        "bring": [_bring_facts(box) for box in brought_to_market(picture)] if on else [],
    }


def _line(seen: SeenLine, day: MarketDay) -> str:
    if seen.line is None:
        return line_words(seen, day)
    tag = "-" if seen.line.tag is None else f"{seen.line.tag}"
    return f"{tag}  {len(seen.line.knives)}  {who_words(seen.line)}: {line_words(seen, day)}"


def _line_facts(seen: SeenLine) -> Fact:
    line, customer = seen.line, seen.customer
    return {
        "text": seen.kept.text,
        "trouble": seen.trouble,
        "tag": None if line is None else line.tag,
        "knives": 0 if line is None else len(line.knives),
        "stays": 0 if line is None else line.stays,
        "name": "" if line is None else line.name,
        "phone": "" if line is None else line.phone,
        "known": None if customer is None else customer.name,
        "price_cents": seen.cents,
        "paid_cents": seen.paid_cents,
    }


def _bring_facts(box: BoxPicture) -> Fact:
    customer = box.customer
    return {
        "number": box.box.number,
        "customer": {"name": customer.name, "phone": customer.phone, "town": customer.town},
        "day": None if box.promise is None else box.promise.day.isoformat(),
        "knives": len(box.on_hand),
        "ready": box.ready_count,
        "owed_cents": box.owed_cents,
    }
