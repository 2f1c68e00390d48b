"""Queues that hypothesis draws for the planner: few knives, pressing cut-offs, every kind of due and set-up."""

from itertools import accumulate

from hypothesis import strategies as st

from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess

PROCESSES = 3

BOXES = st.lists(
    st.tuples(
        st.one_of(st.none(), st.integers(-1, 3)),
        st.integers(1, 3),
        st.lists(st.tuples(st.integers(0, PROCESSES - 1), st.integers(0, 30)), max_size=4),
    ),
    max_size=6,
)
"""Due, weight, and the processes and seconds of the knives."""


def pressing() -> st.SearchStrategy[Queue]:
    """Queues of up to three processes in which some cut-offs press; the first one may have passed."""
    return st.builds(
        _queue,
        BOXES,
        st.lists(st.tuples(st.sampled_from((0, 5, 20, 45)), st.integers(1, 4)), min_size=1, max_size=PROCESSES),
        st.tuples(st.integers(-20, 80), *[st.integers(5, 120)] * 3),
        st.sampled_from((100, 50, 0)),
        st.one_of(st.none(), st.integers(0, PROCESSES - 1)),
    )


def _queue(
    boxes: list[tuple[int | None, int, list[tuple[int, int]]]],
    processes: list[tuple[int, int]],
    steps: tuple[int, ...],
    saved_percent: int,
    set_up_now: int | None,
) -> Queue:
    """A process that was drawn but is not there stands for one that is."""
    ids = iter(range(1_000))
    return Queue(
        boxes=tuple(
            QueueBox(
                id=place,
                due=due,
                weight=weight,
                knives=tuple(
                    QueueKnife(id=next(ids), process=process % len(processes), seconds=seconds)
                    for process, seconds in knives
                ),
            )
            for place, (due, weight, knives) in enumerate(boxes)
        ),
        processes=tuple(QueueProcess(set_up_seconds=seconds, run_size=size) for seconds, size in processes),
        cutoffs=tuple(accumulate(steps)),
        saved_percent=saved_percent,
        set_up_now=None if set_up_now is None else set_up_now % len(processes),
    )
