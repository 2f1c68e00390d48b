"""Does another belt earn its minutes: a belt trial, its rule written down before the first knife, and what it says.

Like knives of one kind are put into two halves by alternation or by lot: one half gets the belt in question, the other
stops before it. Both are fully deburred before they are read.
"""

from collections.abc import Sequence
from enum import Enum

from queueboard.edges.halves import Difference, difference, share_difference
from queueboard.edges.summary import Interval
from queueboard.slotted import dataclass
from queueboard.words import Condition

LIKE = (Condition.TIRED, Condition.DULL)
"""Knives that can be compared: chipped ones are ground on a coarser belt first."""

FEWEST = 20
"""Knives in each half before anything is said."""


class Half(Enum):
    """The two halves of a trial."""

    WITH = "with the belt"
    WITHOUT = "without the belt"


class Draw(Enum):
    """How knives are put into halves."""

    ALTERNATE = "in turn"
    LOT = "by lot"


class Outcome(Enum):
    """What a trial says by its own rule."""

    TOO_FEW = "too few yet"
    STAYS = "the belt stays"
    NO_DIFFERENCE = "no difference seen"
    NOT_ENOUGH = "it helps, by less than the rule asks for"
    HARMS = "the edge is better without it"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialRule:
    """What was written down before the first knife."""

    fall_wobbles: float = 2.0
    """The belt stays when the worst spot falls by more than so many wobbles of the tester."""
    or_halves_not_ok: bool = True
    """It also stays when it at least halves the share not OK."""
    each: int = FEWEST
    """Knives of each half before anything is said; at least 20."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialKnife:
    """A knife of a trial that is done and read."""

    half: Half
    spots_gf: tuple[int, ...]
    """One deburred reading a spot, the higher where there are two; at least one spot."""
    ok: bool
    minutes: float
    belt_cents: float
    """What its belts cost, in cents."""

    @property
    def worst_gf(self) -> int:
        """What its worst spot needs."""
        return max(self.spots_gf)


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """What the trial shows so far; differences are with the belt less without it."""

    outcome: Outcome
    done: dict[Half, int]
    each: int
    worst_gf: Difference | None
    mean_gf: Difference | None
    minutes: Difference | None
    belt_cents: Difference | None
    not_ok: dict[Half, int]
    not_ok_share: Interval | None


def half_of(place: int, draw: Draw, seed: int) -> Half:
    """The half of the knife at a place in the trial, counted from 0.

    By lot the two of each pair are drawn, so that the halves stay level; the same seed draws the same halves.
    """
    from random import Random

    if draw is Draw.ALTERNATE:
        return Half.WITH if (place + seed) % 2 == 0 else Half.WITHOUT
    lots = Random(seed)  # noqa: S311 who gets the belt is no secret
    first = [lots.random() < 0.5 for _ in range(place // 2 + 1)][-1]
    return Half.WITH if first == (place % 2 == 0) else Half.WITHOUT


def result_of(knives: Sequence[TrialKnife], rule: TrialRule, wobble_gf: float) -> Result:
    """Hold the halves against each other and against the rule. wobble_gf: the tester's, in grams-force, 0 or more."""
    with_belt = [knife for knife in knives if knife.half is Half.WITH]
    without = [knife for knife in knives if knife.half is Half.WITHOUT]
    halves = {Half.WITH: with_belt, Half.WITHOUT: without}
    not_ok = {half: sum(not knife.ok for knife in own) for half, own in halves.items()}
    worst = difference(_worst(with_belt), _worst(without), wobble_gf)
    enough = min(len(with_belt), len(without)) >= max(FEWEST, rule.each)
    return Result(
        outcome=_outcome(worst, halves, not_ok, rule, wobble_gf) if enough and worst is not None else Outcome.TOO_FEW,
        done={half: len(own) for half, own in halves.items()},
        each=max(FEWEST, rule.each),
        worst_gf=worst,
        mean_gf=difference(_mean(with_belt), _mean(without), wobble_gf / min(_spots(knives), default=1) ** 0.5),
        minutes=difference([knife.minutes for knife in with_belt], [knife.minutes for knife in without]),
        belt_cents=difference([knife.belt_cents for knife in with_belt], [knife.belt_cents for knife in without]),
        not_ok=not_ok,
        not_ok_share=(
            share_difference((not_ok[Half.WITH], len(with_belt)), (not_ok[Half.WITHOUT], len(without)))
            if with_belt and without
            else None
        ),
    )


def _outcome(
    worst: Difference,
    halves: dict[Half, list[TrialKnife]],
    not_ok: dict[Half, int],
    rule: TrialRule,
    wobble_gf: float,
) -> Outcome:
    """By the rule; a fall counts only when chance would hardly make it."""
    if worst.interval.low > 0:
        return Outcome.HARMS
    share = {half: not_ok[half] / len(own) for half, own in halves.items()}
    shares = share_difference(*((not_ok[half], len(own)) for half, own in halves.items()))
    seen = worst.interval.high < 0
    if seen and -worst.mean > rule.fall_wobbles * wobble_gf:
        return Outcome.STAYS
    if rule.or_halves_not_ok and shares.high < 0 and 2 * share[Half.WITH] <= share[Half.WITHOUT]:
        return Outcome.STAYS
    return Outcome.NOT_ENOUGH if seen else Outcome.NO_DIFFERENCE


def _worst(knives: Sequence[TrialKnife]) -> list[float]:
    return [float(knife.worst_gf) for knife in knives]


def _mean(knives: Sequence[TrialKnife]) -> list[float]:
    return [sum(knife.spots_gf) / len(knife.spots_gf) for knife in knives]


def _spots(knives: Sequence[TrialKnife]) -> list[int]:
    return [len(knife.spots_gf) for knife in knives]
