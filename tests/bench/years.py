"""A shop file of many years: finished boxes of the invented shop, lived through by its own operations, over and over.

`python -m tests.bench.years FILE --knives 250000` writes one. Each copy has ids, moments, days and numbers of its own;
its history is chained anew, so that `queueboard check` finds as much in it as in a file that was lived for years. The
open boxes are those of the invented shop, at its newest moment.
"""

import argparse
import json
import sqlite3
import uuid
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

from queueboard.records.auditing import HASHED
from queueboard.records.database import Cell
from queueboard.records.tables import STATE
from queueboard.records.writing import FIRST_PREVIOUS, canonical, chain, masked
from queueboard.shop.demo import make_demo_shop
from queueboard.shop.opening import close_shop

MORNING = datetime(2026, 11, 25, 13, 30, tzinfo=UTC)
"""When the invented shop is looked at; the years lie before it."""

YEARS = 10
KNIVES_A_CUSTOMER = 250_000 / 6_000
"""Of the shop of ten years that the figures are about."""

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


@dataclass(slots=True)
class Written:
    """What has been written so far: the highest id of each table, and the chain's end."""

    ids: dict[str, int]
    lines: int
    last: str
    history: list[tuple[Cell, ...]] = field(default_factory=list)
    personal: list[tuple[Cell, ...]] = field(default_factory=list)
    rows: dict[str, list[tuple[Cell, ...]]] = field(default_factory=dict)


def make(path: Path, knives: int) -> None:
    """Write a shop file with about so many finished knives, and the open boxes of the invented shop."""
    shop = make_demo_shop(path, MORNING)
    close_shop(shop)
    connection = sqlite3.connect(path, isolation_level=None)
    try:
        connection.executescript("PRAGMA synchronous = OFF; PRAGMA journal_mode = OFF; PRAGMA cache_size = -200000")
        connection.execute("BEGIN")
        _fill(connection, knives)
        connection.execute("COMMIT")
    finally:
        connection.close()


def _fill(connection: sqlite3.Connection, knives: int) -> None:
    found = patterns(connection)
    columns = {table: _columns(connection, table) for table in ("customer", "box", *OF_A_BOX)}
    (lines, last) = connection.execute("SELECT id, hash FROM history ORDER BY id DESC LIMIT 1").fetchone()
    (salt,) = connection.execute("SELECT salt FROM shop").fetchone()
    ids = {table: connection.execute(f"SELECT coalesce(max(id), 0) FROM {table}").fetchone()[0] for table in columns}
    written = Written(ids, lines, last)
    customers = [_customer(written, columns, salt, number) for number in range(round(knives / KNIVES_A_CUSTOMER) or 1)]
    copies = max(1, round(knives / (sum(pattern.knives for pattern in found) / len(found))))
    for copy in range(copies):
        pattern = found[copy % len(found)]
        back = timedelta(days=1 + int((copies - copy) * YEARS * 365 / copies))
        _copy(written, columns, pattern, customers[copy % len(customers)], -back, copy % 300 + 1)
        if len(written.history) > 50_000:
            _flush(connection, written, columns)
    _flush(connection, written, columns)


def patterns(connection: sqlite3.Connection) -> list[Pattern]:
    """Every finished box of the file, with the lines of history that are about it alone."""
    boxes = connection.execute("SELECT id, number FROM box WHERE closed_us IS NOT NULL ORDER BY id").fetchall()
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
    names = _columns(connection, table)
    return dict(
        zip(names, connection.execute(f"SELECT * FROM {table} WHERE id = ?", (row_id,)).fetchone(), strict=True)
    )


def _columns(connection: sqlite3.Connection, table: str) -> tuple[str, ...]:
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


def _customer(written: Written, columns: Mapping[str, Sequence[str]], salt: str, number: int) -> int:
    """An invented customer, with the line that wrote it down."""
    row_id = written.ids["customer"] = written.ids["customer"] + 1
    words: Values = {"name": f"Household {number:05}", "phone": f"555 {number:07}", "town": f"Town {number % 83}"}
    row: Values = {
        **dict.fromkeys(columns["customer"], ""),
        "id": row_id,
        "row_version": 1,
        "merged_into": None,
        "proof_card": 0,
        **words,
    }
    at = int((MORNING - timedelta(days=YEARS * 366)).timestamp()) * 1_000_000
    line = Line("", at, "MB", "add_customer", "{}", "customer", row_id, None, masked(STATE["customer"], row, salt), ())
    _add_line(
        written, line, uuid.UUID(int=row_id).hex, 0, tuple(("after", name, str(word)) for name, word in words.items())
    )
    written.rows.setdefault("customer", []).append(tuple(row[name] for name in columns["customer"]))
    return row_id


def _copy(
    written: Written, columns: Mapping[str, Sequence[str]], pattern: Pattern, customer: int, by: timedelta, number: int
) -> None:
    """One more life of a finished box."""
    new: dict[tuple[str, int], int] = {}
    for table, row in pattern.rows:
        written.ids[table] += 1
        new[table, int(str(row["id"]))] = written.ids[table]
    shift = _Shift(new, customer, by, pattern.number, number)
    for table, row in pattern.rows:
        written.rows.setdefault(table, []).append(tuple(shift.row(table, row)[name] for name in columns[table]))
    places: dict[str, int] = {}
    for line in pattern.lines:
        place = places[line.group] = places.get(line.group, -1) + 1
        group = f"{written.ids['box']:x}-{line.group[:20]}"
        _add_line(written, shift.line(line), group, place, line.words)


@dataclass(frozen=True, slots=True)
class _Shift:
    """How a copy differs from its pattern."""

    new: Mapping[tuple[str, int], int]
    customer: int
    by: timedelta
    old_number: int
    number: int

    def row(self, table: str, row: Values) -> Values:
        """The row of the copy."""
        return {name: self._cell(table, name, cell) for name, cell in row.items()}

    def _cell(self, table: str, name: str, cell: Cell) -> Cell:
        if cell is None:
            return None
        if name == "id":
            return self.new[table, int(cell)]
        if name == "customer_id":
            return self.customer
        if name in REFERS:
            return self.new[REFERS[name], int(cell)]
        if name.endswith("_us") and not name.startswith("paused_total"):
            return int(cell) + self.by // timedelta(microseconds=1)
        if name in {"day", "expires_on", "expected_on"}:
            return (date.fromisoformat(str(cell)) + timedelta(days=self.by.days)).isoformat()
        return self.number if table == "box" and name == "number" else cell

    def line(self, line: Line) -> Line:
        """The line of the copy; what it is about names the copy's own number."""
        about = line.about
        if about is not None:
            about = about.replace(f'"{self.old_number}-', f'"{self.number}-')
            about = about.replace(f'"number":{self.old_number}', f'"number":{self.number}')
        return Line(
            line.group,
            line.at_us + self.by // timedelta(microseconds=1),
            line.by,
            line.operation,
            about,
            line.entity,
            self.new[line.entity, line.entity_id],
            None if line.before is None else self.row(line.entity, line.before),
            None if line.after is None else self.row(line.entity, line.after),
            line.words,
        )


def _add_line(written: Written, line: Line, group: str, place: int, words: Sequence[tuple[str, str, str]]) -> None:
    hashed: Values = {
        "group_id": group,
        "line": place,
        "at_us": line.at_us,
        "by": line.by,
        "operation": line.operation,
        "about": (line.about or "{}") if place == 0 else None,
        "undoes": None,
        "reason": None,
        "entity": line.entity,
        "entity_id": line.entity_id,
        "before": None if line.before is None else canonical(line.before),
        "after": None if line.after is None else canonical(line.after),
    }
    previous, written.last = written.last or FIRST_PREVIOUS, chain(written.last or FIRST_PREVIOUS, hashed)
    written.lines += 1
    written.history.append((written.lines, *(hashed[name] for name in HASHED), previous, written.last))
    written.personal += [(written.lines, *word) for word in words]


def _flush(connection: sqlite3.Connection, written: Written, columns: Mapping[str, Sequence[str]]) -> None:
    connection.executemany(
        f"INSERT INTO history (id, {', '.join(HASHED)}, previous, hash) VALUES ({', '.join('?' * 15)})", written.history
    )
    connection.executemany("INSERT INTO personal (history_id, side, field, text) VALUES (?, ?, ?, ?)", written.personal)
    for table in ("customer", "box", *OF_A_BOX):
        rows = written.rows.get(table, [])
        connection.executemany(f"INSERT INTO {table} VALUES ({', '.join('?' * len(columns[table]))})", rows)
    written.history.clear()
    written.personal.clear()
    written.rows.clear()


def main() -> None:
    """Write a file of the size that was asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--knives", type=int, default=250_000)
    args = parser.parse_args()
    make(args.file, args.knives)


if __name__ == "__main__":
    main()
