"""Where the knives of a kitchen's swap set are, by kind, what is missing, and what of it a kitchen is charged for.

A set is whole when each of its knives is in exactly one place: with the kitchen, dull here, or clean here. What is in
none of them is missing. Counts are by the name of the kind; a kind that is not named counts none.
"""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from queueboard.errors import TypedError
from queueboard.intake.lines import KnifeLine
from queueboard.slotted import dataclass

Counts = Mapping[str, int]

SECOND_ROUND = 2
"""From so many rounds running without a kind on, the chef is told on paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KindOfSet:
    """The knives of one kind of a set, each in one place."""

    kind: str
    whole: int
    """How many the set has, at least 1."""
    with_kitchen: int
    dull_here: int
    clean_here: int

    @property
    def missing(self) -> int:
        """How many are in no place that is known, at least 0."""
        return self.whole - self.with_kitchen - self.dull_here - self.clean_here


def counts_of(lines: Sequence[KnifeLine]) -> dict[str, int]:
    """How many of each kind were typed, in the order in which the kinds were first named."""
    counts: dict[str, int] = {}
    for line in lines:
        counts[line.knife.kind] = counts.get(line.knife.kind, 0) + line.count
    return counts


def where_it_is(whole: Counts, *, with_kitchen: Counts, dull_here: Counts, clean_here: Counts) -> tuple[KindOfSet, ...]:
    """Each kind of a set with its places, in the order of the set.

    TypedError where more are counted than the set has: that knife is of another set, or was counted twice.
    """
    places = (with_kitchen, dull_here, clean_here)
    for kind in dict.fromkeys(kind for place in places for kind in place):
        counted, has = sum(place.get(kind, 0) for place in places), whole.get(kind, 0)
        if any(place.get(kind, 0) < 0 for place in places):
            raise TypedError(f"Fewer than no {kind} cannot be counted; type 0 or more.")
        if counted > has:
            raise TypedError(
                f"{counted} {kind} counted, and the set has {has}; is one of another set, or counted twice?"
            )
    return tuple(
        KindOfSet(
            kind=kind,
            whole=count,
            with_kitchen=with_kitchen.get(kind, 0),
            dull_here=dull_here.get(kind, 0),
            clean_here=clean_here.get(kind, 0),
        )
        for kind, count in whole.items()
        if count
    )


def missing_of(kinds: Sequence[KindOfSet]) -> dict[str, int]:
    """What is missing, by kind; empty for a whole set."""
    return {one.kind: one.missing for one in kinds if one.missing}


def goes_on_statement(missed_on: date, today: date, wait_days: int) -> bool:
    """True once a missing knife has been waited for as long as the shop waits: on the last day of it, or later."""
    return today >= missed_on + timedelta(days=wait_days)


def tell_the_chef(rounds: Sequence[Counts]) -> dict[str, int]:
    """The kinds that were missing in each of the last two rounds, with how many were in the newest.

    rounds: what was missing, the oldest round first. Empty where fewer than two rounds are known.
    """
    if len(rounds) < SECOND_ROUND:
        return {}
    last = rounds[-SECOND_ROUND:]
    return {kind: count for kind, count in last[-1].items() if all(one.get(kind, 0) > 0 for one in last)}


def nick_is_free(depth_um: int, free_um: int) -> bool:
    """True for a nick that the shop grinds out for nothing: up to its own depth, that depth included."""
    return depth_um <= free_um
