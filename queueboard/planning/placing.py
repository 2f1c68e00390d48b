"""Where a new box fits between the runs of a plan, and what the promises already made leave free there.

The new box is worked in one go. Everything behind it moves back by the same seconds, so a promise holds when its
finish, moved so far, still leaves free before its cut-off what is to be kept free.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import inf, sqrt

from queueboard.planning.chance import Doubt, Stretch, alone, stretches
from queueboard.planning.evaluation import Batch, set_up
from queueboard.planning.queue import Queue, QueueBox, QueuePlan
from queueboard.slotted import dataclass

SPREADS = 1.88
"""Kept free below each cut-off when a shop says nothing else: 97 in 100 by the normal formula for one box.

Over a year about 96 in 100 boxes were on time so, and 94 or 95 with 1.28: later promises use up what earlier ones
left, and the last box of each cut-off has no more than that. Simulated here, no shop's data."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Margins:
    """What is to be kept free before a cut-off."""

    spreads: float = SPREADS
    """Times one standard deviation of the work and of the bench before the cut-off, 0 or more."""
    constant_seconds: int = 0
    """On top."""
    walk_in_seconds: int = 0
    """Of each usual day, for people not yet in the door; 0 when asking for one who is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """A box whose cut-off is to be kept."""

    box_id: int
    run: int
    """Index of the run that finishes it."""
    cutoff: int
    """Index into the queue's cut-offs; for a late box the first one that is honest instead."""
    late: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Promised:
    """A plan with the promises it keeps; made once for many questions."""

    queue: Queue
    plan: QueuePlan
    doubt: Doubt
    starts: tuple[Stretch, ...]
    """The work before each run, and last of all before the end of the plan."""
    held: tuple[Held, ...]
    """By the run that finishes them."""
    bench_variances: tuple[float, ...]
    """Of the bench seconds before each cut-off."""

    def kept_seconds(self, work: Stretch, cutoff: int, margins: Margins, since: int = 0) -> float:
        """What is to be kept free between the end of this work and its cut-off; since: the second it begins at most.

        Days stray each by itself, so that those before *since* do not count.
        """
        kept = margins.walk_in_seconds * max(0, self.queue.cutoffs[cutoff] - since) / self.doubt.days[-1]
        kept += margins.constant_seconds
        if not margins.spreads:
            return kept
        return kept + margins.spreads * sqrt(work.variance(self.doubt) + self.bench_variance(cutoff, since))

    def bench_variance(self, cutoff: int, since: int = 0) -> float:
        """Of the bench seconds from one second on before a cut-off; nothing for a cut-off before it."""
        whole = self.bench_variances[cutoff]
        return max(0.0, whole - self.doubt.bench_variance(since)) if since else whole


def promised(queue: Queue, plan: QueuePlan, doubt: Doubt) -> Promised:
    """The promises that a plan keeps. A late box holds the honest cut-off; one beyond them all holds nothing."""
    nothing = Stretch(end=0, noise=0.0, seconds=(0,) * len(queue.processes))
    last_run = {knife_id: place for place, run in enumerate(plan.runs) for knife_id in run.knife_ids}
    held = []
    for box in queue.boxes:
        if box.due is None or not box.knives:
            continue
        cutoff = plan.honest.get(box.id, box.due)
        if cutoff < len(queue.cutoffs):
            run = max(last_run[knife.id] for knife in box.knives)
            held.append(Held(box_id=box.id, run=run, cutoff=cutoff, late=box.id in plan.honest))
    return Promised(
        queue=queue,
        plan=plan,
        doubt=doubt,
        starts=(nothing, *stretches(queue, plan)),
        held=tuple(sorted(held, key=lambda one: (one.run, one.box_id))),
        bench_variances=tuple(doubt.bench_variance(cutoff) for cutoff in queue.cutoffs),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What may still be worked before a run."""

    seconds: float
    """Below 0 when a promise has less than it should already; without end when nothing promised comes after."""
    binds: Held | None
    """The box that leaves no more."""


def rooms(ledger: Promised, margins: Margins, new: Stretch | None = None) -> list[Room]:
    """The room before each run, and last of all behind the plan; new: work that is to fit in, for what may stray."""
    found = [Room(seconds=inf, binds=None)] * len(ledger.starts)
    for one in ledger.held:
        work = ledger.starts[one.run + 1]
        kept = ledger.kept_seconds(work.joined(new) if new else work, one.cutoff, margins)
        left = ledger.queue.cutoffs[one.cutoff] - work.end - kept
        if left < found[one.run].seconds:
            found[one.run] = Room(seconds=left, binds=one)
    for place in range(len(found) - 2, -1, -1):
        if found[place + 1].seconds < found[place].seconds:
            found[place] = found[place + 1]
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """The runs of a new box between two others."""

    batches: tuple[Batch, ...]
    seconds: int
    """Its knives and their set-ups."""
    shift_seconds: int
    """What everything behind it moves back by: with the set-up that is no longer saved behind it, or is by it."""


def block_of(queue: Queue, box: QueueBox, before: int | None, after: int | None) -> Block:
    """The block of a box behind a run of one process and before one of another; None when there is none."""
    by_process: dict[int, list[int]] = {}
    for knife in box.knives:
        by_process.setdefault(knife.process, []).append(knife.id)
    order = sorted(by_process, key=lambda process: (process != before, process == after, process))
    batches = tuple(
        (process, tuple(by_process[process][first : first + size]))
        for process in order
        for size in (queue.processes[process].run_size,)
        for first in range(0, len(by_process[process]), size)
    )
    seconds, mounted = sum(knife.seconds for knife in box.knives), before
    for process, _ in batches:
        seconds += set_up(queue, process, mounted)
        mounted = process
    shift = seconds
    if after is not None:
        shift += set_up(queue, after, mounted) - set_up(queue, after, before)
    return Block(batches=batches, seconds=seconds, shift_seconds=shift)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A new box before one of the runs."""

    run: int
    """Index of the run it comes before; the number of runs when behind them all."""
    block: Block
    work: Stretch
    """All work up to its finish."""
    room: Room

    @property
    def keeps_promises(self) -> bool:
        """True when everybody behind it keeps their cut-off, with what is to be kept free."""
        return self.block.shift_seconds <= max(0.0, self.room.seconds)


def places(ledger: Promised, box: QueueBox, margins: Margins) -> Iterator[Place]:
    """Every place of a new box, the first run's first; behind them all it keeps every promise."""
    queue, runs = ledger.queue, ledger.plan.runs
    own = alone(box, len(queue.processes))
    processes = [queue.set_up_now, *(run.process for run in runs), None]
    blocks: dict[tuple[int | None, int | None], Block] = {}
    for run, room in enumerate(rooms(ledger, margins, own)):
        around = processes[run], processes[run + 1]
        if around not in blocks:
            blocks[around] = block_of(queue, box, *around)
        block, before = blocks[around], ledger.starts[run]
        work = before.joined(replace(own, end=block.seconds))
        yield Place(run=run, block=block, work=work, room=room)
