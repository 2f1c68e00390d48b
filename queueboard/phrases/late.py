"""Boxes that are late, will be, or are tight, in words; one key deeper how likely that is and what can be told."""

from datetime import datetime

from queueboard.phrases.boxes import box_done_words, due_words, in_the_way, ready_words, until_found_words
from queueboard.phrases.dates import date_words, lateness_words, many, promise_words, when_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.plan import BoxForecast, Overload
from queueboard.words import GoesBy, Lateness, PromiseKind

ASK_FIRST = "put off once already: ask before its date moves again"
_WORST_FIRST = tuple(Lateness)


def late_boxes(picture: Picture) -> tuple[BoxPicture, ...]:
    """Boxes that are late, then those that will be, then the tight ones; each the worst first."""
    late = (box for box in picture.boxes if box.forecast.lateness is not Lateness.ON_TIME)
    return tuple(sorted(late, key=lambda box: _badness(box.forecast)))


def _badness(forecast: BoxForecast) -> tuple[int, int, int]:
    return _WORST_FIRST.index(forecast.lateness), -forecast.late_minutes, forecast.slack_minutes or 0


def slack_words(forecast: BoxForecast) -> str:
    """12 bench min to spare; 130 bench min short; empty where nothing is left for the bench or nothing was told."""
    if forecast.slack_minutes is None:
        return ""
    kind = "to spare" if forecast.slack_minutes >= 0 else "short"
    return f"{abs(forecast.slack_minutes)} bench min {kind}"


def late_parts(box: BoxPicture, now: datetime) -> tuple[str, ...]:
    """How late a box is or will be and what it has to spare, its ship-by, how far it is, and what is in the way."""
    told = ", ".join(filter(None, (lateness_words(box.forecast), slack_words(box.forecast))))
    way = "; ".join((in_the_way(box, now), *((ASK_FIRST,) if asks_first(box) else ())))
    return told, due_words(box, now), ready_words(box), way


def asks_first(box: BoxPicture) -> bool:
    """True for a late box whose date has moved once already and would have to again."""
    return box.put_off and box.forecast.lateness in (Lateness.LATE, Lateness.WILL_BE_LATE)


def late_words(box: BoxPicture, now: datetime) -> str:
    """One late box: 417 LATE by 2 h 10 min, ship by yesterday 15:45, 3 of 5 ready, 1 looked for: its name."""
    return f"{box.box.number} {', '.join(late_parts(box, now))}: {box.customer.name}"


def received_words(forecast: BoxForecast) -> str:
    """What is said of a box just taken in that will be late, or is tight; empty when its date stands safely."""
    word = lateness_words(forecast)
    if forecast.lateness is Lateness.TIGHT:
        return f"{word}: the day list holds the date told, with little to spare. A later one is safer: Enter, then p."
    honest = "the day list does not hold the date told. Tell an honest one while the customer is here: Enter, then p."
    return f"{word}: {honest}" if word else ""


def added_words(tag: str, box: BoxPicture, now: datetime) -> str:
    """What is said once a knife came later: 301-6 is added: 6 knives here. Told: ready by Fri 13 Nov; it holds."""
    here = f"{tag} is added: {many(len(box.on_hand), 'knife')} here."
    if box.promise is None:
        return f"{here} No date is told."
    told = f"Told: {promise_words(box.promise, now.date(), box.box.goes_by)}"
    late = lateness_words(box.forecast)
    if box.forecast.lateness is Lateness.ON_TIME:
        return f"{here} {told}; it still holds."
    if box.forecast.lateness is Lateness.TIGHT:
        return f"{here} {told}; it holds with little to spare."
    return f"{here} {told}; it does not hold any more ({late}). p tells a later one, or let the others go first."


def overload_words(overload: Overload, now: datetime) -> str:
    """Overloaded by 600 min before Friday 15:45."""
    return f"overloaded by {overload.minutes} min before {when_words(overload.before.astimezone(now.tzinfo), now)}"


def heaviest_overload_words(picture: Picture) -> str:
    """The heaviest overload of the plan, the first of equals; empty when the bench can bear what was promised."""
    heaviest = max(picture.plan.overloads, key=lambda overload: overload.minutes, default=None)
    return "" if heaviest is None else overload_words(heaviest, picture.now)


def percent_words(permille: int) -> str:
    """A chance: 23 %, over 99 %, under 1 %; never nought or a hundred."""
    if permille > 990:
        return "over 99 %"
    return "under 1 %" if permille < 10 else f"{(permille + 5) // 10} %"


def chance_words(permille: int) -> str:
    """The chance of being late: 23 % likely to be late."""
    return f"{percent_words(permille)} likely to be late"


def earliest_words(box: BoxPicture, now: datetime) -> str:
    """In hand Sun 29 Nov at the earliest, with the carrier's days; ships by, or ready, as it was told; empty on time.

    The day list's own day, with nothing kept free: what can be told is asked for with the promise.
    """
    if box.forecast.lateness in (Lateness.LATE, Lateness.WILL_BE_LATE) and box.only_lost_left:
        return until_found_words(box)
    if box.honest_day is None:
        return ""
    by_shipping = box.promise is not None and box.promise.kind is PromiseKind.SHIPS_BY
    word = "ready" if box.box.goes_by is GoesBy.PICK_UP else "ships by" if by_shipping else "in hand"
    return f"{word} {date_words(box.honest_day, now.date())} at the earliest"


def outlook_lines(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    """One key deeper: how likely it is late, or what overloads the bench; when it is done; what can be told."""
    now = picture.now
    doubt, slack, earliest = _doubt(box, picture), slack_words(box.forecast), earliest_words(box, now)
    return (
        *((doubt,) if doubt else ()),
        " · ".join(filter(None, (slack, box_done_words(box, now)))),
        *((f"{earliest} (p: what can be told)",) if earliest else ()),
    )


def _doubt(box: BoxPicture, picture: Picture) -> str:
    """The chance of being late; while the bench is overloaded that instead, since a chance would mislead."""
    overloads = picture.plan.overloads
    if overloads:
        due = box.ship_by
        told = [one for one in overloads if due is not None and one.before <= due]
        return overload_words((told or list(overloads[:1]))[-1], picture.now)
    if box.forecast.lateness is Lateness.LATE or box.forecast.late_permille is None:
        return ""
    return chance_words(box.forecast.late_permille)
