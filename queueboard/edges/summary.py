"""Mean and spread of readings, and the interval in which the true mean lies."""

from collections.abc import Sequence
from math import fsum, sqrt

from queueboard.edges.student import t_value
from queueboard.slotted import dataclass

SURE = 0.95
"""How sure every interval of this room is."""


@dataclass(frozen=True, slots=True)
class Interval:
    """Where a figure lies, with how sure that is; both ends belong to it."""

    low: float
    high: float
    sure: float = SURE

    def wider(self, by: float) -> "Interval":
        """The same interval with so much more at either end, 0 or more."""
        return Interval(self.low - by, self.high + by, self.sure)

    def holds(self, value: float) -> bool:
        """True when the value lies in it."""
        return self.low <= value <= self.high


def mean(values: Sequence[float]) -> float:
    """The arithmetic mean of at least one value, summed without rounding on the way."""
    first = values[0]
    return first + fsum(value - first for value in values) / len(values)


def spread(values: Sequence[float]) -> float:
    """The standard deviation (n - 1) of at least two values.

    Taken from the differences to the mean; the short formula with the sum of squares loses its digits where values are
    large and alike (NIST StRD, NumAcc3).
    """
    middle = mean(values)
    differences = [value - middle for value in values]
    squares = fsum(difference * difference for difference in differences)
    # What rounding left in the mean is taken off (Chan, Golub and LeVeque 1983, from memory).
    return sqrt(max(0.0, squares - fsum(differences) ** 2 / len(values)) / (len(values) - 1))


def mean_interval(values: Sequence[float], least_spread: float = 0.0) -> Interval:
    """The 95 % interval (Student's t) for the mean of at least two values.

    least_spread: the tester's own wobble in the unit of the values; readings that happen to agree better are not taken
    for surer than the tester is.
    """
    middle = mean(values)
    half = mean_error(values, max(spread(values), least_spread))
    return Interval(middle - half, middle + half)


def mean_error(values: Sequence[float], deviation: float) -> float:
    """How far the mean of at least two values may be off, 95 % sure, where one value deviates so much."""
    return t_value(len(values) - 1, SURE) * deviation / sqrt(len(values))
