"""Buckets in working order, cut into runs."""

from collections.abc import Iterator, Sequence

from queueboard.planning.buckets import Buckets
from queueboard.planning.evaluation import Batch
from queueboard.planning.linking import linked_order
from queueboard.planning.work import Lot


def batches_of(buckets: Buckets) -> tuple[Batch, ...]:
    """The runs of these buckets: cut-off by cut-off, processes linked end to start."""
    size = buckets.work.queue.run_size
    return tuple(
        batch
        for place, processes in linked_order(buckets.work, buckets.rows, buckets.slack)
        for process in processes
        for batch in cut(process, buckets.rows[process][place].lots, size)
    )


def cut(process: int, lots: Sequence[Lot], size: int) -> Iterator[Batch]:
    """Runs of at most this size: box by box, what is due first first, a box's shortest knives first."""
    ids = [knife.id for lot in sorted(lots) for knife in lot.knives]
    for start in range(0, len(ids), size):
        yield process, tuple(ids[start : start + size])
