"""Days, times, ages and lateness in words."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.phrases.dates import (
    age_words,
    date_words,
    day_words,
    done_by_words,
    lateness_words,
    many,
    minutes_words,
    promise_words,
    saved_words,
    ship_by_word,
    told_words,
    when_words,
)
from queueboard.phrases.typed import WEEKDAYS, parse_day
from queueboard.words import GoesBy, Lateness, PromiseKind
from tests.pictures import NOW, TODAY, ZONE, at, forecast, promise


@pytest.mark.parametrize(
    ("moment", "word"),
    [
        (at(9, 11), "LATE"),
        (at(16, days=-1), "LATE"),
        (at(9, 12), "TODAY"),
        (at(15, 45), "TODAY"),
        (at(0, 0, days=1), "TOMORROW"),
        (at(15, 45, days=2), "Sat"),
        (at(15, 45, days=6), "Wed"),
        (at(15, 45, days=7), "Thu 3 Dec"),
        (at(15, 45, days=299), "Tue 21 Sep"),
        (at(15, 45, days=300), "Wed 22 Sep 2027"),
        (None, "no date"),
    ],
)
def test_a_ship_by_has_its_word(moment: datetime | None, word: str) -> None:
    """A ship-by is LATE, TODAY, TOMORROW, a weekday within six days, or a date, with its year when far away."""
    assert ship_by_word(moment, NOW) == word


def test_a_ship_by_in_the_hour_that_comes_twice_is_late_by_the_clock_that_really_ran() -> None:
    """On the night the clocks go back, 02:30 for the second time is after 02:30 for the first time."""
    first = datetime(2026, 10, 25, 2, 30, tzinfo=ZONE)
    second = first.replace(fold=1)

    assert ship_by_word(first, second) == "LATE"
    assert ship_by_word(second, first) == "TODAY"
    assert age_words(first, second) == "1 h"


@pytest.mark.parametrize(
    ("days", "words"),
    [(-1, "yesterday"), (0, "today"), (1, "tomorrow"), (2, "Saturday"), (6, "Wednesday"), (-3, "Mon 23 Nov")],
)
def test_a_day_is_said_as_people_say_it(days: int, words: str) -> None:
    """Near days have names, the past beyond yesterday has dates."""
    assert day_words(TODAY + timedelta(days=days), TODAY) == words


@given(st.integers(2, 6), st.dates(date(2020, 1, 1), date(2040, 1, 1)))
def test_a_weekday_said_and_typed_back_is_the_same_day(ahead: int, today: date) -> None:
    """What the board calls Saturday, a person can type as Saturday."""
    day = today + timedelta(days=ahead)

    assert parse_day(day_words(day, today), today) == day


@given(st.dates(date(2000, 1, 1), date(2100, 1, 1)), st.dates(date(2000, 1, 1), date(2100, 1, 1)))
def test_a_date_always_has_weekday_day_and_month(day: date, today: date) -> None:
    """The weekday in a date is that of the calendar, in English on any machine."""
    weekday, number, _month = date_words(day, today).split()[:3]

    assert WEEKDAYS[day.weekday()].startswith(weekday)
    assert int(number) == day.day


def test_promises_are_said_by_their_kind() -> None:
    """A day at the counter is a day it is ready; a parcel's is in hand; a time of day is said with it."""
    by_day = promise(TODAY + timedelta(days=1))
    by_time = promise(TODAY, kind=PromiseKind.BY_TIME, at=time(16))
    ships = promise(date(2026, 12, 3), kind=PromiseKind.SHIPS_BY)

    assert promise_words(by_day, TODAY) == "in hand by tomorrow"
    assert promise_words(by_day, TODAY, GoesBy.PICK_UP) == "ready by tomorrow"
    assert promise_words(by_time, TODAY, GoesBy.PICK_UP) == "ready by today 16:00"
    assert promise_words(ships, TODAY) == "ships by Thu 3 Dec"
    assert promise_words(None, TODAY) == "no date told"


def test_what_was_told_keeps_who_when_and_why() -> None:
    """A line of the promise's history holds the date, who was told, when, by whom and the reason."""
    told = promise(told_to="Maren", told_at=NOW - timedelta(days=1), reason="belts came late")

    assert told_words(told, NOW) == "in hand by Fri 27 Nov, told to Maren yesterday 09:12 by MB: belts came late"


@pytest.mark.parametrize(
    ("minutes", "words"),
    [
        (0, "0 min"),
        (59, "59 min"),
        (60, "1 h"),
        (130, "2 h 10 min"),
        (1440, "1 day"),
        (1680, "1 day 4 h"),
        (4325, "3 days"),
    ],
)
def test_a_stretch_of_time_is_said_in_its_own_size(minutes: int, words: str) -> None:
    """Minutes under an hour, hours under a day, then days with hours."""
    assert minutes_words(minutes) == words


@pytest.mark.parametrize(
    ("since", "words"),
    [
        (NOW, "0 min"),
        (NOW - timedelta(minutes=12), "12 min"),
        (at(4), "5 h"),
        (at(23, 59, days=-1), "1 day"),
        (at(10, days=-3), "3 days"),
        (NOW + timedelta(minutes=5), "0 min"),
        ((NOW - timedelta(minutes=12)).astimezone(UTC), "12 min"),
    ],
)
def test_an_age_counts_days_by_the_calendar(since: datetime, words: str) -> None:
    """Since yesterday's evening it is one day; a clock set back never gives a negative age."""
    assert age_words(since, NOW) == words


def test_lateness_says_by_how_much() -> None:
    """LATE and WILL BE LATE carry their minutes; on time says nothing."""
    late = forecast(lateness=Lateness.LATE, late_minutes=130)
    soon = forecast(lateness=Lateness.WILL_BE_LATE, late_minutes=1680)

    assert lateness_words(late) == "LATE by 2 h 10 min"
    assert lateness_words(soon) == "WILL BE LATE by 1 day 4 h"
    assert lateness_words(forecast()) == ""
    assert lateness_words(replace(soon, finish=None, minutes_left=30)) == "WILL BE LATE by at least 1 day 4 h"


def test_the_finish_is_said_even_when_there_is_none() -> None:
    """A finish has its time; no work and work too far ahead are told apart."""
    assert done_by_words(forecast(finish=at(9, 40, days=1)), NOW) == "done by tomorrow 09:40"
    assert done_by_words(forecast(), NOW) == "nothing left for the bench"
    assert done_by_words(forecast(minutes_left=9), NOW) == "not within the days planned ahead"


def test_saved_shows_seconds() -> None:
    """The time of the last save has its seconds, and a new file says that nothing is saved."""
    assert saved_words(at(14, 2).replace(second=31)) == "Saved 14:02:31"
    assert saved_words(None) == "nothing saved yet"


@pytest.mark.parametrize(
    ("count", "thing", "words"),
    [
        (1, "knife", "1 knife"),
        (2, "knife", "2 knives"),
        (0, "box", "0 boxes"),
        (3, "day", "3 days"),
        (2, "run", "2 runs"),
    ],
)
def test_counts_carry_their_noun(count: int, thing: str, words: str) -> None:
    """One is singular; knives and boxes have their own plurals."""
    assert many(count, thing) == words


@given(st.datetimes(datetime(2026, 1, 1), datetime(2027, 12, 31)))  # noqa: DTZ001 - the zone is set below
def test_when_is_never_without_a_clock_time(naive: datetime) -> None:
    """Any moment is said with hour and minute of the wall clock."""
    moment = naive.replace(tzinfo=ZONE)

    assert when_words(moment, NOW).endswith(f" {moment.hour:02}:{moment.minute:02}")


def test_today_s_own_name_is_asked_back_rather_than_said() -> None:
    """Since Thursday typed on a Thursday is in doubt, a Thursday in a week is never said by its name alone."""
    assert day_words(TODAY + timedelta(days=7), TODAY) == "Thu 3 Dec"
    with pytest.raises(TypedError):
        parse_day("Thursday", TODAY)
