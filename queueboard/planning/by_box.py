"""Plans that work box by box: earliest due date, and Moore and Hodgson's rule. No plan of ours may be worse."""

from collections.abc import Iterable
from heapq import heappop, heappush

from queueboard.planning.cutting import cut
from queueboard.planning.evaluation import Batch
from queueboard.planning.work import Work


def earliest_due(work: Work) -> list[int]:
    """The boxes by due; ties by content. A box that is late already leads, one promised to nobody comes last."""
    return list(range(len(work.boxes)))


def fewest_late(work: Work) -> list[int]:
    """The boxes by due, but behind the others those that Moore and Hodgson's rule gives up, the shortest first.

    Whenever a box would be late, the one that frees most seconds for its weight goes; with equal weights and each box
    paying its own set-ups this makes the fewest boxes late.
    """
    seconds = [seconds_alone(work, box) for box in range(len(work.boxes))]
    gone = {box for box in earliest_due(work) if work.due(box) is None}
    kept: list[tuple[float, int]] = []
    clock = 0
    for box in earliest_due(work):
        place = work.due(box)
        if place is None:
            continue
        heappush(kept, (-seconds[box] / work.boxes[box].weight, box))
        clock += seconds[box]
        while clock > work.ends[place]:
            _, longest = heappop(kept)
            clock -= seconds[longest]
            gone.add(longest)
    last = sorted(gone, key=lambda box: (work.boxes[box].due is None, seconds[box], box))
    return [box for box in earliest_due(work) if box not in gone] + last


def seconds_alone(work: Work, box: int) -> int:
    """Bench seconds of a box when nothing is worked with it."""
    return work.seconds[box] + sum(work.set_up(lot.process, len(lot.knives)) for lot in work.lots[box])


def box_by_box(work: Work, boxes: Iterable[int]) -> tuple[Batch, ...]:
    """The runs of these boxes, one after the other."""
    return tuple(batch for box in boxes for lot in work.lots[box] for batch in cut(work, lot.process, (lot,)))
