"""Work put together by process and cut-off, and the seconds left before each cut-off.

Whether everybody can be on time is then one comparison a cut-off: the work due by it, set-ups included, against the
bench seconds before it.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from itertools import accumulate

from queueboard.planning.evaluation import repeat_set_up
from queueboard.planning.queue import Queue


@dataclass(slots=True)
class Buckets:
    """How many knives, and how many seconds of them, each process has to be done with by each cut-off."""

    queue: Queue
    knives: list[list[int]] = field(init=False)
    seconds: list[list[int]] = field(init=False)
    repeats: list[int] = field(init=False)

    def __post_init__(self) -> None:
        """Start with nothing to do."""
        places, processes = len(self.queue.cutoffs), range(len(self.queue.processes))
        self.knives = [[0] * places for _ in processes]
        self.seconds = [[0] * places for _ in processes]
        self.repeats = [repeat_set_up(self.queue, process) for process in processes]

    def add(self, process: int, cutoff: int, knives: int, seconds: int) -> None:
        """Put work into a bucket, or take it out with figures below 0."""
        self.knives[process][cutoff] += knives
        self.seconds[process][cutoff] += seconds

    def set_up(self, process: int, knives: int) -> int:
        """Seconds of set-up for so many knives of a process worked in one go, in runs of at most the run size."""
        if not knives:
            return 0
        again = (knives - 1) // self.queue.run_size
        return self.queue.processes[process].set_up_seconds + again * self.repeats[process]

    def load(self) -> list[int]:
        """Seconds of work and set-up in the buckets of each cut-off."""
        total = [0] * len(self.queue.cutoffs)
        for process, row in enumerate(self.knives):
            for cutoff, knives in enumerate(row):
                if knives:
                    total[cutoff] += self.seconds[process][cutoff] + self.set_up(process, knives)
        return total


def buckets_of(queue: Queue, dues: Mapping[int, int]) -> Buckets:
    """The buckets of the boxes that have a place among the cut-offs in dues, by box id; others are left out.

    A due of -1 counts for the first cut-off.
    """
    buckets = Buckets(queue)
    for box in queue.boxes:
        due = dues.get(box.id, len(queue.cutoffs))
        if due < len(queue.cutoffs):
            for knife in box.knives:
                buckets.add(knife.process, max(0, due), 1, knife.seconds)
    return buckets


def slack(queue: Queue, dues: Mapping[int, int]) -> tuple[int, ...]:
    """Bench seconds left before each cut-off when the work due by it is done, set-ups included; below 0: too much work.

    dues: index into the cut-offs by box id; boxes that are not in it, or are due beyond the last cut-off, take no time.
    """
    return tuple(slack_of(queue.cutoffs, buckets_of(queue, dues).load()))


def slack_of(cutoffs: Iterable[int], load: Iterable[int]) -> list[int]:
    """Each cut-off less the running sum of the load."""
    return [cutoff - done for cutoff, done in zip(cutoffs, accumulate(load), strict=True)]
