"""Queues that hypothesis draws, in whole bench seconds, and the doubt about them."""

from itertools import accumulate

from hypothesis import strategies as st

from queueboard.planning.chance import Doubt
from queueboard.planning.learning import learn
from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess

PROCESSES = 3
DAY = 20000
"""Planned seconds of a day, unless a test says otherwise."""


def doubt_of(*, yield_sd: float = 0.156, days: tuple[int, ...] = (DAY,)) -> Doubt:
    """The doubt of a shop that has measured nothing yet."""
    return Doubt(factors=learn([], PROCESSES).processes, yield_sd=yield_sd, days=days)


def box_of(box_id: int, due: int | None, *knives: tuple[int, int]) -> QueueBox:
    """A box of knives given by process and seconds; their ids are 100 times its own and on."""
    return QueueBox(
        id=box_id,
        due=due,
        knives=tuple(
            QueueKnife(id=100 * box_id + place, process=process, seconds=seconds)
            for place, (process, seconds) in enumerate(knives)
        ),
    )


def queue_of(
    *boxes: QueueBox, cutoffs: tuple[int, ...] = (DAY, 2 * DAY, 3 * DAY, 4 * DAY), saved_percent: int = 100
) -> Queue:
    """A bench of three processes with set-ups of 90, 60 and 120 seconds, and runs of up to ten knives."""
    return Queue(
        boxes=boxes,
        processes=tuple(QueueProcess(set_up_seconds=seconds, run_size=10) for seconds in (90, 60, 120)),
        cutoffs=cutoffs,
        saved_percent=saved_percent,
    )


KNIVES = st.lists(st.tuples(st.integers(0, PROCESSES - 1), st.integers(60, 1500)), min_size=1, max_size=12)


STEPS = st.tuples(*[st.integers(2000, 25000)] * 4)


def queues(max_boxes: int = 9, first_due: int = 0) -> st.SearchStrategy[Queue]:
    """Queues of promised boxes; their cut-offs are close enough that some of them press."""
    boxes = st.lists(st.tuples(st.integers(first_due, 3), KNIVES), min_size=1, max_size=max_boxes)
    return st.builds(_queue, boxes, STEPS, st.sampled_from((0, 50, 100)))


def _queue(boxes: list[tuple[int, list[tuple[int, int]]]], steps: tuple[int, ...], saved_percent: int) -> Queue:
    made = (box_of(place, due, *knives) for place, (due, knives) in enumerate(boxes, 1))
    return queue_of(*made, cutoffs=tuple(accumulate(steps)), saved_percent=saved_percent)
