"""The sheet of a day's end, as text and as plain data."""

from datetime import datetime

from queueboard.figures.evening import DoneBox, WayMoney
from queueboard.papers.facts import Fact
from queueboard.papers.text import RULE_WIDTH, boxes_to_tick, page, section
from queueboard.phrases.cautions import END_OF_DAY, NO_ADVICE
from queueboard.phrases.evening import (
    OVER,
    belt_low_words,
    done_sum_words,
    done_words,
    dust_words,
    evening_title,
    label_soon_words,
    labels_soon,
    moved_words,
    not_done_words,
    takings_words,
    to_call,
    tomorrow_words,
    unclosed_words,
    way_words,
)
from queueboard.shop.evening_seen import Evening, first_of_tomorrow, not_done
from queueboard.shop.picture import Picture
from queueboard.words import PayWay


def evening_sheet(seen: Evening, picture: Picture) -> str:
    """The whole day on paper; of a day that is over what was written down."""
    unclosed, note = unclosed_words(seen), seen.closed.note if seen.closed is not None else ""
    money = [way_words(one, picture.settings) for one in seen.money if _tells(one)]
    return page(
        (f"{picture.settings.name}, end of the day: {evening_title(seen)}", *((unclosed,) if unclosed else ())),
        section("NOTE", (note,) if note else ()),
        section("DONE", (done_sum_words(seen), *(done_words(one, seen) for one in seen.done))),
        _still_open(seen, picture),
        section("MOVED, AND WHO WAS TOLD", (moved_words(one, seen) for one in seen.moved), nothing="No date."),
        section("MONEY", (takings_words(seen, picture.settings), *money)),
        *(_ahead(seen, picture) if seen.is_today else (("", OVER),)),
        section("DUST TRAY", (dust_words(seen, picture.now),)),
        section("AT THE END OF THE DAY", boxes_to_tick(END_OF_DAY)),
        ("", NO_ADVICE, "", *(["." * RULE_WIDTH] * 3)),
    )


def _tells(one: WayMoney) -> bool:
    """Cash is always told; other ways where anything moved or was counted."""
    return one.way is PayWay.CASH or bool(one.payments) or one.count is not None


def _still_open(seen: Evening, picture: Picture) -> tuple[str, ...]:
    if seen.is_today:
        left = (not_done_words(box, picture.now) for box in not_done(picture))
        return section("NOT DONE, AND DUE", boxes_to_tick(left), nothing="Nothing: all that was due is done.")
    count = "nobody closed the day" if seen.closed is None else f"{seen.closed.not_done} when the day was closed"
    return section("NOT DONE, AND DUE", (f"Boxes: {count}.",))


def _ahead(seen: Evening, picture: Picture) -> tuple[tuple[str, ...], ...]:
    first = first_of_tomorrow(picture)
    return (
        section(
            "RETURN LABELS, TODAY AND TOMORROW",
            boxes_to_tick(label_soon_words(due, picture) for due in labels_soon(picture)),
            nothing="None.",
        ),
        section(
            "BELTS LOW",
            (belt_low_words(place, picture.now) for place in seen.belts_low),
            nothing="None that is known of.",
        ),
        section("TO CALL", boxes_to_tick(said for _, said in to_call(picture)), nothing="Nobody."),
        section(
            "FIRST TOMORROW",
            (f"{place}. {tomorrow_words(knife, picture)}" for place, knife in enumerate(first, 1)),
            nothing="Nothing waits for the bench.",
        ),
    )


def evening_facts(seen: Evening, picture: Picture) -> dict[str, Fact]:
    """The same for scripts; what can be told only of the day that is now is null for another."""
    today = seen.is_today
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "currency": picture.settings.currency,
        "day": seen.day.isoformat(),
        "closed": None
        if seen.closed is None
        else {
            "at": seen.closed.at.isoformat(),
            "by": seen.closed.by,
            "not_done": seen.closed.not_done,
            "note": seen.closed.note,
        },
        "unclosed": None if seen.unclosed is None else seen.unclosed.isoformat(),
        "boxes_received": seen.received,
        "done": [_done(one, seen) for one in seen.done],
        "not_done": [box.box.number for box in not_done(picture)] if today else None,
        "moved": [
            {
                "number": seen.boxes[one.now.box_id].number,
                "from_day": one.before.day.isoformat(),
                "to_day": one.now.day.isoformat(),
                "told_to": one.now.told_to,
                "told_at": one.now.told_at.isoformat(),
                "told_by": one.now.told_by,
                "reason": one.now.reason,
            }
            for one in seen.moved
        ],
        "money": [_way(one, picture.now) for one in seen.money],
        "labels": [picture.box_by_id(due.box_id).box.number for due in labels_soon(picture)] if today else None,
        "belts_low": [{"process": place.process, "step": place.step} for place in seen.belts_low] if today else None,
        "to_call": [box.box.number for box, _ in to_call(picture)] if today else None,
        "first_tomorrow": [knife.tag for knife in first_of_tomorrow(picture)] if today else None,
        "dust": _dust(seen),
    }


def _done(one: DoneBox, seen: Evening) -> dict[str, Fact]:
    return {
        "number": seen.boxes[one.box_id].number,
        "customer": seen.customer_of(one.box_id).name,
        "ready": [knife.tag for knife in one.ready],
        "gone": [knife.tag for knife in one.gone],
        "closed": seen.boxes[one.box_id].closed_at is not None,
    }


def _way(one: WayMoney, now: datetime) -> dict[str, Fact]:
    count = one.count
    return {
        "way": one.way.value,
        "in_cents": one.in_cents,
        "back_cents": one.back_cents,
        "change_cents": one.there_before_cents,
        "should_cents": one.should_cents,
        "counted_cents": None if count is None else count.counted_cents,
        "counted_by": None if count is None else count.by,
        "counted_at": None if count is None else count.at.astimezone(now.tzinfo).isoformat(),
        "difference_cents": one.difference_cents,
    }


def _dust(seen: Evening) -> dict[str, Fact] | None:
    tray = seen.dust
    if tray is None:
        return None
    return {
        "at": tray.at.isoformat(),
        "by": tray.by,
        "again_from": tray.again_from(seen.second_look_minutes).astimezone(tray.at.tzinfo).isoformat(),
        "again_at": None if tray.again_at is None else tray.again_at.isoformat(),
        "again_by": tray.again_by or None,
    }
