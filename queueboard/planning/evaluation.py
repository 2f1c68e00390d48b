"""What a list of runs comes to: clock, finishes, who is late, and the score. Every plan is made from its runs here."""

from bisect import bisect_left
from collections.abc import Iterable

from queueboard.planning.queue import Queue, QueueBox, QueuePlan, QueueRun, Score

Batch = tuple[int, tuple[int, ...]]
"""A run before it has a clock: process and knife ids."""


def repeat_set_up(queue: Queue, process: int) -> int:
    """Seconds of set-up for a run of this process right after another one of it; half a second counts whole."""
    costs = queue.processes[process]
    if costs.repeat_set_up_seconds is not None:
        return costs.repeat_set_up_seconds
    return repeat_seconds(costs.set_up_seconds, queue.saved_percent)


def repeat_seconds(set_up_seconds: int, saved_percent: int) -> int:
    """What is left of a set-up when so much of it is saved; half a second counts whole."""
    return (set_up_seconds * (100 - saved_percent) + 50) // 100


def set_up(queue: Queue, process: int, after: int | None) -> int:
    """Seconds of set-up for a run of this process when the bench is set up for another; after None: for none."""
    return repeat_set_up(queue, process) if process == after else queue.processes[process].set_up_seconds


def evaluate(queue: Queue, batches: Iterable[Batch]) -> QueuePlan:
    """The plan that works these batches in this order without a pause."""
    runs = _timed(queue, batches)
    ends = {knife_id: run.end for run in runs for knife_id in run.knife_ids}
    finish = {box.id: max(ends[knife.id] for knife in box.knives) for box in queue.boxes if box.knives}
    late = [box for box in queue.boxes if box.id in finish and is_late(queue, box, finish[box.id])]
    honest = {box.id: bisect_left(queue.cutoffs, finish[box.id]) for box in late}
    return QueuePlan(
        runs=runs,
        finish=finish,
        late=tuple(sorted(honest)),
        honest=honest,
        score=Score(
            late_weight=sum(box.weight for box in late),
            tardiness=sum(tardiness(queue, box, finish[box.id]) for box in late),
            set_up=sum(run.set_up_seconds for run in runs),
            completion=sum(finish.values()),
        ),
    )


def is_late(queue: Queue, box: QueueBox, finish: int) -> bool:
    """True when the box was promised and is finished after its cut-off."""
    return box.due is not None and (box.due < 0 or finish > queue.cutoffs[box.due])


def tardiness(queue: Queue, box: QueueBox, finish: int) -> int:
    """Seconds from the cut-off of a late box, or from now when it has passed, to the next one after its finish."""
    promised = queue.cutoffs[box.due] if box.due is not None and box.due >= 0 else 0
    honest = bisect_left(queue.cutoffs, finish)
    leaves = queue.cutoffs[honest] if honest < len(queue.cutoffs) else finish
    return leaves - max(0, promised)


def _timed(queue: Queue, batches: Iterable[Batch]) -> tuple[QueueRun, ...]:
    seconds = {knife.id: knife.seconds for box in queue.boxes for knife in box.knives}
    runs: list[QueueRun] = []
    clock, mounted = 0, queue.set_up_now
    for process, knife_ids in batches:
        cost = set_up(queue, process, mounted)
        end = clock + cost + sum(seconds[knife_id] for knife_id in knife_ids)
        runs.append(QueueRun(process=process, knife_ids=knife_ids, set_up_seconds=cost, start=clock, end=end))
        clock, mounted = end, process
    return tuple(runs)
