"""The order of the knives at the bench, as batches: what lies on the bench, what is pinned, then the planner's runs."""

from bisect import bisect_left
from collections.abc import Callable, Iterable, Sequence
from datetime import UTC, datetime
from itertools import chain, groupby

from queueboard.planning.clock import BenchClock
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess
from queueboard.planning.ranks import Piece, asked_by, due_at, weight, without_lost_labels
from queueboard.planning.timing import Batch
from queueboard.slotted import dataclass
from queueboard.values.plan import BoxWork, PlanRules, ProcessWork
from queueboard.words import RunReason


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What there is to work with: the processes, the time, and the shop's choices."""

    processes: tuple[ProcessWork, ...]
    clock: BenchClock
    now: datetime
    """Aware, in the shop's zone."""
    rules: PlanRules
    leaves: tuple[datetime, ...]
    """The coming moments at which boxes can leave, whoever's."""

    def seconds_before(self, moment: datetime) -> int:
        """Bench seconds of all people together from now to a moment."""
        return self.clock.seconds_before(moment) * self.rules.people

    @property
    def by_name(self) -> dict[str, ProcessWork]:
        """The processes by name."""
        return {process.name: process for process in self.processes}


def fresh_batches(pieces: Sequence[Piece], bench: Bench, spent: Callable[[Iterable[Batch]], int]) -> tuple[Batch, ...]:
    """A new plan: what is on the bench, what is pinned, then the runs of the planner.

    spent: bench seconds, of all people together, that batches take. Where labels cannot be saved it is made once more
    without them, so that their boxes go by what was promised.
    """
    ahead = on_bench(pieces, bench) + _grouped([p for p in pieces if p.why is RunReason.THIS_NEXT], bench)
    rest = [piece for piece in pieces if piece.why not in (RunReason.BEGUN, RunReason.THIS_NEXT)]
    mounted = ahead[-1][0].knife.process if ahead else None
    queue = queue_of(rest, bench, spent=spent(ahead), mounted=mounted)
    rules = bench.rules
    plan = plan_queue(queue, restarts=rules.restarts, earliest_due_first=rules.earliest_due_first)
    saved = without_lost_labels(rest, frozenset(plan.late), bench.now)
    if saved != rest:
        rest, queue = saved, queue_of(saved, bench, spent=spent(ahead), mounted=mounted)
        plan = plan_queue(queue, restarts=rules.restarts, earliest_due_first=rules.earliest_due_first)
    by_id = {piece.knife.knife_id: piece for piece in rest}
    planned = [tuple(by_id[knife_id] for knife_id in run.knife_ids) for run in plan.runs]
    return ahead + _joined(planned, frozenset(plan.late), bench)


def on_bench(pieces: Sequence[Piece], bench: Bench) -> tuple[Batch, ...]:
    """The runs under way, then what else lies on the bench: nobody plans that away."""
    begun = [piece for piece in pieces if piece.why is RunReason.BEGUN]
    under_way = sorted((p for p in begun if p.knife.run_id is not None), key=lambda p: p.knife.run_id or 0)
    runs = tuple(tuple(batch) for _, batch in groupby(under_way, key=lambda p: p.knife.run_id))
    return runs + _grouped([piece for piece in begun if piece.knife.run_id is None], bench)


def queue_of(pieces: Iterable[Piece], bench: Bench, *, spent: int = 0, mounted: str | None = None) -> Queue:
    """The planner's own shape of this work, the people's time pooled.

    spent: bench seconds that are gone before it. mounted: the process that the bench is set up for then.
    """
    knives: dict[int, list[QueueKnife]] = {}
    boxes: dict[int, BoxWork] = {}
    place = {process.name: index for index, process in enumerate(bench.processes)}
    for piece in pieces:
        knife = QueueKnife(id=piece.knife.knife_id, process=place[piece.knife.process], seconds=piece.knife.seconds)
        boxes[piece.box.box_id] = piece.box
        knives.setdefault(piece.box.box_id, []).append(knife)
    due = {box_id: due_at(box, bench.now) for box_id, box in boxes.items()}
    cutoffs = [seconds - spent for seconds in moments_of(boxes.values(), bench)]

    def due_of(moment: datetime | None) -> int | None:
        if moment is None:
            return None
        return bisect_left(cutoffs, bench.seconds_before(moment) - spent) if moment >= bench.now else -1

    return Queue(
        boxes=tuple(
            QueueBox(id=box_id, due=due_of(due[box_id]), knives=tuple(knives[box_id]), weight=weight(box))
            for box_id, box in sorted(boxes.items())
        ),
        processes=tuple(
            QueueProcess(set_up_seconds=process.set_up_seconds, run_size=process.run_size)
            for process in bench.processes
        ),
        cutoffs=tuple(cutoffs),
        saved_percent=bench.rules.saved_percent,
        set_up_now=None if mounted is None else place[mounted],
    )


def moments_of(boxes: Iterable[BoxWork], bench: Bench) -> dict[int, datetime]:
    """The moments still to come by which boxes are due or can leave, by the bench seconds before each, in order.

    Of those without bench time between them it is the first.
    """
    asked = (due_at(box, bench.now) for box in boxes)
    ahead = {moment.astimezone(UTC) for moment in (*asked, *bench.leaves) if moment is not None and moment >= bench.now}
    first: dict[int, datetime] = {}
    for moment in sorted(ahead):
        first.setdefault(bench.seconds_before(moment), moment)
    return first


def _joined(batches: Sequence[Batch], late: frozenset[int], bench: Bench) -> tuple[Batch, ...]:
    """Neighbours of one process that are due together as one, cut to the process's own run size.

    The planner counts a set-up that is wholly saved as nothing, so that to it two small runs are as good as one. Only
    runs without a late box are joined: the last of them is on time for the same due, so all of them stay so.
    """

    def alike(numbered: tuple[int, Batch]) -> tuple[str, datetime, int]:
        place, batch = numbered
        on_time = not any(piece.box.box_id in late for piece in batch)
        due = min(asked_by(piece, bench.now) for piece in batch)
        return batch[0].knife.process, due, -1 if on_time else place

    joined: list[Batch] = []
    for (process, _, _), group in groupby(enumerate(batches), key=alike):
        together = tuple(chain.from_iterable(batch for _, batch in group))
        size = bench.by_name[process].run_size
        joined += [together[first : first + size] for first in range(0, len(together), size)]
    return tuple(joined)


def kept(batches: Iterable[Batch], ids: frozenset[int]) -> tuple[Batch, ...]:
    """The same batches with only these knives in them; empty ones fall out."""
    left = (tuple(piece for piece in batch if piece.knife.knife_id in ids) for batch in batches)
    return tuple(batch for batch in left if batch)


def _grouped(pieces: Sequence[Piece], bench: Bench) -> tuple[Batch, ...]:
    """By process, the one with the earliest ship-by first, cut into runs."""
    turn = {name: place for place, name in enumerate(dict.fromkeys(piece.knife.process for piece in pieces))}
    batches: list[Batch] = []
    for name, group in groupby(sorted(pieces, key=lambda p: turn[p.knife.process]), key=lambda p: p.knife.process):
        together, size = tuple(group), bench.by_name[name].run_size
        batches += [together[first : first + size] for first in range(0, len(together), size)]
    return tuple(batches)
