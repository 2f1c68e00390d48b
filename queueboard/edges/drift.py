"""A chart of single readings since the belt was fitted, to see a worn belt, a wrong angle or a tired tester.

Individuals and moving ranges, as in NIST/SEMATECH e-Handbook 6.3.2.2; d2 = 1.128 for ranges of two (handbook table).
"""

from collections.abc import Sequence
from enum import Enum
from itertools import pairwise

from queueboard.edges.summary import mean
from queueboard.slotted import dataclass

D2 = 1.128
"""Mean range of two readings in standard deviations."""
D4 = 3.267
"""Upper limit of a range of two, in mean ranges."""
IN_A_ROW = 8
"""So many readings on one side of the middle do not happen by chance (once in 128 rows)."""


class Signal(Enum):
    """What a chart shows that chance would hardly do."""

    BEYOND = "beyond three sigma"
    ROW = "eight in a row on one side"


@dataclass(frozen=True, slots=True)
class Limits:
    """Where the readings of a stable process lie, in grams-force."""

    middle: float
    low: float
    high: float
    most_range: float
    """The largest step from one reading to the next."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A signal at a place in the readings, counted from 0."""

    place: int
    signal: Signal


def limits_of(stable: Sequence[float]) -> Limits:
    """Limits from a period in which the shop found its work good; at least two readings, in their order."""
    steps = [abs(after - before) for before, after in pairwise(stable)]
    middle, step = mean(stable), mean(steps)
    low = max(0.0, middle - 3 * step / D2)  # no edge pushes back
    return Limits(middle=middle, low=low, high=middle + 3 * step / D2, most_range=D4 * step)


def signals(readings: Sequence[float], limits: Limits) -> tuple[Mark, ...]:
    """Where the readings, in their order, leave the limits or lie on one side for eight in a row."""
    marks: list[Mark] = []
    row, side = 0, 0
    for place, reading in enumerate(readings):
        now = (reading > limits.middle) - (reading < limits.middle)
        row = row + 1 if now and now == side else int(now != 0)
        side = now
        if not limits.low <= reading <= limits.high:
            marks.append(Mark(place, Signal.BEYOND))
        elif row >= IN_A_ROW:
            marks.append(Mark(place, Signal.ROW))
    return tuple(marks)
