"""Days, times, ages and lateness in the shop's words. English names are written out: no locale of a machine decides."""

from datetime import date, datetime, time

from queueboard.phrases.typed import MONTHS, WEEKDAYS
from queueboard.values.box import Promise
from queueboard.values.plan import BoxForecast
from queueboard.words import GoesBy, Lateness, PromiseKind

_NEAR_DAYS = 6
"""As far as a weekday's name alone can mean only one day."""
_YEAR_WANTED_DAYS = 300
"""From here on a date without its year could be taken for one nearer by."""

WILL = {
    PromiseKind.DAY: "be in hand by",
    PromiseKind.BY_TIME: "be ready by",
    PromiseKind.SHIPS_BY: "leave by",
    PromiseKind.WAITS: "be ready while you wait, by",
    PromiseKind.NEXT_ROUND: "come on the round of",
}
"""Each kind of promise behind would, will, to and can."""


def date_words(day: date, today: date) -> str:
    """Thu 3 Dec; with the year when it is far from *today*."""
    year = f" {day.year}" if abs((day - today).days) >= _YEAR_WANTED_DAYS else ""
    return f"{WEEKDAYS[day.weekday()][:3]} {day.day} {MONTHS[day.month - 1][:3]}{year}"


def day_words(day: date, today: date) -> str:
    """The day as it is said: today, tomorrow, yesterday, Saturday (within six days), else Thu 3 Dec."""
    days = (day - today).days
    if days in {-1, 0, 1}:
        return ("yesterday", "today", "tomorrow")[days + 1]
    return WEEKDAYS[day.weekday()] if 0 < days <= _NEAR_DAYS else date_words(day, today)


def time_words(moment: time | datetime) -> str:
    """16:00, by the 24-hour clock."""
    return f"{moment.hour:02}:{moment.minute:02}"


def when_words(moment: datetime, now: datetime) -> str:
    """Today 16:00, Saturday 16:00, Thu 3 Dec 16:00; both in the shop's zone."""
    return f"{day_words(moment.date(), now.date())} {time_words(moment)}"


def ship_by_word(ship_by: datetime | None, now: datetime) -> str:
    """The word behind a box: LATE, TODAY, TOMORROW, Sat (within six days), Thu 3 Dec, or no date."""
    if ship_by is None:
        return "no date"
    return Lateness.LATE.value if ship_by.timestamp() < now.timestamp() else day_word(ship_by.date(), now.date())


def day_word(day: date, today: date) -> str:
    """A day from today on as a short word: TODAY, TOMORROW, Sat (within six days), Thu 3 Dec."""
    days = (day - today).days
    if days <= 1:
        return ("TODAY", "TOMORROW")[days]
    return WEEKDAYS[day.weekday()][:3] if days <= _NEAR_DAYS else date_words(day, today)


def promise_words(promise: Promise | None, today: date, goes_by: GoesBy = GoesBy.PARCEL) -> str:
    """In hand by Friday (ready by Friday at the counter); ready by today 16:00; ships by Thu 3 Dec; no date told."""
    if promise is None:
        return "no date told"
    clock = f" {time_words(promise.at)}" if promise.at is not None else ""
    return f"{kind_words(promise.kind, goes_by)} {day_words(promise.day, today)}{clock}"


def kind_words(kind: PromiseKind, goes_by: GoesBy) -> str:
    """What is promised; a day at the counter is the day it is ready, not the day it is in the customer's hands."""
    at_counter = kind is PromiseKind.DAY and goes_by is GoesBy.PICK_UP
    return PromiseKind.BY_TIME.value if at_counter else kind.value


def will_words(kind: PromiseKind, goes_by: GoesBy) -> str:
    """What is promised behind would, will, to or can: be in hand by, leave by; a day at the counter as kind_words."""
    at_counter = kind is PromiseKind.DAY and goes_by is GoesBy.PICK_UP
    return WILL[PromiseKind.BY_TIME if at_counter else kind]


def promise_date_words(promise: Promise, today: date, goes_by: GoesBy = GoesBy.PARCEL) -> str:
    """The promise by its date, for paper that lasts longer than a day: in hand by Fri 27 Nov."""
    clock = f" {time_words(promise.at)}" if promise.at is not None else ""
    return f"{kind_words(promise.kind, goes_by)} {date_words(promise.day, today)}{clock}"


def told_words(promise: Promise, now: datetime, goes_by: GoesBy = GoesBy.PARCEL) -> str:
    """One line of the history of what was told: the promise by its date, who was told, when and by whom, and why."""
    to = f", told to {promise.told_to}" if promise.told_to else ", told"
    why = f": {promise.reason}" if promise.reason else ""
    told_on = when_words(promise.told_at.astimezone(now.tzinfo), now)
    return f"{promise_date_words(promise, now.date(), goes_by)}{to} {told_on} by {promise.told_by}{why}"


def minutes_words(minutes: int) -> str:
    """Clock minutes as they are said: 45 min, 2 h 10 min, 1 day 4 h, 3 days."""
    if minutes < 60:
        return f"{minutes} min"
    hours, rest = divmod(minutes, 60)
    if hours < 24:
        return f"{hours} h {rest} min" if rest else f"{hours} h"
    days, hours = divmod(hours, 24)
    said = many(days, "day")
    return f"{said} {hours} h" if hours else said


def lateness_words(forecast: BoxForecast) -> str:
    """LATE by 2 h 10 min; WILL BE LATE by at least 1 day 4 h, with no end in sight; TIGHT; empty when on time."""
    if forecast.lateness is Lateness.ON_TIME:
        return ""
    least = "at least " if forecast.is_without_end else ""
    by = f" by {least}{minutes_words(forecast.late_minutes)}" if forecast.late_minutes > 0 else ""
    return f"{forecast.lateness.value}{by}"


def done_by_words(forecast: BoxForecast, now: datetime) -> str:
    """Done by tomorrow 09:40; nothing left for the bench; not within the days planned ahead."""
    if forecast.finish is not None:
        return f"done by {when_words(forecast.finish.astimezone(now.tzinfo), now)}"
    return "not within the days planned ahead" if forecast.is_without_end else "nothing left for the bench"


def age_words(since: datetime, now: datetime) -> str:
    """How long ago: 12 min, 5 h (the same day), 1 day, 3 days (by the calendar)."""
    days = (now.date() - since.astimezone(now.tzinfo).date()).days
    if days > 0:
        return many(days, "day")
    minutes = max(0, int(now.timestamp() - since.timestamp()) // 60)
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h"


def saved_words(saved_at: datetime | None) -> str:
    """Saved 14:02:31; nothing saved yet."""
    return f"Saved {time_words(saved_at)}:{saved_at.second:02}" if saved_at is not None else "nothing saved yet"


def many(count: int, thing: str) -> str:
    """A count with its noun: 1 knife, 3 knives, 2 boxes, 4 days."""
    if count == 1:
        return f"{count} {thing}"
    if thing.endswith("knife"):
        return f"{count} {thing[:-2]}ves"
    return f"{count} {thing}es" if thing.endswith(("x", "s")) else f"{count} {thing}s"
