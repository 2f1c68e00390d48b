"""Days and months that are over, as they are typed."""

from datetime import date

import pytest

from queueboard.errors import TypedError
from queueboard.phrases.typed_figures import parse_month, parse_past_day

TODAY = date(2026, 11, 26)


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("today", date(2026, 11, 26)),
        (" Yesterday ", date(2026, 11, 25)),
        ("mon", date(2026, 11, 23)),
        ("friday", date(2026, 11, 20)),
        ("2026-11-09", date(2026, 11, 9)),
        ("9.11.2026", date(2026, 11, 9)),
        ("9 nov 2025", date(2025, 11, 9)),
    ],
)
def test_a_day_is_read_backwards(typed: str, day: date) -> None:
    """A weekday is the last one, a date has its year."""
    assert parse_past_day(typed, TODAY) == day


@pytest.mark.parametrize(
    "typed", ["", "thu", "tomorrow", "+3", "9.11", "2026-11-27", "1020-01-01", "\x1b[31m", "２０２６-11-09"]
)
def test_what_is_no_past_day_is_refused(typed: str) -> None:
    """The future, today's weekday, dates without a year and nonsense get a sentence."""
    with pytest.raises(TypedError, match="ype"):
        parse_past_day(typed, TODAY)


@pytest.mark.parametrize(
    ("typed", "month"),
    [
        ("2026-11", date(2026, 11, 1)),
        ("2026-9", date(2026, 9, 1)),
        ("nov", date(2026, 11, 1)),
        ("dec", date(2025, 12, 1)),
        ("November 2025", date(2025, 11, 1)),
    ],
)
def test_a_month_is_read_backwards(typed: str, month: date) -> None:
    """A name without a year is the last such month, this one included."""
    assert parse_month(typed, TODAY) == month


def test_a_refused_month_is_said_as_it_was_typed() -> None:
    """A year of noughts keeps its four figures in the sentence."""
    with pytest.raises(TypedError, match=r"^0000-01 is not one"):
        parse_month("0000-01", TODAY)


@pytest.mark.parametrize("typed", ["", "2026-12", "2026-13", "2026-0", "dec 2026", "11", "n", "1020-01", "foo"])
def test_what_is_no_past_month_is_refused(typed: str) -> None:
    """Months to come and nonsense get a sentence."""
    with pytest.raises(TypedError, match="Type it like"):
        parse_month(typed, TODAY)
