"""Two halves of a trial side by side: their means, their ranks, and their shares."""

from collections.abc import Sequence
from math import sqrt

from queueboard.edges.ranks import RankResult, rank_sums
from queueboard.edges.student import share_beyond, t_value
from queueboard.edges.summary import SURE, Interval, mean, spread
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """The first half less the second, in the unit of the values."""

    mean: float
    interval: Interval
    """Welch's t: the halves may spread differently."""
    freedom: float
    chance: float
    """How often chance alone sets the means at least so far apart, 0 to 1."""
    ranks: RankResult


def difference(first: Sequence[float], second: Sequence[float], least_spread: float = 0.0) -> Difference | None:
    """Compare two sets of readings or minutes; None unless each has two values and something spreads.

    least_spread: the tester's wobble, below which no half is taken to spread; both intervals are wider by what it adds.
    """
    if min(len(first), len(second)) < 2:
        return None
    spreads = (max(spread(half), least_spread) for half in (first, second))
    one, other = (deviation**2 / len(half) for deviation, half in zip(spreads, (first, second), strict=True))
    error = sqrt(one + other)
    if error == 0:
        return None
    freedom = (one + other) ** 2 / (one**2 / (len(first) - 1) + other**2 / (len(second) - 1))
    apart = mean(first) - mean(second)
    half_width = t_value(freedom, SURE) * error
    seen = sqrt(sum(spread(half) ** 2 / len(half) for half in (first, second)))
    return Difference(
        mean=apart,
        interval=Interval(apart - half_width, apart + half_width),
        freedom=freedom,
        chance=share_beyond(apart / error, freedom),
        ranks=rank_sums(first, second).wider(t_value(freedom, SURE) * (error - seen)),
    )


def share_interval(count: int, of: int) -> Interval:
    """Where a share lies, by Wilson's score (1927, from memory); count from 0 to of, of at least 1."""
    from statistics import NormalDist

    z = NormalDist().inv_cdf((1 + SURE) / 2)
    share = count / of
    middle = (share + z * z / (2 * of)) / (1 + z * z / of)
    half = z * sqrt(share * (1 - share) / of + z * z / (4 * of * of)) / (1 + z * z / of)
    return Interval(max(0.0, middle - half), min(1.0, middle + half))


def share_difference(first: tuple[int, int], second: tuple[int, int]) -> Interval:
    """Where the first share less the second lies, each as (count, of): Newcombe's hybrid score (1998, from memory)."""
    one, other = share_interval(*first), share_interval(*second)
    p, q = first[0] / first[1], second[0] / second[1]
    below = sqrt((p - one.low) ** 2 + (other.high - q) ** 2)
    above = sqrt((one.high - p) ** 2 + (q - other.low) ** 2)
    return Interval(p - q - below, p - q + above)
