"""Going back and forth by working days."""

from collections.abc import Callable
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from queueboard.calendar.counting import FURTHEST, on_or_after, on_or_before, working_days_from
from tests.calendars import YEAR

FRIDAY = date(2026, 11, 27)


def on(weekdays: frozenset[int]) -> Callable[[date], bool]:
    """Working days that are these weekdays."""
    return lambda day: day.weekday() in weekdays


WEEK = on(frozenset(range(5)))
WORKING = st.frozensets(st.integers(0, 6), min_size=1)


def test_a_weekend_is_stepped_over() -> None:
    """From Friday the next working day is Monday, and from Monday one back is Friday."""
    assert working_days_from(FRIDAY, 1, WEEK) == date(2026, 11, 30)
    assert working_days_from(date(2026, 11, 30), -1, WEEK) == FRIDAY
    assert on_or_before(date(2026, 11, 29), WEEK) == FRIDAY
    assert on_or_after(date(2026, 11, 28), WEEK) == date(2026, 11, 30)


def test_a_year_without_work_ends_the_search() -> None:
    """Where no day works, the search ends a year away instead of never."""
    assert on_or_before(FRIDAY, lambda _: False) == FRIDAY - timedelta(days=FURTHEST)
    assert on_or_after(FRIDAY, lambda _: False) == FRIDAY + timedelta(days=FURTHEST)


@given(YEAR, st.integers(0, 30), WORKING)
def test_back_undoes_forth(day: date, count: int, weekdays: frozenset[int]) -> None:
    """From a working day, so many working days forth and as many back lead to where it began."""
    start = on_or_after(day, on(weekdays))

    assert working_days_from(working_days_from(start, count, on(weekdays)), -count, on(weekdays)) == start


@given(YEAR, st.integers(0, 30), WORKING)
def test_each_step_is_one_working_day(day: date, count: int, weekdays: frozenset[int]) -> None:
    """Between a day and the count-th working day after it lie exactly that many working days."""
    end = working_days_from(day, count, on(weekdays))

    between = [day + timedelta(days=n) for n in range(1, (end - day).days + 1)]
    assert sum(1 for candidate in between if on(weekdays)(candidate)) == count
