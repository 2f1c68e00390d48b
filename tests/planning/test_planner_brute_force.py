"""Tiny queues against every way to work them: all orders of the knives, cut into runs in every way."""

from collections import Counter
from collections.abc import Sequence
from functools import cache
from itertools import combinations
from random import Random

import pytest

from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess

QUEUES = 200
"""Drawn for each share of the set-up that is saved."""

Outcome = tuple[int, int, int]
"""Weight that is late, tardiness, set-up: compared in this order."""


def tiny(dice: Random, saved_percent: int) -> Queue:
    """At most seven knives in three or four boxes, due so that they press."""
    processes = dice.randint(2, 3)
    boxes = dice.randint(3, 4)
    sizes = [1] * boxes
    for _ in range(dice.randint(1, 7 - boxes)):
        sizes[dice.randrange(boxes)] += 1
    ids = iter(range(10))
    cutoffs = (30, 60, 100, 160, 240, 400, 600)
    return Queue(
        boxes=tuple(
            QueueBox(
                id=box,
                due=dice.choice((0, 1, 1, 2, 2, 3)),
                weight=dice.choice((1, 1, 1, 2)),
                knives=tuple(
                    QueueKnife(id=next(ids), process=dice.randrange(processes), seconds=dice.randint(5, 30))
                    for _ in range(size)
                ),
            )
            for box, size in enumerate(sizes)
        ),
        processes=tuple(
            QueueProcess(set_up_seconds=dice.choice((10, 20, 30)), run_size=dice.randint(2, 3))
            for _ in range(processes)
        ),
        cutoffs=cutoffs,
        saved_percent=saved_percent,
    )


def runs_of(ids: Sequence[int], run_size: int) -> list[int]:
    """Every run of some knives, as a number with their ids as its bits."""
    return [sum(1 << knife for knife in run) for size in range(1, run_size + 1) for run in combinations(ids, size)]


def best(queue: Queue) -> Outcome:
    """The best outcome there is.

    What follows from the knives done so far hangs on which they are, what the bench is set up for and the clock; the
    clock is their work and the set-ups paid. Some knives are a number with their ids as its bits.
    """
    knives = [knife for box in queue.boxes for knife in box.knives]
    everything = (1 << len(knives)) - 1
    seconds = [sum(knife.seconds for knife in knives if some >> knife.id & 1) for some in range(everything + 1)]
    boxes = [(sum(1 << knife.id for knife in box.knives), box.due, box.weight) for box in queue.boxes]
    runs = [
        runs_of([knife.id for knife in knives if knife.process == process], costs.run_size)
        for process, costs in enumerate(queue.processes)
    ]

    @cache
    def loss(done: int, more: int, end: int) -> tuple[int, int]:
        """What is lost when these more knives end the boxes they end at this time: weight late, and tardiness."""
        late = tardiness = 0
        for members, due, weight in boxes:
            if members & more and members & (done | more) == members and due is not None and end > queue.cutoffs[due]:
                late += weight
                tardiness += next(moment for moment in queue.cutoffs if moment >= end) - queue.cutoffs[due]
        return late, tardiness

    @cache
    def onward(done: int, mounted: int, paid: int) -> Outcome:
        """The best of what is still to come."""
        if done == everything:
            return (0, 0, 0)
        found: list[Outcome] = []
        for process, costs in enumerate(queue.processes):
            saved = queue.saved_percent if process == mounted else 0
            cost = (costs.set_up_seconds * (100 - saved) + 50) // 100
            for more in runs[process]:
                if not done & more:
                    late, tardiness = loss(done, more, seconds[done | more] + paid + cost)
                    rest = onward(done | more, process, paid + cost)
                    found.append((late + rest[0], tardiness + rest[1], cost + rest[2]))
        return min(found)

    return onward(0, -1, 0)


def compared(saved_percent: int) -> Counter[str]:
    """How often the planner is as good as the best, and where it first falls behind."""
    dice = Random(saved_percent)  # noqa: S311 drawn queues, no secret
    seen: Counter[str] = Counter()
    for _ in range(QUEUES):
        queue = tiny(dice, saved_percent)
        score = plan_queue(queue, restarts=30).score
        least = best(queue)
        ours = (score.late_weight, score.tardiness, score.set_up)
        assert ours >= least
        names = ("late", "tardiness", "set-up")
        seen[next((name for name, mine, other in zip(names, ours, least, strict=True) if mine > other), "best")] += 1
    return seen


@pytest.mark.parametrize("saved_percent", [100, 50, 0])
def test_tiny_queues_are_planned_nearly_as_well_as_can_be(saved_percent: int) -> None:
    """At most 1 queue in 200 has more weight late than must be, 1 in 10 more tardiness, 1 in 10 more set-up.

    Seen in 600 queues: 0, 23 and 26.
    """
    seen = compared(saved_percent)

    assert seen["late"] <= QUEUES // 200
    assert seen["tardiness"] <= QUEUES // 10
    assert seen["set-up"] <= QUEUES // 10
