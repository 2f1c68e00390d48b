"""Knives moved between boxes, and knives found, read with fixed SQL."""

from queueboard.records.cells import instant_or_none, whole, whole_or_none
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.found import FoundKnife, MovedKnife, Off

MOVED = """SELECT m.id, m.knife_id, m.from_box_id, f.number, m.from_number, m.to_box_id, t.number, m.why, m.moved_us,
m.moved_by, k.added_us FROM moved_knife m JOIN box f ON f.id = m.from_box_id JOIN box t ON t.id = m.to_box_id
JOIN knife k ON k.id = m.knife_id"""

FOUND = """SELECT f.id, f.row_version, f.kind, f.length_mm, f.mark, f.place, f.from_box_id, b.number, f.found_us,
f.found_by, f.settled_us, f.settled_how FROM found_knife f LEFT JOIN box b ON b.id = f.from_box_id"""


def moves_of(database: ShopDatabase, boxes: str, *values: Cell) -> tuple[MovedKnife, ...]:
    """Every move of the knives that ever came into or left some boxes, oldest first; boxes: fixed SQL for their ids."""
    touched = f"SELECT knife_id FROM moved_knife WHERE from_box_id IN ({boxes}) OR to_box_id IN ({boxes})"
    rows = database.rows(f"{MOVED} WHERE m.knife_id IN ({touched}) ORDER BY m.id", (*values, *values))
    return tuple(
        MovedKnife(
            id=whole(r[0]),
            knife_id=whole(r[1]),
            from_box_id=whole(r[2]),
            from_box_number=whole(r[3]),
            from_number=whole(r[4]),
            to_box_id=whole(r[5]),
            to_box_number=whole(r[6]),
            why=str(r[7]),
            moved_at=from_us(whole(r[8])),
            moved_by=str(r[9]),
            added=r[10] is not None,
        )
        for r in rows
    )


def found_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[FoundKnife, ...]:
    """The found knives that meet a fixed condition, oldest first."""
    return tuple(
        FoundKnife(
            id=whole(r[0]),
            version=whole(r[1]),
            kind=str(r[2]),
            length_mm=whole_or_none(r[3]),
            mark=str(r[4]),
            place=str(r[5]),
            from_box_id=whole_or_none(r[6]),
            from_box_number=whole_or_none(r[7]),
            found_at=from_us(whole(r[8])),
            found_by=str(r[9]),
            settled_at=instant_or_none(r[10]),
            settled_how=str(r[11]),
        )
        for r in database.rows(f"{FOUND} WHERE {where} ORDER BY f.id", values)
    )


def off_of(database: ShopDatabase, boxes: str, *values: Cell) -> dict[int, Off]:
    """How many knives some boxes were counted with and do not have any more, by box; boxes: fixed SQL for their ids."""
    struck = database.rows(
        f"SELECT box_id, sum(knives) FROM struck_knife WHERE box_id IN ({boxes}) GROUP BY box_id", values
    )
    found = database.rows(
        f"SELECT from_box_id, count(*) FROM found_knife WHERE from_box_id IN ({boxes}) GROUP BY from_box_id", values
    )
    by_struck = {whole(box_id): whole(count) for box_id, count in struck}
    by_found = {whole(box_id): whole(count) for box_id, count in found}
    return {
        box_id: Off(struck=by_struck.get(box_id, 0), found=by_found.get(box_id, 0))
        for box_id in {**by_struck, **by_found}
    }
