"""Ways to put the day's runs together, beside the product's plan."""

from collections.abc import Iterable

from queueboard.planning.evaluation import Batch
from queueboard.planning.queue import Queue, QueueBox
from tests.year.shop import RUN_SIZE, Shop

AHEAD = 2
"""Days of work that are looked at; no more can be done in one."""


def box_by_box(shop: Shop, queue: Queue) -> list[Batch]:
    """The oldest box first, all of it, then the next one."""
    boxes = _oldest(queue, AHEAD * shop.day_seconds)
    return [batch for box in boxes for batch in _grouped([box])]


def day_batches(shop: Shop, queue: Queue) -> list[Batch]:
    """A sensible owner by eye: the oldest boxes that fill a day, grouped by process, then those of the next day."""
    batches: list[Batch] = []
    left = _oldest(queue, AHEAD * shop.day_seconds)
    while left:
        day = _first(left, shop.day_seconds)
        batches += _grouped(day, first=queue.set_up_now)
        left = left[len(day) :]
    return batches


def _oldest(queue: Queue, seconds: int) -> list[QueueBox]:
    return _first(sorted(queue.boxes, key=lambda box: box.id), seconds)


def _first(boxes: list[QueueBox], seconds: int) -> list[QueueBox]:
    """The first boxes that fill so many seconds, the one that fills them up included."""
    taken: list[QueueBox] = []
    for box in boxes:
        if seconds <= 0:
            break
        taken.append(box)
        seconds -= sum(knife.seconds for knife in box.knives)
    return taken


def _grouped(boxes: Iterable[QueueBox], first: int | None = None) -> list[Batch]:
    by_process: dict[int, list[int]] = {}
    for box in boxes:
        for knife in box.knives:
            by_process.setdefault(knife.process, []).append(knife.id)
    return [
        (process, tuple(by_process[process][start : start + RUN_SIZE]))
        for process in sorted(by_process, key=lambda process: (process != first, process))
        for start in range(0, len(by_process[process]), RUN_SIZE)
    ]
