"""Queues without a meaning are refused here, with a sentence that names the figure and what to give instead."""

from collections import Counter
from collections.abc import Iterable
from itertools import pairwise

from queueboard.planning.errors import PlanError
from queueboard.planning.queue import Queue, QueueBox


def check(queue: Queue) -> None:
    """Raise PlanError, with a sentence, for a queue that has no meaning."""
    if not 0 <= queue.saved_percent <= 100:
        raise PlanError(f"A repeated set-up saves {queue.saved_percent} percent; give a share from 0 to 100.")
    for earlier, later in pairwise(queue.cutoffs):
        if earlier >= later:
            raise PlanError(
                f"The cut-off at {later} s comes after the one at {earlier} s; give them in order, each once."
            )
    _check_processes(queue)
    for box in queue.boxes:
        _check_box(queue, box)
    _check_once("Box", (box.id for box in queue.boxes))
    _check_once("Knife", (knife.id for box in queue.boxes for knife in box.knives))


def _check_processes(queue: Queue) -> None:
    processes = len(queue.processes)
    for place, process in enumerate(queue.processes):
        if process.run_size < 1:
            raise PlanError(
                f"Process {place} has a run size of {process.run_size}; at least 1 knife must fit in a run."
            )
        for seconds in (process.set_up_seconds, process.repeat_set_up_seconds or 0):
            if seconds < 0:
                raise PlanError(f"Process {place} has a set-up of {seconds} s; give 0 or more.")
        if (process.repeat_set_up_seconds or 0) > process.set_up_seconds:
            raise PlanError(
                f"Process {place} has a repeated set-up of {process.repeat_set_up_seconds} s, more than the "
                f"{process.set_up_seconds} s of a first one; give at most as much."
            )
    if queue.set_up_now is not None and not 0 <= queue.set_up_now < processes:
        raise PlanError(f"The bench is set up for process {queue.set_up_now}, which is none of the {processes}.")


def _check_box(queue: Queue, box: QueueBox) -> None:
    cutoffs, processes = len(queue.cutoffs), len(queue.processes)
    if box.due is not None and not -1 <= box.due < cutoffs:
        raise PlanError(f"Box {box.id} is due at cut-off {box.due}; give one of the {cutoffs} from 0 on, or -1.")
    if box.weight < 1:
        raise PlanError(f"Box {box.id} has a weight of {box.weight}; give 1 or more.")
    for knife in box.knives:
        if not 0 <= knife.process < processes:
            raise PlanError(f"Knife {knife.id} needs process {knife.process}, which is none of the {processes}.")
        if knife.seconds < 0:
            raise PlanError(f"Knife {knife.id} takes {knife.seconds} s; give 0 or more.")


def _check_once(what: str, ids: Iterable[int]) -> None:
    twice = sorted(number for number, times in Counter(ids).items() if times > 1)
    if twice:
        raise PlanError(f"{what} {twice[0]} is in the queue twice; nothing was planned.")
