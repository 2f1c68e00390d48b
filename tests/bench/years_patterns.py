"""The boxes of a shop file as they were lived through, to be copied: their rows, and the history about them."""

import json
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass

from queueboard.records.database import Cell

OF_A_BOX = {
    "knife": "box_id",
    "thing": "box_id",
    "promise": "box_id",
    "label": "box_id",
    "payment": "box_id",
    "charge": "box_id",
    "close_out": "box_id",
    "spot": "knife_id",
    "edge_test": "knife_id",
    "second_look": "knife_id",
    "reading": "spot_id",
}
"""What a box takes with it, each behind what it hangs on."""

REFERS = {
    "box_id": "box",
    "knife_id": "knife",
    "spot_id": "spot",
    "customer_id": "customer",
    "close_out_id": "close_out",
}
"""The columns that name another row, and of which table."""

Values = dict[str, Cell]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of history of a pattern."""

    group: str
    at_us: int
    by: str
    operation: str
    about: str | None
    entity: str
    entity_id: int
    before: Values | None
    after: Values | None
    words: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class Pattern:
    """A finished box as it was lived through: its lines, its last state."""

    number: int
    knives: int
    lines: tuple[Line, ...]
    rows: tuple[tuple[str, Values], ...]


def patterns(connection: sqlite3.Connection, which: str) -> list[Pattern]:
    """The boxes of the file that meet a fixed condition, each with the lines of history that are about it alone."""
    boxes = connection.execute(f"SELECT id, number FROM box WHERE {which} ORDER BY id").fetchall()
    return [_pattern(connection, box_id, number) for box_id, number in boxes]


def _pattern(connection: sqlite3.Connection, box_id: int, number: int) -> Pattern:
    ids = {"box": [box_id]}
    for table, parent in OF_A_BOX.items():
        above = ids[REFERS[parent]]
        marks = ", ".join("?" * len(above))
        found = connection.execute(f"SELECT id FROM {table} WHERE {parent} IN ({marks}) ORDER BY id", above)
        ids[table] = [row_id for (row_id,) in found]
    rows = [(table, _row(connection, table, row_id)) for table, of in ids.items() for row_id in of]
    lines = [line for table, of in ids.items() for row_id in of for line in _lines(connection, table, row_id)]
    return Pattern(
        number, len(ids["knife"]), tuple(line for _, line in sorted(lines, key=lambda pair: pair[0])), tuple(rows)
    )


def _row(connection: sqlite3.Connection, table: str, row_id: int) -> Values:
    names = columns_of(connection, table)
    return dict(
        zip(names, connection.execute(f"SELECT * FROM {table} WHERE id = ?", (row_id,)).fetchone(), strict=True)
    )


def columns_of(connection: sqlite3.Connection, table: str) -> tuple[str, ...]:
    """The columns of a table, in their order."""
    return tuple(name for (name,) in connection.execute("SELECT name FROM pragma_table_info(?)", (table,)))


def _lines(connection: sqlite3.Connection, table: str, row_id: int) -> Iterator[tuple[int, Line]]:
    sql = """SELECT id, group_id, at_us, by, operation, about, entity, entity_id, before, after FROM history
    WHERE entity = ? AND entity_id = ? ORDER BY id"""
    for line_id, group, at_us, by, operation, about, entity, entity_id, before, after in connection.execute(
        sql, (table, row_id)
    ).fetchall():
        words = connection.execute("SELECT side, field, text FROM personal WHERE history_id = ?", (line_id,)).fetchall()
        kept = tuple((side, name, text) for side, name, text in words if side != "reason")
        yield line_id, Line(group, at_us, by, operation, about, entity, entity_id, _read(before), _read(after), kept)


def _read(text: str | None) -> Values | None:
    return None if text is None else json.loads(text)
