"""Comparing by ranks, where a few wild readings must not decide: signed ranks, rank sums, and Hodges and Lehmann.

Exact shares are counted, not approximated, up to EXACT values; beyond, or where a rank sum has ties, the normal
distribution with the corrections for ties and for steps is used (Hollander and Wolfe 1973; Wilcoxon 1945; from memory).
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import groupby
from math import floor, inf, nextafter, sqrt
from struct import unpack

from queueboard.edges.summary import SURE, Interval
from queueboard.slotted import dataclass

EXACT = 49
"""Most values for which shares are counted."""

NEAR = 1e-6
"""Marks are halved until they lie so near; readings are whole grams-force, so that few middles lie between."""


@dataclass(frozen=True, slots=True)
class RankResult:
    """What the ranks say of a shift."""

    statistic: float
    """Signed ranks: V, the sum of the ranks of what rose. Rank sums: U, pairs in which the first set is higher."""
    chance: float
    """How often chance alone gives at least this much, both ways, 0 to 1."""
    shift: float
    """Hodges and Lehmann's middle shift, in the unit of the values."""
    interval: Interval | None
    """Where the shift lies; None when there are too few values to be that sure."""

    def wider(self, by: float) -> "RankResult":
        """The same with an interval wider by so much at either end: ranks know nothing of the tester's wobble."""
        return self if self.interval is None else replace(self, interval=self.interval.wider(by))


def signed_ranks(differences: Sequence[float]) -> RankResult:
    """Whether paired differences lie to one side of zero; of at least one difference.

    Differences of zero count in no rank; they do count in the shift and its interval.
    """
    moved = [difference for difference in differences if difference]
    ranks = _doubled_ranks([abs(difference) for difference in moved])
    above = sum(rank for rank, difference in zip(ranks, moved, strict=True) if difference > 0)
    if len(moved) <= EXACT:
        chance = _two_sided(_subset_sums(ranks), above)
    else:
        mean = sum(ranks) / 2
        chance = _normal_chance(above - mean, sqrt(sum(rank * rank for rank in ranks)) / 2, step=1.0)
    middles = _Middles(differences)
    return RankResult(above / 2, chance, middles.median(), middles.inner(_signed_place(len(differences))))


def rank_sums(first: Sequence[float], second: Sequence[float]) -> RankResult:
    """Whether the first set lies higher than the second; each of at least one value. The shift is first less second."""
    from statistics import median

    ranks = _doubled_ranks([*first, *second])
    doubled_u = sum(ranks[: len(first)]) - len(first) * (len(first) + 1)
    ties = [len(list(group)) for _, group in groupby(sorted(ranks))]
    exact = max(len(first), len(second)) <= EXACT
    if exact and max(ties) == 1:
        chance = _two_sided(_pair_counts(len(first), len(second)), doubled_u // 2)
    else:
        both, pairs = len(ranks), len(first) * len(second)
        left = both + 1 - sum(tie**3 - tie for tie in ties) / (both * (both - 1))
        chance = _normal_chance(doubled_u / 2 - pairs / 2, sqrt(max(0.0, pairs * left / 12)), step=0.5)
    shifts = sorted(one - other for one in first for other in second)
    return RankResult(doubled_u / 2, chance, median(shifts), _inner(shifts, _sums_place(len(first), len(second))))


class _Middles:
    """The means of all pairs of some values, each with itself too, in order: Walsh's averages.

    Ten thousand values have fifty million, so that none is written down: how many are up to a mark is counted in one
    pass from both ends, and the mark halved until it stands right before the one that is wanted.
    """

    def __init__(self, values: Sequence[float]) -> None:
        self._values = sorted(values)
        self.count = len(values) * (len(values) + 1) // 2

    def median(self) -> float:
        """The middle one, or halfway between the two."""
        low = self.at((self.count - 1) // 2)
        return low if self.count % 2 else (low + self.at(self.count // 2)) / 2

    def inner(self, outside: int) -> Interval | None:
        """From the one that has so many below it to the one that has so many above; None for a negative number."""
        return None if outside < 0 else Interval(self.at(outside), self.at(self.count - 1 - outside))

    def at(self, place: int) -> float:
        """The one at a place, 0 the lowest."""
        low, high = nextafter(2 * self._values[0], -inf), 2 * self._values[-1]
        below, within = 0, self.count
        while within - below > 1 and high - low > NEAR:
            mark = (low + high) / 2
            up_to = self._up_to(mark)
            if up_to > place:
                high, within = mark, up_to
            else:
                low, below = mark, up_to
        while self._up_to(low := self._next(low)) <= place:
            pass
        return low / 2

    def _up_to(self, doubled: float) -> int:
        """How many pairs come to no more than this."""
        values, last, found = self._values, len(self._values) - 1, 0
        for place, value in enumerate(values):
            while last >= place and value + values[last] > doubled:
                last -= 1
            if last < place:
                break
            found += last - place + 1
        return found

    def _next(self, doubled: float) -> float:
        """What the lowest pair above this comes to."""
        values, end, found = self._values, len(self._values), inf
        first = end
        for place, value in enumerate(values):
            while first > place and value + values[first - 1] > doubled:
                first -= 1
            if max(first, place) < end:
                found = min(found, value + values[max(first, place)])
        return found


def _doubled_ranks(values: Sequence[float]) -> list[int]:
    """Twice each value's rank, so that the middle rank of ties is whole."""
    order = sorted(range(len(values)), key=values.__getitem__)
    ranks = [0] * len(values)
    before = 0
    for _, tied in groupby(order, key=values.__getitem__):
        places = list(tied)
        for place in places:
            ranks[place] = 2 * before + len(places) + 1
        before += len(places)
    return ranks


def _subset_sums(ranks: Sequence[int]) -> list[int]:
    """In how many ways each sum comes about when every rank may count or not; of at most EXACT ranks.

    All are the digits of one number, 64 bits each, for 2 to the EXACT ways there are at most: to add a rank to what
    some sum to is to shift it.
    """
    ways = 1
    for rank in ranks:
        ways += ways << 64 * rank
    sums = sum(ranks) + 1
    return list(unpack(f"<{sums}Q", ways.to_bytes(8 * sums, "little")))


@lru_cache(maxsize=256)
def _pair_counts(first: int, second: int) -> list[int]:
    """In how many ways each number of pairs won comes about: the coefficients of a Gaussian binomial; not to change."""
    ways = [1] + [0] * (first * second)
    for step in range(1, first + 1):
        for total in range(len(ways) - 1, second + step - 1, -1):
            ways[total] -= ways[total - second - step]
        for total in range(step, len(ways)):
            ways[total] += ways[total - step]
    return ways


def _two_sided(ways: Sequence[int], seen: int) -> float:
    """Twice the smaller tail that holds what was seen, at most 1."""
    all_ways = sum(ways)
    return min(1.0, 2 * min(sum(ways[: seen + 1]), sum(ways[seen:])) / all_ways)


def _normal_chance(off: float, deviation: float, step: float) -> float:
    from statistics import NormalDist

    if deviation == 0:
        return 1.0
    return min(1.0, 2 * NormalDist().cdf(-max(0.0, abs(off) - step) / deviation))


@lru_cache(maxsize=256)
def _signed_place(values: int) -> int:
    """How many of the sorted middles lie outside an interval at either end; -1 when there are too few values."""
    from statistics import NormalDist

    if values <= EXACT:
        return _outside(_subset_sums(range(1, values + 1)))
    mean, deviation = values * (values + 1) / 4, sqrt(values * (values + 1) * (2 * values + 1) / 24)
    return floor(mean - NormalDist().inv_cdf((1 + SURE) / 2) * deviation)


@lru_cache(maxsize=256)
def _sums_place(first: int, second: int) -> int:
    from statistics import NormalDist

    if max(first, second) <= EXACT:
        return _outside(_pair_counts(first, second))
    deviation = sqrt(first * second * (first + second + 1) / 12)
    return floor(first * second / 2 - NormalDist().inv_cdf((1 + SURE) / 2) * deviation)


def _outside(ways: Sequence[int]) -> int:
    """The largest count whose tail, both sides, is no more than what may be missed; -1 when even none is too much."""
    allowed = (1 - SURE) * sum(ways) / 2
    tail = 0
    for count, more in enumerate(ways):
        tail += more
        if tail > allowed:
            return count - 1
    return len(ways) - 1


def _inner(middles: Sequence[float], outside: int) -> Interval | None:
    if outside < 0:
        return None
    return Interval(middles[outside], middles[-1 - outside])
