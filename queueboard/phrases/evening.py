"""The end of a day in words: what was done, what was not, what was moved, the money, the dust tray, the closing."""

from datetime import date, datetime, timedelta

from queueboard.clean import cell_text
from queueboard.figures.evening import DoneBox, Moved, WayMoney
from queueboard.phrases.announced import coming_words, not_come_boxes
from queueboard.phrases.boxes import ready_words, standing_words, until_found_words, waits_words
from queueboard.phrases.dates import date_words, day_word, lateness_words, many, promise_date_words, time_words
from queueboard.phrases.edges import belt_place_words
from queueboard.phrases.knives import knife_line, wish_in_capitals
from queueboard.phrases.labels import label_due_words, label_wants
from queueboard.phrases.money import amount, money
from queueboard.settings.shapes import Settings
from queueboard.shop.belt_counts import BeltPlace
from queueboard.shop.evening_seen import Evening, not_done, to_be_told
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife
from queueboard.values.label import LabelDue
from queueboard.words import LabelWord, PayWay, WaitingFor

NO_ALL_CLEAR = "A second look is not an all-clear: lidded metal bin outdoors, steel apart from everything else."
OVER = "What was due and not done, labels, belts and calls are told of the day that is now."
_TAGS_NAMED = 6
_SOON = (LabelWord.TOO_LATE, LabelWord.DIES_TODAY, LabelWord.DIES_TOMORROW, LabelWord.BUY_TODAY)
_ASKED = (WaitingFor.ESTIMATE, WaitingFor.COUNT, WaitingFor.MONEY, WaitingFor.LABEL)
"""What a customer can answer; belts, glue and parts are the shop's own affair."""


def evening_title(seen: Evening) -> str:
    """The day with its year and whether it is closed: Mon 9 Nov 2026, closed 17:41 by MB; ... not closed."""
    closed = seen.closed
    state = "not closed yet" if closed is None else f"closed {_when(closed.at, seen.day)} by {closed.by}"
    return f"{date_words(seen.day, seen.day)} {seen.day.year}, {state}"


def _when(at: datetime, day: date) -> str:
    return time_words(at) if at.date() == day else f"{date_words(at.date(), day)} {time_words(at)}"


def unclosed_words(seen: Evening) -> str:
    """The day before that nobody closed; empty where there is none."""
    return "" if seen.unclosed is None else f"{date_words(seen.unclosed, seen.day)} was not closed."


def done_sum_words(seen: Evening) -> str:
    """14 knives to ready in 5 boxes; 9 knives of 3 boxes gone; 4 boxes came in."""
    ready, gone = (sum(bool(box.ready) for box in seen.done), sum(bool(box.gone) for box in seen.done))
    return (
        f"{many(seen.ready_knives, 'knife')} to ready in {many(ready, 'box')}, "
        f"{many(seen.gone_knives, 'knife')} of {many(gone, 'box')} gone, {many(seen.received, 'box')} came in"
    )


def done_words(done: DoneBox, seen: Evening) -> str:
    """One box: 417 3 to ready (417-1, 417-2, 417-4), 9 gone, closed: name."""
    box = seen.boxes[done.box_id]
    said = (
        f"{len(done.ready)} to ready ({_tags(done.ready)})" if done.ready else "",
        f"{len(done.gone)} gone" if done.gone else "",
        "closed" if box.closed_at is not None else "",
    )
    return f"{box.number} {', '.join(filter(None, said))}: {cell_text(seen.customer_of(box.id).name)}"


def _tags(knives: tuple[Knife, ...]) -> str:
    named = ", ".join(knife.tag for knife in knives[:_TAGS_NAMED])
    return named if len(knives) <= _TAGS_NAMED else f"{named} and {len(knives) - _TAGS_NAMED} more"


def not_done_words(box: BoxPicture, now: datetime) -> str:
    """One box: 417 LATE by 2 h, 11 of 13 ready, parcel: name; 420 due by 16:00, ...."""
    late = lateness_words(box.forecast)
    due = f"due by {time_words(box.ship_by)}" if box.ship_by is not None and box.ship_by.date() == now.date() else ""
    parts = dict.fromkeys((late or due, ready_words(box), standing_words(box), box.box.goes_by.value))
    return f"{box.box.number} {', '.join(filter(None, parts))}: {cell_text(box.customer.name)}"


def moved_words(moved: Moved, seen: Evening) -> str:
    """One date: 417 from in hand by Fri 13 Nov to in hand by Tue 17 Nov, told to R. Tallis 11:20 by MB: why (name)."""
    box, before, now = seen.boxes[moved.now.box_id], moved.before, moved.now
    told = f"told to {cell_text(now.told_to)}" if now.told_to else "nobody named who was told"
    why = f"; {cell_text(now.reason)}" if now.reason else ""
    return (
        f"{box.number} from {promise_date_words(before, seen.day, box.goes_by)} "
        f"to {promise_date_words(now, seen.day, box.goes_by)}, {told} {time_words(now.told_at)} by {now.told_by}{why}: "
        f"{cell_text(seen.customer_of(box.id).name)}"
    )


def way_words(one: WayMoney, settings: Settings) -> str:
    """One way: cash 145.00 EUR should be there (100.00 change, 50.00 in, 5.00 back); counted 144.50: 0.50 MISSING."""
    parts = (
        f"{amount(one.there_before_cents)} change" if one.there_before_cents else "",
        f"{amount(one.in_cents)} in",
        f"{amount(one.back_cents)} back" if one.back_cents else "",
    )
    verb = "should be there" if one.way is PayWay.CASH else "should have come"
    should = f"{money(one.should_cents, settings)} {verb} ({', '.join(filter(None, parts))})"
    return f"{one.way.value} {should}; {_counted_words(one)}"


def _counted_words(one: WayMoney) -> str:
    if one.count is None:
        return "not counted"
    said = f"counted {amount(one.count.counted_cents)} by {one.count.by}: {difference_words(one.difference_cents or 0)}"
    if one.came_since_cents:
        said += f"; {amount(one.came_since_cents)} moved since it was counted, count again"
    return said


def difference_words(cents: int) -> str:
    """It agrees; 0.50 MISSING; 0.50 too much."""
    if not cents:
        return "it agrees"
    return f"{amount(-cents)} MISSING" if cents < 0 else f"{amount(cents)} too much"


def takings_words(seen: Evening, settings: Settings) -> str:
    """All ways together: 86.00 EUR came in, 5.00 went back."""
    back = sum(one.back_cents for one in seen.money)
    went = f", {amount(back)} went back" if back else ""
    return f"{money(sum(one.in_cents for one in seen.money), settings)} came in{went}"


def dust_words(seen: Evening, now: datetime) -> str:
    """Dust tray not emptied yet; emptied 17:30 by MB, look again from 17:50 on, 12 min to go; looked at again 17:52."""
    tray, zone = seen.dust, now.tzinfo
    if tray is None:
        return "dust tray not emptied or wetted yet" if seen.is_today else "dust tray: nobody wrote that it was emptied"
    said = f"dust tray emptied or wetted and looked at {_when(tray.at.astimezone(zone), seen.day)} by {tray.by}"
    if tray.again_at is not None:
        return f"{said}, looked at again {_when(tray.again_at.astimezone(zone), seen.day)} by {tray.again_by}"
    again = tray.again_from(seen.second_look_minutes)
    left = -int((now - again).total_seconds() // 60)
    if left > 0:
        return f"{said}; look again from {time_words(again.astimezone(zone))} on, {left} min to go"
    return f"{said}; LOOK AGAIN NOW" if seen.is_today else f"{said}; nobody wrote that it was looked at again"


def belt_low_words(place: BeltPlace, now: datetime) -> str:
    """One step: plain P240 118 of about 100 knives WORN? since Tue 10 Nov, spares 5; 16 um spares 2 ORDER."""
    if place.belt is None:
        return f"{place.step}: spares {place.spares} ORDER"
    return f"{place.process}: {belt_place_words(place, now)}"


def labels_soon(picture: Picture) -> tuple[LabelDue, ...]:
    """The labels that are to be bought or used by tomorrow, the worst first."""
    tomorrow = picture.now.date() + timedelta(days=1)
    return tuple(due for due in picture.labels_due if _is_soon(due, picture.box_by_id(due.box_id), tomorrow))


def _is_soon(due: LabelDue, box: BoxPicture, tomorrow: date) -> bool:
    if due.word in _SOON:
        return True
    until = due.last_day or (None if box.ship_by is None else box.ship_by.date())
    return due.word is LabelWord.BUY and until is not None and until <= tomorrow


def label_soon_words(due: LabelDue, picture: Picture) -> str:
    """One label: 417 DIES TOMORROW; all ready: pack and hand over: name."""
    box = picture.box_by_id(due.box_id)
    said = f"{label_due_words(due, picture.now.date())}; {label_wants(due, picture)}"
    return f"{box.box.number} {said}: {cell_text(box.customer.name)}"


def to_call(picture: Picture) -> tuple[tuple[BoxPicture, str], ...]:
    """The customers who should hear something, with why; each box once."""
    said = {box.box.id: (box, _late_call(box, picture.now)) for box in to_be_told(picture)}
    for box in picture.boxes:
        if box.box.waiting_for in _ASKED or any(knife.waiting_for in _ASKED for knife in box.on_hand):
            said.setdefault(box.box.id, (box, _call(box, waits_words(box, picture.now))))
    for box in not_come_boxes(picture):
        said[box.box.id] = (box, cell_text(coming_words(box, picture.now)))
    return tuple(said.values())


def _late_call(box: BoxPicture, now: datetime) -> str:
    told = "" if box.promise is None else f", {promise_date_words(box.promise, now.date(), box.box.goes_by)}"
    honest = "" if box.honest_day is None else f", honest is {day_word(box.honest_day, now.date())}"
    found = f", {until}" if (until := until_found_words(box)) else honest
    return _call(box, f"{lateness_words(box.forecast)}{told}{found}")


def _call(box: BoxPicture, said: str) -> str:
    phone = f"{cell_text(box.customer.phone)}, " if box.customer.phone else ""
    return f"{box.box.number} {said}: {phone}{cell_text(box.customer.name)}"


def tomorrow_words(knife: Knife, picture: Picture) -> str:
    """One of tomorrow's first: 417-3 chef 20 cm, black handle, dull WISH: KEEP THE PATINA."""
    return f"{knife_line(knife, picture.settings)} ({knife.condition.value}) {wish_in_capitals(knife)}".rstrip()


def open_ends(seen: Evening) -> tuple[str, ...]:
    """What is asked back before a day is closed: money that nobody counted or that does not agree, the dust tray."""
    uncounted = [one.way.value for one in seen.money if one.count is None and one.payments]
    not_counted = (f"not counted: {', '.join(uncounted)}",) if uncounted else ()
    off = (f"{one.way.value} {difference_words(one.difference_cents)}" for one in seen.money if one.difference_cents)
    money_open = (*not_counted, *off)
    if seen.dust is None:
        return (*money_open, "the dust tray is not emptied")
    if seen.dust.again_at is None:
        return (*money_open, "the second look at the dust tray is still to come")
    return money_open


def closing_words(seen: Evening, picture: Picture) -> str:
    """How a day ends: 2 boxes not done, 1 date moved, 3 to call."""
    moved = many(len(seen.moved), "date")
    if not seen.is_today:
        return f"{moved} moved"
    return f"{many(len(not_done(picture)), 'box')} not done, {moved} moved, {len(to_call(picture))} to call"
