"""What a plan costs, as ratios to box by box in order of due, in the same run: python -m tests.bench.planner."""

import statistics
from collections.abc import Callable
from functools import partial
from time import process_time

from queueboard.planning.by_box import box_by_box, earliest_due
from queueboard.planning.evaluation import evaluate
from queueboard.planning.planner import DAY_LIST, plan_queue
from queueboard.planning.queue import Queue
from queueboard.planning.work import work_of
from tests.planning.fresh_queues import LOADS, fresh_queue
from tests.planning.instances import queue_of

SIZES = {150: 28, 500: 95, 2_000: 380, 10_000: 1_900}
"""Knives asked for, and the boxes that hold about so many."""


def seconds(work: Callable[[], object], times: int) -> float:
    """The middle one of some timings."""
    timings = []
    for _ in range(times):
        started = process_time()
        work()
        timings.append(process_time() - started)
    return statistics.median(timings)


def by_due(queue: Queue) -> object:
    """The plan that works box by box, earliest due date first."""
    work = work_of(queue)
    return evaluate(queue, box_by_box(work, earliest_due(work)))


def main() -> None:
    """Print the table."""
    heads = ("knives", 7), ("load", 7), ("late", 5), ("box by box", 11), ("plan", 11), ("ratio", 6)
    print(" ".join(f"{head:>{width}}" for head, width in (*heads, ("day list", 11), ("ratio", 6))))
    for knives, boxes in SIZES.items():
        for load in LOADS:
            queue = queue_of(fresh_queue(knives, load, boxes))
            real = sum(len(box.knives) for box in queue.boxes)
            base = seconds(partial(by_due, queue), 5)
            plan = seconds(partial(plan_queue, queue), 3)
            row = f"{real:>7} {load:>7} {len(plan_queue(queue).late):>5} {base * 1000:>8.1f} ms {plan * 1000:>8.1f} ms"
            row += f" {plan / base:>6.1f}"
            if knives < 300:
                full = seconds(partial(plan_queue, queue, restarts=DAY_LIST), 3)
                row += f" {full * 1000:>8.1f} ms {full / base:>6.1f}"
            print(row)


if __name__ == "__main__":
    main()
