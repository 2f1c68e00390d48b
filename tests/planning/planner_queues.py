"""Queues that hypothesis draws for the planner: few knives, pressing cut-offs, every kind of due and set-up."""

from hypothesis import strategies as st

from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess

DUES = st.one_of(st.none(), st.integers(-1, 3))


@st.composite
def pressing(draw: st.DrawFn, boxes: int = 6, knives: int = 4, *, weights: bool = True) -> Queue:
    """A queue of up to three processes in which some cut-offs press; the first one may have passed."""
    processes = draw(st.lists(st.sampled_from((0, 5, 20, 45)), min_size=1, max_size=3))
    shapes = st.lists(st.tuples(st.integers(0, len(processes) - 1), st.integers(0, 30)), max_size=knives)
    ids = iter(range(1_000))
    many = draw(st.lists(st.tuples(DUES, st.integers(1, 3 if weights else 1), shapes), max_size=boxes))
    first = draw(st.integers(-20, 80))
    steps = draw(st.lists(st.integers(5, 120), min_size=3, max_size=3))
    return Queue(
        boxes=tuple(
            QueueBox(
                id=place,
                due=due,
                weight=weight,
                knives=tuple(QueueKnife(id=next(ids), process=process, seconds=seconds) for process, seconds in shape),
            )
            for place, (due, weight, shape) in enumerate(many)
        ),
        processes=tuple(
            QueueProcess(set_up_seconds=seconds, run_size=draw(st.integers(1, 4))) for seconds in processes
        ),
        cutoffs=tuple(first + sum(steps[:count]) for count in range(4)),
        saved_percent=draw(st.sampled_from((100, 50, 0))),
        set_up_now=draw(st.one_of(st.none(), st.integers(0, len(processes) - 1))),
    )
