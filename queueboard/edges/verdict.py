"""Is it sharp: the spots of one knife against the line of its kind and edge."""

from collections.abc import Mapping, Sequence
from enum import Enum

from queueboard.edges.wobble import SPANS
from queueboard.slotted import dataclass


class Verdict(Enum):
    """What the readings of a knife say."""

    OK = "OK"
    NOT_OK = "not OK"
    TOO_CLOSE = "too close to call"
    LOOK_AGAIN = "look again"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """What a kind of knife with this edge is held against."""

    most_gf: int
    """No spot may need more push than this, in grams-force."""
    most_apart_gf: int
    """From this difference between the spots on, the edge is uneven and looked at again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A verdict with what it rests on."""

    verdict: Verdict
    worst: str
    """The spot that needs the most push; a second reading there catches a burr that reads well once."""
    worst_gf: int
    apart_gf: int
    """The highest spot less the lowest one."""


def judge(spots: Mapping[str, Sequence[int]], line: Line, wobble_gf: float) -> Judged | None:
    """The verdict on one knife; None while no spot was read.

    spots: by the spot's name, its readings after deburring in grams-force; the higher of two counts, since a burr can
    read well once. wobble_gf: the tester's wobble; a spot within two of it of the line is too close to call, unless
    another spot is surely over.
    """
    worst_of = {spot: max(readings) for spot, readings in spots.items() if readings}
    if not worst_of:
        return None
    worst = max(worst_of, key=worst_of.__getitem__)
    apart = worst_of[worst] - min(worst_of.values())
    verdict = _verdict(worst_of[worst], apart, line, wobble_gf)
    return Judged(verdict=verdict, worst=worst, worst_gf=worst_of[worst], apart_gf=apart)


def _verdict(worst_gf: int, apart_gf: int, line: Line, wobble_gf: float) -> Verdict:
    over = worst_gf - line.most_gf
    if over > SPANS * wobble_gf:
        return Verdict.NOT_OK
    if wobble_gf > 0 and over >= -SPANS * wobble_gf:
        return Verdict.TOO_CLOSE
    return Verdict.LOOK_AGAIN if apart_gf > line.most_apart_gf else Verdict.OK
