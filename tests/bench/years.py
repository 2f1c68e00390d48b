"""A shop file of many years: finished boxes of the invented shop, lived through by its own operations, over and over.

`python -m tests.bench.years FILE --knives 250000 --years 10 --open 400` writes one. Each copy has ids, moments, days
and numbers of its own; its history is chained anew, so that `queueboard check` finds as much in it as in a file that
was lived for years. The open boxes are those of the invented shop, at its newest moment, and copies of them
(`years_open`) until as many knives are open as were asked for.
"""

import argparse
import sqlite3
import uuid
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from itertools import cycle
from pathlib import Path

from queueboard.records.auditing import HASHED
from queueboard.records.database import Cell
from queueboard.records.tables import STATE
from queueboard.records.writing import FIRST_PREVIOUS, canonical, chain, masked
from queueboard.shop.demo import make_demo_shop
from queueboard.shop.opening import close_shop
from tests.bench.years_patterns import OF_A_BOX, REFERS, Line, Pattern, Values, columns_of, patterns

MORNING = datetime(2026, 11, 25, 13, 30, tzinfo=UTC)
"""When the invented shop is looked at; the years lie before it."""

YEARS = 10
KNIVES_A_CUSTOMER = 250_000 / 6_000
KNIVES_A_BOX = 250_000 / 40_000
"""Of the shop of ten years that the figures are about: mostly small boxes, now and then one of forty knives."""


@dataclass(slots=True)
class Written:
    """What has been written so far: the highest id of each table, and the chain's end."""

    ids: dict[str, int]
    lines: int
    last: str
    history: list[tuple[Cell, ...]] = field(default_factory=list)
    personal: list[tuple[Cell, ...]] = field(default_factory=list)
    rows: dict[str, list[tuple[Cell, ...]]] = field(default_factory=dict)


def make(path: Path, knives: int, years: int = YEARS, morning: datetime = MORNING) -> None:
    """Write a shop file with about so many knives finished over the years, and the invented shop's own that morning."""
    shop = make_demo_shop(path, morning)
    close_shop(shop)
    with filling(path) as connection:
        _fill(connection, knives, years)


@contextmanager
def filling(path: Path) -> Iterator[sqlite3.Connection]:
    """One large transaction in which rows are written as fast as they go; a file cut short by it is no loss."""
    connection = sqlite3.connect(path, isolation_level=None)
    try:
        connection.executescript("PRAGMA synchronous = OFF; PRAGMA journal_mode = OFF; PRAGMA cache_size = -200000")
        connection.execute("BEGIN")
        yield connection
        connection.execute("COMMIT")
    finally:
        connection.close()


def begin(connection: sqlite3.Connection) -> tuple[Written, dict[str, tuple[str, ...]]]:
    """Where a file ends, to be written on from there, and the columns of each table that copies are written to."""
    columns = {table: columns_of(connection, table) for table in ("customer", "box", *OF_A_BOX)}
    (lines, last) = connection.execute("SELECT id, hash FROM history ORDER BY id DESC LIMIT 1").fetchone()
    ids = {table: connection.execute(f"SELECT coalesce(max(id), 0) FROM {table}").fetchone()[0] for table in columns}
    return Written(ids, lines, last), columns


def _fill(connection: sqlite3.Connection, knives: int, years: int) -> None:
    found = patterns(connection, "closed_us IS NOT NULL")
    written, columns = begin(connection)
    (salt,) = connection.execute("SELECT salt FROM shop").fetchone()
    customers = [_customer(written, columns, salt, number) for number in range(round(knives / KNIVES_A_CUSTOMER) or 1)]
    copies = max(1, round(knives / KNIVES_A_BOX))
    for copy, pattern in enumerate(_mixed(found, copies)):
        back = timedelta(days=1 + int((copies - copy) * years * 365 / copies))
        shift = Shift.of(written, pattern, customers[copy % len(customers)], copy % 300 + 1, -back, -back)
        copy_box(written, columns, pattern, shift)
        if len(written.history) > 50_000:
            flush(connection, written, columns)
    flush(connection, written, columns)


def _mixed(found: Sequence[Pattern], copies: int) -> Iterator[Pattern]:
    """So many of the patterns in turn, with small ones between, so that KNIVES_A_BOX is kept on the whole way."""
    every, small = cycle(found), cycle([pattern for pattern in found if pattern.knives < KNIVES_A_BOX])
    knives = 0
    for copy in range(copies):
        pattern = next(every if knives <= KNIVES_A_BOX * copy else small)
        knives += pattern.knives
        yield pattern


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


def copy_box(written: Written, columns: Mapping[str, Sequence[str]], pattern: Pattern, shift: "Shift") -> None:
    """One more life of a box."""
    for table, row in pattern.rows:
        written.rows.setdefault(table, []).append(tuple(shift.row(table, row)[name] for name in columns[table]))
    places: dict[str, int] = {}
    for line in pattern.lines:
        place = places[line.group] = places.get(line.group, -1) + 1
        group = f"{written.ids['box']:x}-{line.group[:20]}"
        _add_line(written, shift.line(line), group, place, line.words)


@dataclass(frozen=True, slots=True)
class Shift:
    """How a copy differs from its pattern."""

    new: Mapping[tuple[str, int], int]
    customer: int | None
    """None: the pattern's own."""
    old_number: int
    number: int
    by: timedelta
    """Moved are all moments."""
    days_by: timedelta
    """Moved are all days that were told or printed: promises, labels."""

    @classmethod
    def of(
        cls, written: Written, pattern: Pattern, customer: int | None, number: int, by: timedelta, days_by: timedelta
    ) -> "Shift":
        """The shift to a box with this number and rows with the next ids."""
        new: dict[tuple[str, int], int] = {}
        for table, row in pattern.rows:
            written.ids[table] += 1
            new[table, int(str(row["id"]))] = written.ids[table]
        return cls(new, customer, pattern.number, number, by, days_by)

    def row(self, table: str, row: Values) -> Values:
        """The row of the copy."""
        return {name: self._cell(table, name, cell) for name, cell in row.items()}

    def _cell(self, table: str, name: str, cell: Cell) -> Cell:
        if cell is None:
            return None
        if name == "id":
            return self.new[table, int(cell)]
        if name == "customer_id":
            return int(cell) if self.customer is None else self.customer
        if name in REFERS:
            return self.new[REFERS[name], int(cell)]
        if name.endswith("_us") and not name.startswith("paused_total"):
            return int(cell) + self.by // timedelta(microseconds=1)
        if name in {"day", "expires_on", "expected_on"}:
            return (date.fromisoformat(str(cell)) + self.days_by).isoformat()
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


def flush(connection: sqlite3.Connection, written: Written, columns: Mapping[str, Sequence[str]]) -> None:
    """Write to the file what was copied so far."""
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
    from tests.bench.years_open import open_more

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--knives", type=int, default=250_000, help="finished ones")
    parser.add_argument("--years", type=int, default=YEARS, help="over which they lie")
    parser.add_argument("--open", type=int, default=0, help="knives on hand; 0: only those of the invented shop")
    args = parser.parse_args()
    make(args.file, args.knives, args.years, datetime.now(UTC))
    open_more(args.file, args.open)


if __name__ == "__main__":
    main()
