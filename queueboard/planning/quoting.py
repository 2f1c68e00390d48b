"""When a new box can be promised, whether it can be done by a given cut-off, and what that would cost whom.

The promise is the first cut-off after the first place in the plan where the box keeps every promise already made.
Quoting so from what is really open, with a constant on top for what strays, is robust (Hopp and Roof Sturgis, 2001).
"""

from collections.abc import Iterable

from queueboard.planning.chance import chance_late
from queueboard.planning.placing import Held, Margins, Place, Promised, places, rooms
from queueboard.planning.queue import QueueBox
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Quote:
    """The earliest promise, and the sum that leads to it."""

    cutoff: int
    """Index into the queue's cut-offs."""
    place: Place
    open_seconds: int
    """Planned work before it."""
    own_seconds: int
    """Its knives and their set-ups."""
    day_seconds: int
    """Planned bench seconds of a usual day."""
    kept_seconds: int
    """Kept free before the cut-off: for what may stray, the constant on top, and walk-ins."""
    spare_seconds: int
    """From its finish to the cut-off, with what is kept free; open + own + spare is the cut-off."""
    chance_holds: float
    """0 to 1."""
    binds: Held | None
    """The box that does not let it be worked any earlier; None when it comes first of all."""


def quote(
    ledger: Promised, box: QueueBox, margins: Margins, offered: Iterable[int] | None = None, here_from: int = 0
) -> Quote | None:
    """The earliest of the offered cut-offs that a new box can be promised; None when none of them bears it.

    box: its due is not looked at. offered: indexes of the cut-offs at which it could leave; None: any.
    here_from: the bench second before which the box is not here to be begun.
    """
    binds: Held | None = None
    for place in places(ledger, box, margins):
        if place.keeps_promises:
            break
        binds = place.room.binds
    every = range(len(ledger.queue.cutoffs)) if offered is None else sorted(offered)
    cutoff = next((cutoff for cutoff in every if _fits(ledger, place, cutoff, margins, here_from)), None)
    return None if cutoff is None else _quote(ledger, place, cutoff, margins, binds, here_from)


def _ends(place: Place, here_from: int) -> tuple[tuple[int, int], ...]:
    """When the new box is finished here, counted from now; if it comes only later, also counted from its coming."""
    by_turn = (place.work.end, 0)
    return (by_turn, (here_from + place.block.seconds, here_from)) if here_from else (by_turn,)


def _fits(ledger: Promised, place: Place, cutoff: int, margins: Margins, here_from: int) -> bool:
    """True when the new box itself is finished here by the cut-off, with what is to be kept free.

    One that comes only later also needs its own time, and what is kept free, between its coming and the cut-off.
    """
    return all(
        end + ledger.kept_seconds(place.work, cutoff, margins, since) <= ledger.queue.cutoffs[cutoff]
        for end, since in _ends(place, here_from)
    )


def _chance_holds(ledger: Promised, place: Place, cutoff: int, here_from: int) -> float:
    ends, variance = _ends(place, here_from), place.work.variance(ledger.doubt)
    return 1 - max(
        chance_late(ledger.queue.cutoffs[cutoff] - end, variance + ledger.bench_variance(cutoff, since))
        for end, since in ends
    )


def _quote(ledger: Promised, place: Place, cutoff: int, margins: Margins, binds: Held | None, here_from: int) -> Quote:
    return Quote(
        cutoff=cutoff,
        place=place,
        open_seconds=ledger.starts[place.run].end,
        own_seconds=place.block.seconds,
        day_seconds=ledger.doubt.days[-1],
        kept_seconds=round(ledger.kept_seconds(place.work, cutoff, margins)),
        spare_seconds=ledger.queue.cutoffs[cutoff] - place.work.end,
        chance_holds=_chance_holds(ledger, place, cutoff, here_from),
        binds=binds,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """A box that a wish would make late, in planned seconds."""

    box_id: int
    late_seconds: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Whether a new box can be done by a cut-off."""

    yes: bool
    chance_holds: float
    """For the new box, where it would be worked for this cut-off."""
    costs: tuple[Cost, ...]
    """Whom it would make late, the latest first; a no without any is about too little left free."""
    presses: Held | None
    """Whose promise would have the least left; None when yes, and when it is too late even as the first of all."""
    pressed_already: bool = False
    """True when that promise has too little left without the new box."""


def can_do(ledger: Promised, box: QueueBox, cutoff: int, margins: Margins, here_from: int = 0) -> Answer:
    """Whether a new box can be done by a cut-off, and if not what it would cost whom; here_from as for a quote.

    The cost is counted at the last place where the box itself can be on time, which presses the fewest.
    """
    every = list(places(ledger, box, margins))
    wish: Place | None = None
    for place in every:
        fits = _fits(ledger, place, cutoff, margins, here_from)
        if place.keeps_promises:
            if fits:
                holds = _chance_holds(ledger, place, cutoff, here_from)
                return Answer(yes=True, chance_holds=holds, costs=(), presses=None)
            break
        wish = place if fits else wish
    return Answer(
        yes=False,
        chance_holds=_chance_holds(ledger, wish or every[0], cutoff, here_from),
        costs=_costs(ledger, wish) if wish else (),
        presses=wish.room.binds if wish else None,
        pressed_already=wish is not None and rooms(ledger, margins)[wish.run].seconds < 0,
    )


def _costs(ledger: Promised, place: Place) -> tuple[Cost, ...]:
    late: list[Cost] = []
    for one in ledger.held:
        if one.run >= place.run and not one.late:
            finish = ledger.starts[one.run + 1].end + place.block.shift_seconds
            if finish > ledger.queue.cutoffs[one.cutoff]:
                late.append(Cost(box_id=one.box_id, late_seconds=finish - ledger.queue.cutoffs[one.cutoff]))
    return tuple(sorted(late, key=lambda cost: (-cost.late_seconds, cost.box_id)))


def rush_seconds(ledger: Promised, cutoff: int, margins: Margins) -> int:
    """Bench seconds, set-ups included, that new work may still take and leave by a cut-off; every promise is kept."""
    most = 0.0
    for start, room in zip(ledger.starts, rooms(ledger, margins), strict=True):
        free = ledger.queue.cutoffs[cutoff] - start.end - ledger.kept_seconds(start, cutoff, margins)
        most = max(most, min(free, room.seconds))
    return int(most)
