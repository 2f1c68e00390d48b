"""Signals of a worn belt, a wrong angle or a tired tester."""

from hypothesis import given
from hypothesis import strategies as st

from queueboard.edges.drift import Limits, Mark, Signal, limits_of, signals

LIMITS = Limits(middle=200.0, low=140.0, high=260.0, most_range=74.0)


def test_a_reading_beyond_three_sigma() -> None:
    """A single reading outside is marked where it stands; one on the limit is not."""
    assert signals([190, 260, 261, 205], LIMITS) == (Mark(2, Signal.BEYOND),)


def test_eight_in_a_row_on_one_side() -> None:
    """The eighth is marked and every one after it; one on the other side, or on the middle, ends the row."""
    assert signals([210] * 9 + [190] + [210] * 7 + [200] + [210], LIMITS) == (
        Mark(7, Signal.ROW),
        Mark(8, Signal.ROW),
    )


def test_a_belt_that_wears() -> None:
    """Readings that creep up by 4 gf a knife are seen within twenty knives."""
    stable = [195, 210, 188, 204, 199, 212, 191, 203, 197, 206]

    assert signals([200 + 4 * knife for knife in range(20)], limits_of(stable))


@given(st.lists(st.integers(141, 259), max_size=7))
def test_seven_readings_within_the_limits_are_no_signal(readings: list[int]) -> None:
    """Fewer than eight readings signal only by leaving the limits."""
    assert signals(readings, LIMITS) == ()
