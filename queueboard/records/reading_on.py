"""The open work read on from an earlier reading: anew only for the boxes that history has touched since."""

import json
from collections.abc import Mapping
from dataclasses import replace
from operator import attrgetter
from typing import TypeVar

from queueboard.records.cells import whole
from queueboard.records.database import ShopDatabase
from queueboard.records.reading import OPEN_BOXES, OpenWork, read_boxes, read_open_work
from queueboard.records.telling import lines_after

OF_A_BOX = frozenset({"knife", "thing", "promise", "label", "payment"})
"""Tables whose rows belong to the one box that stands in the row."""

NOT_BY_BOX = frozenset(
    {"close_out", "tick", "bench_run", "run_knife", "day_order", "said", "spot", "reading", "edge_test", "second_look"}
)
"""Tables that are read whole each time, or are no part of the open work."""

MOST_BOXES = 50
"""Up to so many boxes are quicker read by themselves."""

Part = TypeVar("Part")


def read_on(database: ShopDatabase, before: OpenWork, line: int) -> OpenWork:
    """The open work now, the same as read_open_work has it; *before* was read when *line* was the newest of history.

    What belongs to boxes that history does not name since stays the same object. All is read anew where history names
    anything but boxes that were open and still are, and what plainly belongs to them.
    """
    touched = _touched(database, line)
    if touched is None or len(touched) > MOST_BOXES:
        return read_open_work(database)
    ids = tuple(sorted(touched))
    now = read_boxes(database, f"{OPEN_BOXES} AND id IN ({', '.join('?' * len(ids)) or 'NULL'})", *ids)
    if not {box.id for box in before.boxes} >= touched == {box.id for box in now.boxes}:
        return read_open_work(database)

    def merged(was: Mapping[int, Part], new: Mapping[int, Part]) -> dict[int, Part]:
        return {**{box_id: part for box_id, part in was.items() if box_id not in touched}, **new}

    boxes = (*(box for box in before.boxes if box.id not in touched), *now.boxes)
    customers = {**before.customers, **now.customers}
    return replace(
        now,
        boxes=tuple(sorted(boxes, key=attrgetter("number"))),
        customers={box.customer_id: customers[box.customer_id] for box in boxes},
        knives=merged(before.knives, now.knives),
        things=merged(before.things, now.things),
        promises=merged(before.promises, now.promises),
        labels=merged(before.labels, now.labels),
        payments=merged(before.payments, now.payments),
        charges=merged(before.charges, now.charges),
    )


def _touched(database: ShopDatabase, line: int) -> frozenset[int] | None:
    """Ids of the boxes that the lines of history after one are about; None where that does not say all."""
    boxes: set[int] = set()
    rows: dict[str, set[int]] = {}
    lines = lines_after(database, line)
    if lines is None:
        return None
    for entity, row_id, *sides in lines:
        if entity == "box":
            boxes.add(whole(row_id))
        elif entity in OF_A_BOX:
            rows.setdefault(str(entity), set()).add(whole(row_id))
            told = (json.loads(str(side)) for side in sides if side is not None)
            boxes.update(int(values["box_id"]) for values in told if "box_id" in values)
        elif entity not in NOT_BY_BOX:
            return None
    for table, ids in rows.items():
        marks = ", ".join("?" * len(ids))
        boxes.update(
            whole(row[0]) for row in database.rows(f"SELECT box_id FROM {table} WHERE id IN ({marks})", tuple(ids))
        )
    return frozenset(boxes)
