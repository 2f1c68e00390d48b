"""What was said against what was seen, in steps of the chance."""

from collections.abc import Iterable
from dataclasses import dataclass
from statistics import fmean

STEPS = (0.0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.98, 1.01)


@dataclass(frozen=True, slots=True)
class Step:
    """Boxes of which much the same was said."""

    said: float
    seen: float
    """Share that was late."""
    boxes: int


def steps_of(pairs: Iterable[tuple[float, bool]], steps: tuple[float, ...] = STEPS) -> list[Step]:
    """The steps that hold boxes; pairs of the chance that was said and whether the box was late."""
    held: dict[int, list[tuple[float, bool]]] = {}
    for said, late in pairs:
        held.setdefault(sum(said >= step for step in steps), []).append((said, late))
    return [
        Step(fmean(said for said, _ in some), fmean(late for _, late in some), len(some))
        for _, some in sorted(held.items())
    ]


def calibration_error(steps: Iterable[Step]) -> float:
    """Mean distance of said and seen, each step by its boxes."""
    known = list(steps)
    return sum(abs(step.said - step.seen) * step.boxes for step in known) / sum(step.boxes for step in known)


def brier(pairs: Iterable[tuple[float, bool]]) -> float:
    """Mean square of what was said less what was seen; smaller is better."""
    return fmean((said - late) ** 2 for said, late in pairs)
