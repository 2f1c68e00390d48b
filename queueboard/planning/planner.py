"""The plan of a queue: the best of a few plans made in different ways, each of them quick and easy to explain."""

from collections.abc import Iterator

from queueboard.planning.buckets import buckets_of
from queueboard.planning.by_box import box_by_box, earliest_due, fewest_late
from queueboard.planning.checking import check
from queueboard.planning.cutting import batches_of
from queueboard.planning.evaluation import Batch, evaluate
from queueboard.planning.giving_up import exchange, give_up
from queueboard.planning.looking_ahead import look_ahead
from queueboard.planning.promises import Promises
from queueboard.planning.pulling_ahead import make_room, save_set_ups
from queueboard.planning.queue import Queue, QueuePlan
from queueboard.planning.redating import redated
from queueboard.planning.work import Work, work_of

DAY_LIST = 30
"""Restarts for the day list, where a little more time may be spent: about 50 ms for 150 knives."""


ORDERS = 6
"""In how many orders the day list tries to find honest cut-offs: all orders of three boxes."""


def plan_queue(queue: Queue, *, restarts: int = 0, earliest_due_first: bool = False) -> QueuePlan:
    """The plan of all open work: few boxes late, then little tardiness, then little set-up, then early finishes.

    restarts: so many ways through the cut-offs are followed side by side in search of fewer set-ups, in a queue that
    is not long; 0 for what a key waits for.
    earliest_due_first: nobody is given up; what is due together is grouped by process, and nothing is pulled ahead.
    The same queue gives the same plan, whatever the order of its boxes and knives.
    Raises PlanError, with a sentence, for a queue that has no meaning.
    """
    check(queue)
    work = work_of(queue)
    if earliest_due_first:
        return evaluate(queue, batches_of(buckets_of(work, _by_due(work))))
    return min(
        (evaluate(queue, batches) for batches in _candidates(work, 0 if work.is_long else restarts)),
        key=lambda plan: plan.score,
    )


def _candidates(work: Work, width: int) -> Iterator[tuple[Batch, ...]]:
    promises = give_up(work)
    if None in promises.places:
        yield from _guards(work)
    yield from _saving(redated(promises))
    if width:
        promises = give_up(work, width)
        exchange(promises)
        promises = redated(promises, ORDERS)
        if found := look_ahead(work, promises.places, width):
            yield batches_of(found)
        yield from _saving(promises)


def _saving(promises: Promises) -> Iterator[tuple[Batch, ...]]:
    """The runs that keep these promises, and those that save set-up besides."""
    yield batches_of(promises.buckets)
    save_set_ups(promises.buckets)
    yield batches_of(promises.buckets)


def _guards(work: Work) -> Iterator[tuple[Batch, ...]]:
    """Plans that ours must not be worse than, when somebody is late."""
    yield box_by_box(work, earliest_due(work))
    yield box_by_box(work, fewest_late(work))
    everybody = buckets_of(work, _by_due(work))
    make_room(everybody)
    yield batches_of(everybody)


def _by_due(work: Work) -> list[int | None]:
    return [work.unpromised if box.due is None else max(0, box.due) for box in work.boxes]
