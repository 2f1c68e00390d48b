"""The middles of all pairs are found without writing them down."""

from statistics import median

from hypothesis import given
from hypothesis import strategies as st

from queueboard.edges.ranks import signed_ranks

FALLS = st.lists(st.integers(-40, 900).map(lambda thirds: thirds / 3), min_size=1, max_size=70)
"""Differences of means of three readings, in grams-force, many of them the same."""


@given(FALLS)
def test_the_middle_and_the_interval_are_those_of_all_pairs_written_down(falls: list[float]) -> None:
    """The shift is the median of every pair's mean, and either end of the interval is one of them, as far from it."""
    middles = sorted((one + other) / 2 for place, one in enumerate(falls) for other in falls[place:])
    found = signed_ranks(falls)

    assert found.shift == median(middles)
    if found.interval is None:
        assert len(falls) < 6
    else:
        ends = (found.interval.low, found.interval.high)
        assert ends in set(zip(middles, reversed(middles), strict=True))


def test_years_of_readings_are_compared_where_their_pairs_would_not_fit_into_memory() -> None:
    """Forty thousand falls have eight hundred million pairs; their middle is that of an even spread."""
    found = signed_ranks([place / 100 for place in range(40_001)])

    assert found.shift == 200
    assert found.interval is not None
    assert 195 < found.interval.low < 200 < found.interval.high < 205
