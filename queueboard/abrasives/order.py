"""The order of belts in a process: each finer than the one before. Said once for each set of belts."""

from collections.abc import Sequence
from enum import Enum

from queueboard.abrasives.grit import Grit, grits_meant
from queueboard.slotted import dataclass

OFF_BY = 1.25
"""From this ratio between a belt's written size and its label's on, one of the two is surely wrong. A choice."""


class Trouble(Enum):
    """What may be wrong with a belt in its place."""

    COARSER = "coarser than the one before"
    NO_SCALE = "the number alone names several grits"
    OTHER_SIZE = "its label says another size"


@dataclass(frozen=True, slots=True, kw_only=True)
class BeltDoubt:
    """A belt that the person is asked about."""

    place: int
    """Counted from 0."""
    trouble: Trouble
    may_mean: tuple[Grit, ...] = ()


def doubts(belts: Sequence[tuple[str, float]]) -> tuple[BeltDoubt, ...]:
    """What to ask about a set of belts, each its label and its size in micrometres, in the order of use."""
    found: list[BeltDoubt] = []
    for place, (label, size_um) in enumerate(belts):
        meant = grits_meant(label)
        if len(meant) > 1:
            found.append(BeltDoubt(place=place, trouble=Trouble.NO_SCALE, may_mean=meant))
        elif meant and not 1 / OFF_BY < meant[0].size_um / size_um < OFF_BY:
            found.append(BeltDoubt(place=place, trouble=Trouble.OTHER_SIZE, may_mean=meant))
        if place and size_um >= belts[place - 1][1]:
            found.append(BeltDoubt(place=place, trouble=Trouble.COARSER))
    return tuple(found)
