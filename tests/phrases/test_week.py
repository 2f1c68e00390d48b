"""The load of a day as a bar and in words."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from queueboard.phrases.bars import FREE, FULL
from queueboard.phrases.week import BAR, due_words, load_bar, load_words
from queueboard.shop.quoting import DayLoad


def load(there: int = 180, planned: int = 60, due: int = 0, closed: str = "") -> DayLoad:
    """A Thursday."""
    return DayLoad(day=date(2026, 11, 26), there_minutes=there, planned_minutes=planned, due_minutes=due, closed=closed)


def test_a_day_says_what_is_booked_of_what_is_there() -> None:
    """Booked, free, full, over, closed with the reason, and what is due."""
    assert load_words(load()) == "60 of 180 min booked, 120 free"
    assert load_words(load(planned=180)) == "180 of 180 min booked, full"
    assert load_words(load(there=0, planned=0)) == "no bench time"
    assert load_words(load(there=0, planned=0, closed="the fair")) == "CLOSED · the fair"
    assert load_words(load(there=0, planned=0, closed="closed on Sundays")) == "CLOSED on Sundays"
    assert due_words(load(due=40)) == "40 min of work due"
    assert due_words(load()) == ""


@given(there=st.integers(1, 900), share=st.floats(0, 1), most=st.integers(1, 900))
def test_the_bar_tells_empty_from_begun_and_full_from_nearly_full(there: int, share: float, most: int) -> None:
    """Something booked shows, and room shows wherever the bar has two cells; it never passes its width."""
    planned = round(there * share)
    bar = load_bar(load(there, planned), max(there, most))

    assert 1 <= len(bar) <= BAR
    assert set(bar) <= {FULL, FREE}
    assert (FULL in bar) == (planned > 0) or len(bar) == 1
    assert (FREE in bar) == (planned < there) or len(bar) == 1
