"""Every 95 % interval holds the truth in 94 to 96 of 100 seeded sets, and a wrong formula would be noticed."""

from collections.abc import Callable
from random import Random

import pytest

from queueboard.edges.halves import difference, share_difference, share_interval
from queueboard.edges.ranks import rank_sums, signed_ranks
from queueboard.edges.summary import Interval, mean, mean_interval, spread

SETS = 4000
TRUTH = 60.0
"""What the readings fall by in truth, in grams-force."""


def falls(lots: Random, count: int, deviation: float = 45.0) -> list[float]:
    """Falls of so many spots."""
    return [lots.gauss(TRUTH, deviation) for _ in range(count)]


def mean_of_few(lots: Random) -> Interval:
    """Student's interval for eight falls."""
    return mean_interval(falls(lots, 8))


def signed(lots: Random) -> Interval:
    """Hodges and Lehmann's for twenty falls."""
    interval = signed_ranks(falls(lots, 20)).interval
    assert interval is not None
    return interval


def signed_of_many(lots: Random) -> Interval:
    """The same for sixty, past what is counted."""
    interval = signed_ranks(falls(lots, 60)).interval
    assert interval is not None
    return interval


def welch(lots: Random) -> Interval:
    """Welch's for halves of 12 and 25 that spread differently."""
    found = difference(falls(lots, 12, 90), [value - TRUTH for value in falls(lots, 25, 20)])
    assert found is not None
    return found.interval


def summed(lots: Random) -> Interval:
    """Hodges and Lehmann's for two halves of twenty."""
    interval = rank_sums(falls(lots, 20), [value - TRUTH for value in falls(lots, 20)]).interval
    assert interval is not None
    return interval


def share(lots: Random) -> Interval:
    """Wilson's for 60 knives of which .37 are not OK, as a share of 60 points."""
    interval = share_interval(sum(lots.random() < 0.37 for _ in range(60)), 60)
    return Interval(interval.low / 0.37 * TRUTH, interval.high / 0.37 * TRUTH)


def two_shares(lots: Random) -> Interval:
    """Newcombe's for .45 of 60 against .20 of 60, as a difference of 60 points."""
    first, second = (sum(lots.random() < p for _ in range(60)) for p in (0.45, 0.20))
    interval = share_difference((first, 60), (second, 60))
    return Interval(interval.low / 0.25 * TRUTH, interval.high / 0.25 * TRUTH)


def wrong(lots: Random) -> Interval:
    """The normal's 1.96 for eight falls, where Student's 2.36 belongs."""
    values = falls(lots, 8)
    half = 1.96 * spread(values) / 8**0.5
    return Interval(mean(values) - half, mean(values) + half)


def coverage(made: Callable[[Random], Interval]) -> float:
    """The share of sets whose interval holds the truth."""
    lots = Random(20_260)  # noqa: S311 invented readings, no secret
    return sum(made(lots).holds(TRUTH) for _ in range(SETS)) / SETS


@pytest.mark.parametrize("made", [mean_of_few, signed, signed_of_many, welch, summed, share, two_shares])
def test_the_truth_lies_inside_as_often_as_said(made: Callable[[Random], Interval]) -> None:
    """Between 94 and 96 of 100."""
    assert 0.94 <= coverage(made) <= 0.96


def test_a_wrong_formula_is_noticed() -> None:
    """The normal's limits for few readings hold the truth too seldom."""
    assert coverage(wrong) < 0.94
