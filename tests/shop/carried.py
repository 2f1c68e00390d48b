"""Knives carried between three boxes by hand, without a shop file: the sum of each box, and who lies where."""

from queueboard.intake.adding_up import BoxSum, add_up
from queueboard.values.box import Box
from queueboard.values.found import MovedKnife, Off
from queueboard.values.knife import Knife
from queueboard.words import CameBy, Column, Condition, Edge, GoesBy
from tests.shop.place import NOW


def _box(number: int, counted: int) -> Box:
    return Box(
        id=number,
        version=1,
        number=number,
        customer_id=1,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=counted,
        received_at=NOW,
    )


def knife_of_kind(
    *, kind: str = "chef", length_mm: int | None = 200, edge: Edge = Edge.PLAIN, knife_id: int = 1, box_id: int = 0
) -> Knife:
    """A dull knife that was just received."""
    return Knife(
        id=knife_id,
        version=1,
        box_id=box_id,
        box_number=box_id,
        number=1 + knife_id,
        kind=kind,
        edge=edge,
        length_mm=length_mm,
        condition=Condition.DULL,
        column=Column.RECEIVED,
        moved_at=NOW,
        moved_by="J",
    )


def carried(count: int, moves: list[tuple[int, int]]) -> tuple[list[BoxSum], list[int]]:
    """So many knives come into box 0; each move carries one of them to a box, where it is not there already."""
    lies = [0] * count
    told: list[MovedKnife] = []
    for which, to in moves:
        knife, was = which % count, lies[which % count]
        if was != to:
            lies[knife] = to
            told.append(
                MovedKnife(
                    id=len(told) + 1,
                    knife_id=knife,
                    from_box_id=was,
                    from_box_number=was,
                    from_number=1 + knife,
                    to_box_id=to,
                    to_box_number=to,
                    why="theirs",
                    moved_at=NOW,
                    moved_by="J",
                    added=False,
                )
            )
    knives = [knife_of_kind(knife_id=knife, box_id=box) for knife, box in enumerate(lies)]
    sums = [
        add_up(_box(box, count if box == 0 else 0), [k for k in knives if k.box_id == box], told, Off())
        for box in range(3)
    ]
    return sums, [lies.count(box) for box in range(3)]
