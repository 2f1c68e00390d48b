"""Before and after of the same spots on the same knives. It says what the work did, never what one belt did."""

from collections.abc import Sequence
from math import sqrt

from queueboard.edges.ranks import RankResult, signed_ranks
from queueboard.edges.summary import Interval, mean, mean_error, mean_interval, spread
from queueboard.slotted import dataclass

FEWEST_PAIRS = 6
"""Below this no change is claimed: with five pairs the signed ranks can not be 95 % sure of anything."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """How readings of the same spots have fallen; gf are grams-force, above 0 where the edge needs less push now."""

    pairs: int
    mean_gf: float
    median_gf: float
    percent: float
    """The mean fall as a share of the mean before, in percent."""
    interval: Interval
    """Student's t for the mean fall."""
    ranks: RankResult


def change(pairs: Sequence[tuple[float, float]], wobble_gf: float) -> Change | None:
    """What changed between the first and second reading of each pair, both in grams-force above 0.

    None for fewer than six pairs. A difference of two readings wobbles by the square root of 2 more than one.
    Both intervals are at least as wide as the wobble makes them.
    """
    from statistics import median

    if len(pairs) < FEWEST_PAIRS:
        return None
    falls = [before - after for before, after in pairs]
    wobble, seen = sqrt(2) * wobble_gf, spread(falls)
    before_gf = mean([before for before, _ in pairs])
    return Change(
        pairs=len(pairs),
        mean_gf=mean(falls),
        median_gf=median(falls),
        percent=100 * mean(falls) / before_gf,
        interval=mean_interval(falls, wobble),
        ranks=signed_ranks(falls).wider(mean_error(falls, max(0.0, wobble - seen))),
    )
