"""Jobs of textbooks as a queue: a job is a box of one knife, a due date is a cut-off."""

from collections.abc import Sequence

from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess


def jobs_queue(
    seconds: Sequence[int],
    dues: Sequence[int],
    *,
    weights: Sequence[int] | None = None,
    families: Sequence[int] | None = None,
    set_ups: Sequence[int] = (0,),
    run_size: int = 1,
    saved_percent: int = 100,
) -> Queue:
    """The queue of these jobs, one family and no set-up unless they are given."""
    cutoffs = sorted(set(dues))
    return Queue(
        boxes=tuple(
            QueueBox(
                id=job,
                due=cutoffs.index(due),
                weight=weights[job] if weights else 1,
                knives=(QueueKnife(id=job, process=families[job] if families else 0, seconds=seconds[job]),),
            )
            for job, due in enumerate(dues)
        ),
        processes=tuple(QueueProcess(set_up_seconds=set_up, run_size=run_size) for set_up in set_ups),
        cutoffs=tuple(cutoffs),
        saved_percent=saved_percent,
    )
