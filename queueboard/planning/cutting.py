"""Buckets in working order, cut into runs."""

from collections.abc import Iterator, Sequence

from queueboard.planning.buckets import Buckets
from queueboard.planning.evaluation import Batch
from queueboard.planning.linking import linked_order
from queueboard.planning.work import Lot, Work


def batches_of(buckets: Buckets) -> tuple[Batch, ...]:
    """The runs of these buckets: cut-off by cut-off, processes linked end to start."""
    work = buckets.work
    return tuple(
        batch
        for place, processes in linked_order(work, buckets.rows, buckets.slack)
        for process in processes
        for batch in cut(work, process, buckets.rows[process][place].lots)
    )


def cut(work: Work, process: int, lots: Sequence[Lot]) -> Iterator[Batch]:
    """Runs of at most the process's size: box by box, what is due first first, a box's shortest knives first."""
    size = work.queue.processes[process].run_size
    ids = [knife.id for lot in sorted(lots) for knife in lot.knives]
    for start in range(0, len(ids), size):
        yield process, tuple(ids[start : start + size])
