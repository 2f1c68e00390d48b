"""A queue made ready for the planner: boxes in one order whatever order they came in, and their knives by process."""

from typing import NamedTuple

from queueboard.planning.evaluation import repeat_set_up
from queueboard.planning.queue import Queue, QueueBox
from queueboard.slotted import dataclass


class Knife(NamedTuple):
    """A knife, the shortest first when sorted."""

    seconds: int
    id: int


class Lot(NamedTuple):
    """Knives of one box and one process."""

    box: int
    """Index into the boxes of the work."""
    process: int
    knives: tuple[Knife, ...]
    seconds: int


LONG = 300
"""Knives; up to so many a plan takes milliseconds whatever is tried."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """The boxes with knives, by due and content, so that neither input order nor ids decide who is late.

    Places are the cut-offs by index and two behind them: beyond them all, and not promised.
    """

    queue: Queue
    boxes: tuple[QueueBox, ...]
    lots: tuple[tuple[Lot, ...], ...]
    """Per box, one for each process it needs."""
    seconds: tuple[int, ...]
    """Per box, without set-ups."""
    set_ups: tuple[int, ...]
    """Seconds by process, for a run after one of another process."""
    repeats: tuple[int, ...]
    """Seconds by process, for a run after one of the same process."""
    ends: tuple[int, ...]
    """Bench seconds before each place, none before one that has passed; the last two hold all work."""

    @property
    def beyond(self) -> int:
        """The place of late boxes that no cut-off bears."""
        return len(self.ends) - 2

    @property
    def unpromised(self) -> int:
        """The place of boxes that were promised to nobody."""
        return len(self.ends) - 1

    @property
    def is_long(self) -> bool:
        """True when there are too many knives to try things out one by one."""
        return sum(len(lot.knives) for parts in self.lots for lot in parts) > LONG

    def set_up(self, process: int, knives: int) -> int:
        """Seconds of set-up for so many knives of a process worked in one go, in runs of at most its run size."""
        if not knives:
            return 0
        return self.set_ups[process] + (knives - 1) // self.queue.processes[process].run_size * self.repeats[process]

    def linked(self, process: int) -> int:
        """Seconds saved when a process goes on where it ended the cut-off before."""
        return self.set_ups[process] - self.repeats[process]

    def due(self, box: int) -> int | None:
        """The place a box must hold to be on time; None when it is late already or was promised to nobody."""
        due = self.boxes[box].due
        return None if due is None or due < 0 or self.queue.cutoffs[due] < 0 else due


def work_of(queue: Queue) -> Work:
    """The work of a queue; boxes without knives need none."""
    boxes = tuple(sorted((box for box in queue.boxes if box.knives), key=_content))
    lots = tuple(_lots_of(place, box) for place, box in enumerate(boxes))
    set_ups = tuple(process.set_up_seconds for process in queue.processes)
    every = max(0, *queue.cutoffs[-1:], 0)
    every += sum(lot.seconds + len(lot.knives) * set_ups[lot.process] for parts in lots for lot in parts)
    return Work(
        queue=queue,
        boxes=boxes,
        lots=lots,
        seconds=tuple(sum(lot.seconds for lot in parts) for parts in lots),
        set_ups=set_ups,
        repeats=tuple(repeat_set_up(queue, process) for process in range(len(set_ups))),
        ends=(*(max(0, cutoff) for cutoff in queue.cutoffs), every, every),
    )


def _content(box: QueueBox) -> tuple[bool, int, int, list[tuple[int, int]], int]:
    knives = sorted((knife.process, knife.seconds) for knife in box.knives)
    return box.due is None, box.due or 0, box.weight, knives, box.id


def _lots_of(place: int, box: QueueBox) -> tuple[Lot, ...]:
    by_process: dict[int, list[Knife]] = {}
    for knife in box.knives:
        by_process.setdefault(knife.process, []).append(Knife(knife.seconds, knife.id))
    return tuple(
        Lot(place, process, tuple(sorted(knives)), sum(knife.seconds for knife in knives))
        for process, knives in sorted(by_process.items())
    )
