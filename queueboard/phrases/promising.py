"""What can be told at the counter, with the sum that leads to it: the earliest day, yes or no to a day, room left."""

from collections.abc import Sequence
from datetime import date, datetime

from queueboard.phrases.announced import expected_words
from queueboard.phrases.dates import (
    date_words,
    done_by_words,
    kind_words,
    lateness_words,
    many,
    minutes_words,
    time_words,
)
from queueboard.phrases.late import earliest_words, overload_words, percent_words
from queueboard.phrases.week import room_words
from queueboard.shop.picture import BoxPicture
from queueboard.shop.quoting import Answer, Late, Offer
from queueboard.shop.wishing import Advice, Wish, days_on_the_way
from queueboard.values.new import Unseen
from queueboard.words import GoesBy, PromiseKind

BEYOND = "earliest: beyond the days planned ahead; no day can be told"
_MOST_SHUT = 2
"""Days shut that are named in a sum; more are counted."""
_MOST_NAMED = 3
"""Boxes that are named in one sentence; the others are counted."""


def advice_lines(advice: Advice, now: datetime) -> tuple[str, ...]:
    """The offer, its sum, then the answer to the day wished for; without one the room that is left.

    A person's text may end the last line: for a literal place only.
    """
    offer, today = advice.offer, now.date()
    told: tuple[str, ...] = (BEYOND,)
    if offer is not None:
        told = offer_words(advice, offer, now), reckoned_words(advice, now)
    if advice.answer is None:
        return (*told, room_words(advice.room_today, advice.room_tomorrow))
    return (*told, answer_words(advice, advice.answer, today))


def offer_words(advice: Advice, offer: Offer, now: datetime) -> str:
    """Earliest: in hand by Fri 13 Nov (98 % sure), behind box 417; when overloaded that, and no chance."""
    kind = kind_words(PromiseKind.BY_TIME if advice.wish.kind.has_time else advice.wish.kind, advice.wish.goes_by)
    doubt = overload_words(advice.overloads[0], now) if advice.overloads else sure_words(offer.sure_permille)
    behind = "" if offer.binds is None else f", behind box {offer.binds}"
    comes = "" if advice.wish.unseen is None else f", {comes_words(advice.wish.unseen, now.date())}"
    return f"earliest{comes}: {kind} {date_words(advice.day_to_tell or offer.day, now.date())} ({doubt}){behind}"


def reckoned_words(advice: Advice, now: datetime) -> str:
    """The sum behind what is told, as it is kept with the date; empty where no day will do."""
    if advice.offer is None:
        return ""
    return sum_words(advice.offer, days_on_the_way(advice.wish), now.date())


def comes_words(unseen: Unseen, today: date) -> str:
    """On what the date of a box nobody has opened rests: if it comes by Thu 12 Nov; if it came today; by a guess."""
    if unseen.here:
        return "by a guess, not opened yet"
    on = unseen.comes_on
    return "if it came today" if on is None or on < today else f"if it comes by {date_words(on, today)}"


def sum_words(offer: Offer, carrier_days: int, today: date) -> str:
    """Open 120 + this box 25 + to spare 95 (60 kept free) = 240 bench min · 180 a day · shut Sun 29 Nov · + 1 day.

    What stands between the bench and the day told follows: days shut, days on the way, days for safety.
    """
    before = offer.open_minutes + offer.own_minutes + offer.spare_minutes
    work = f"open {offer.open_minutes} + this box {offer.own_minutes}"
    parts = (
        f"{work} + to spare {offer.spare_minutes} ({offer.kept_minutes} kept free) = {before} bench min",
        f"{offer.day_minutes} a day",
        shut_words(offer.closed, today),
        many(carrier_days, "carrier day") if carrier_days else "",
        f"+ {many(offer.safety_days, 'day')} for safety" if offer.safety_days else "",
    )
    return " · ".join(part for part in parts if part)


def shut_words(days: Sequence[date], today: date) -> str:
    """Shut Sun 29 Nov, Mon 30 Nov; shut 5 days; empty when it opens every day."""
    if len(days) > _MOST_SHUT:
        return f"shut {many(len(days), 'day')}"
    return f"shut {', '.join(date_words(day, today) for day in days)}" if days else ""


def answer_words(advice: Advice, answer: Answer, today: date) -> str:
    """Fri 13 Nov: yes, 97 % sure; Fri 13 Nov: no, and what it would cost whom."""
    wished = wish_words(advice.wish, today)
    if not answer.yes:
        return f"{wished}: no, {_why_not(answer, today)}"
    return f"{wished}: yes" if advice.overloads else f"{wished}: yes, {sure_words(answer.sure_permille)}"


def wish_words(wish: Wish, today: date) -> str:
    """The day wished for: Fri 13 Nov; today 16:00 has its time."""
    day = "" if wish.day is None else date_words(wish.day, today)
    return day if wish.at is None else f"{day} {time_words(wish.at)}"


def wish_box_words(wish: Wish) -> str:
    """5 knives, pick-up; 5 knives, parcel, 3 carrier days."""
    days = f", {many(wish.carrier_days, 'carrier day')}" if wish.goes_by is GoesBy.PARCEL else ""
    return f"{many(len(wish.knives), 'knife')}, {wish.goes_by.value}{days}"


def _why_not(answer: Answer, today: date) -> str:
    why = "" if answer.why is None else answer.why.value
    if answer.shut:
        opens = "" if answer.opens is None else f"; it opens again {date_words(answer.opens, today)}"
        return f"{why}: {answer.shut}{opens}"
    if answer.costs:
        return f"{why} {_costs_words(answer.costs)}"
    return why if answer.presses is None else f"{why} {answer.presses}"


def _costs_words(costs: Sequence[Late]) -> str:
    """Box 417 late by 2 h, box 420 by 40 min and 3 boxes more late: the customers' names come last."""
    named, more = costs[:_MOST_NAMED], len(costs) - _MOST_NAMED
    said = ", ".join(
        f"box {cost.number} {'' if place else 'late '}by {minutes_words(cost.minutes)}"
        for place, cost in enumerate(named)
    )
    rest = f" and {many(more, 'box')} more" if more > 0 else ""
    return f"{said}{rest} · {', '.join(cost.customer for cost in named)}"


def planned_words(box: BoxPicture, now: datetime) -> str:
    """The day list: done by today 14:30, 98 % sure to be on time; what will be late, and the earliest day, instead.

    A box that is only announced is in no day list: then what is expected.
    """
    if box.box.announced:
        return expected_words(box, now.date())
    done, forecast = f"the day list: {done_by_words(box.forecast, now)}", box.forecast
    if late := lateness_words(forecast):
        return ", ".join(filter(None, (f"{done}: {late}", earliest_words(box, now))))
    known = forecast.finish is not None and forecast.late_permille is not None
    return f"{done}, {sure_words(1000 - (forecast.late_permille or 0))} to be on time" if known else done


def sure_words(permille: int) -> str:
    """A chance as it is told: 98 % sure, over 99 % sure, under 1 % sure."""
    return f"{percent_words(permille)} sure"
