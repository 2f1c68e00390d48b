"""The plan as it stands, in the planner's own shape, for everything that is asked of it: chances and new promises."""

from bisect import bisect_left, bisect_right
from collections.abc import Container, Iterable, Sequence
from dataclasses import replace
from datetime import datetime

from queueboard.planning.announcing import Guess, announced
from queueboard.planning.batches import Bench, moments_of, queue_of
from queueboard.planning.chance import BoxChance, Doubt, chances, overloads
from queueboard.planning.evaluation import evaluate
from queueboard.planning.learning import Factor
from queueboard.planning.placing import Promised, promised
from queueboard.planning.queue import QueueBox
from queueboard.planning.timing import Batch
from queueboard.slotted import dataclass
from queueboard.values.plan import Overload, Run, UnseenWork

KNIVES_APART = 1000
"""Ids below zero, so many a box, for knives that nobody has seen yet; a box holds at most 999."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """What was promised and what the bench bears, to put questions to."""

    promised: Promised
    bench: Bench
    moments: tuple[datetime, ...]
    """For each cut-off of the queue the earliest moment that it stands for."""

    def seconds_of(self, box_ids: Container[int]) -> int:
        """Hands-on seconds of these boxes, as far as the ledger knows them."""
        return sum(knife.seconds for box in self.promised.queue.boxes if box.id in box_ids for knife in box.knives)

    def cutoff_of(self, moment: datetime) -> int | None:
        """The index of the cut-off that stands for a moment; None when the ledger knows no such moment."""
        cutoffs, seconds = self.promised.queue.cutoffs, self.bench.seconds_before(moment)
        place = bisect_left(cutoffs, seconds)
        return place if place < len(cutoffs) and cutoffs[place] == seconds else None

    def with_moments(self, moments: Iterable[datetime]) -> "Ledger":
        """The same ledger, asked about more moments from now on."""
        queue, plan = self.promised.queue, self.promised.plan
        stand_for = dict(zip(queue.cutoffs, self.moments, strict=True))
        for moment in sorted(moments):
            stand_for.setdefault(self.bench.seconds_before(moment), moment)
        cutoffs = tuple(sorted(stand_for))
        if cutoffs == queue.cutoffs:
            return self

        def moved(place: int | None) -> int | None:
            return place if place is None or place < 0 else bisect_left(cutoffs, queue.cutoffs[place])

        boxes = tuple(replace(box, due=moved(box.due)) for box in queue.boxes)
        queue_now = replace(queue, cutoffs=cutoffs, boxes=boxes)
        plan = evaluate(queue_now, ((run.process, run.knife_ids) for run in plan.runs))
        return replace(
            self,
            promised=promised(queue_now, plan, self.promised.doubt),
            moments=tuple(stand_for[seconds] for seconds in cutoffs),
        )

    def without(self, box_id: int) -> "Ledger":
        """The same ledger as if a box were not there, so that it can be asked about as a new one."""
        queue, plan = self.promised.queue, self.promised.plan
        gone = {knife.id for box in queue.boxes if box.id == box_id for knife in box.knives}
        queue = replace(queue, boxes=tuple(box for box in queue.boxes if box.id != box_id))
        left = ((run.process, tuple(knife for knife in run.knife_ids if knife not in gone)) for run in plan.runs)
        plan = evaluate(queue, (batch for batch in left if batch[1]))
        return replace(self, promised=promised(queue, plan, self.promised.doubt))


def ledger_of(
    batches: Sequence[Batch],
    runs: Sequence[Run],
    bench: Bench,
    unseen: Sequence[UnseenWork],
    factors: tuple[Factor, ...],
    yield_sd: float,
) -> Ledger | None:
    """The ledger of a plan; None for a shop without bench time, of which nothing can be asked.

    unseen: boxes that are announced or not opened. They stand behind all that has runs: their promises are kept for
    them, and nobody can begin them before they are opened.
    factors: how sure the seconds of each process are, in the order of the bench's processes.
    yield_sd: how far the bench time of a day strays, as a share of it.
    """
    days = tuple(seconds * bench.rules.people for seconds in bench.clock.days())
    if not days:
        return None
    under_way = bool(runs) and runs[0].under_way is not None
    pieces = [piece for batch in batches for piece in batch]
    queue = queue_of(pieces, bench, mounted=batches[0][0].knife.process if under_way else None)
    place = {process.name: index for index, process in enumerate(bench.processes)}
    order = [(place[b[0].knife.process], tuple(piece.knife.knife_id for piece in b)) for b in batches]
    soonest = sorted(unseen, key=lambda work: (work.ship_by is None, work.ship_by or bench.now, work.box_id))
    guessed = tuple(_guessed(work, queue.cutoffs, bench) for work in soonest)
    order += [(box.knives[0].process, tuple(knife.id for knife in box.knives)) for box in guessed]
    queue = replace(queue, boxes=queue.boxes + guessed)
    plan = evaluate(queue, order)
    doubt = Doubt(factors=factors, yield_sd=yield_sd, days=days)
    return Ledger(
        promised=promised(queue, plan, doubt),
        bench=bench,
        moments=tuple(moments_of({piece.box.box_id: piece.box for piece in pieces}.values(), bench).values()),
    )


def _guessed(work: UnseenWork, cutoffs: Sequence[int], bench: Bench) -> QueueBox:
    """An unseen box by a guess, due at the last cut-off up to its own."""
    guess = Guess(process=0, knife_seconds=work.knife_seconds)
    box = announced(guess, work.box_id, -KNIVES_APART * (work.box_id + 1), work.knives)
    if work.ship_by is None:
        return box
    due = bisect_right(cutoffs, bench.seconds_before(work.ship_by)) - 1 if work.ship_by >= bench.now else -1
    return replace(box, due=due)


def chances_of(ledger: Ledger | None) -> dict[int, BoxChance]:
    """How each promised box with knives stands, by its id."""
    if ledger is None:
        return {}
    told = ledger.promised
    return {chance.box_id: chance for chance in chances(told.queue, told.plan, told.doubt)}


def overloads_of(ledger: Ledger | None) -> tuple[Overload, ...]:
    """The moments before which far too much was promised, the first one first."""
    if ledger is None:
        return ()
    told = overloads(ledger.promised.queue, ledger.promised.doubt)
    zone = ledger.bench.now.tzinfo
    return tuple(
        Overload(before=ledger.moments[one.cutoff].astimezone(zone), minutes=-(-one.seconds // 60)) for one in told
    )
