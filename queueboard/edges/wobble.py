"""The tester's wobble: how far readings of one spot lie apart, though nothing about the edge has changed."""

from collections.abc import Sequence
from math import fsum, sqrt

from queueboard.edges.summary import SURE, Interval, spread
from queueboard.slotted import dataclass

SPANS = 2.0
"""Wobbles within which a single reading and a line can not be told apart: about 95 of 100 (normal distribution)."""

WHOLE_GF = 1 / sqrt(12)
"""The deviation of what is rounded to whole grams-force, in grams-force (JCGM 100:2008, F.2.2.1, from memory)."""


@dataclass(frozen=True, slots=True)
class Wobble:
    """What a study of repeated readings has shown."""

    sd_gf: float
    """Standard deviation of one reading at one spot, in grams-force, 0 or more."""
    freedom: int
    """Degrees of freedom it rests on: readings less spots; 20 for ten knives read three times."""


def wobble_of(spots: Sequence[Sequence[float]]) -> Wobble | None:
    """The pooled within-spot deviation of a study, each spot read two times or more; None when no spot was.

    Pooled as for repeatability in a study of a measuring tool: squares weighted by degrees of freedom (common
    practice, no source). Never less than WHOLE_GF: readings that all agree do not make a tester without any wobble.
    """
    read = [readings for readings in spots if len(readings) > 1]
    freedom = sum(len(readings) - 1 for readings in read)
    if not freedom:
        return None
    squares = fsum((len(readings) - 1) * spread(readings) ** 2 for readings in read)
    return Wobble(sd_gf=max(WHOLE_GF, sqrt(squares / freedom)), freedom=freedom)


def sd_interval(wobble: Wobble) -> Interval:
    """Where the true deviation lies with 95 % surety, in grams-force.

    By chi square, whose values are Wilson and Hilferty's (1931, from memory): within 1 % from ten degrees of freedom
    on.
    """
    from statistics import NormalDist

    z = NormalDist().inv_cdf((1 + SURE) / 2)
    few, many = (wobble.freedom * (1 - _ninth(wobble) + sign * z * sqrt(_ninth(wobble))) ** 3 for sign in (-1, 1))
    return Interval(wobble.sd_gf * sqrt(wobble.freedom / many), wobble.sd_gf * sqrt(wobble.freedom / few))


def _ninth(wobble: Wobble) -> float:
    return 2 / (9 * wobble.freedom)
