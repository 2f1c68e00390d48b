"""A whole shop file as lines of JSON, and back: to keep, to move to another machine, to read with other programs.

The first line says what follows: the layout, each table's columns and how many rows. Each further line is one row and
carries a figure that chains it to all lines before, so that the first line which is not as it was written is known.
The last line repeats the counts and has the SHA-256 of all before it.
"""

import hashlib
import json
import sqlite3
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby
from operator import itemgetter
from typing import BinaryIO

from peewee import PeeweeException

from queueboard.records.connection import Cell, Raw
from queueboard.records.engine import engine_of, wording
from queueboard.records.writing import canonical
from queueboard.values.progress import Doing, counted

KIND = "queueboard"
LONGEST_LINE = 16_000_000
"""Bytes; the longest text in a shop file, its settings, needs less than a tenth of it."""

Columns = dict[str, list[str]]
Line = tuple[str, list[Cell]]


class WrongLineError(Exception):
    """A line that is not as it was written; its text says which and why."""

    def __init__(self, number: int, why: str) -> None:
        super().__init__(f"line {number} {why}")


def write_lines(connection: Raw, out: BinaryIO) -> int:
    """Write everything in a file, the same for the same content; how many rows that was."""
    columns = _columns(connection)
    counts = _counts(connection, columns)
    layout = engine_of(connection).layout()
    sealing = _Sealing(out)
    sealing.head({"columns": columns, "kind": KIND, "layout": layout, "rows": counts})
    for name, row in counted(Doing.WRITING_OUT, _rows(connection, columns), sum(counts.values())):
        sealing.row(name, row)
    sealing.end(counts)
    return sum(counts.values())


def _rows(connection: Raw, columns: Columns) -> Iterator[Line]:
    for name, names in columns.items():
        for row in engine_of(connection).streamed(f"SELECT {', '.join(names)} FROM {name} ORDER BY id"):
            yield name, list(row)


def _counts(connection: Raw, columns: Columns) -> dict[str, int]:
    return {name: int(connection.execute(f"SELECT count(*) FROM {name}").fetchone()[0]) for name in columns}


def _columns(connection: Raw) -> Columns:
    return {name: list(columns) for name, columns in engine_of(connection).columns().items()}


@dataclass
class _Sealing:
    """Writes lines, each with its figure."""

    out: BinaryIO
    whole: "hashlib._Hash" = field(default_factory=hashlib.sha256)
    figure: str = ""

    def head(self, says: Mapping[str, object]) -> None:
        self.figure = _figure("", canonical(says))
        self._put(canonical({**says, "check": self.figure}))

    def row(self, table: str, cells: list[Cell]) -> None:
        text = canonical([table, cells])
        self.figure = _figure(self.figure, text)
        self._put(f'{text[:-1]},"{self.figure}"]')

    def end(self, counts: Mapping[str, int]) -> None:
        self._put(canonical({"rows": counts, "sha256": self.whole.hexdigest()}))

    def _put(self, text: str) -> None:
        line = text.encode() + b"\n"
        self.out.write(line)
        self.whole.update(line)


def _figure(before: str, text: str) -> str:
    return hashlib.sha256((before + text).encode()).hexdigest()[:16]


@dataclass
class Reading:
    """Reads lines and refuses the first that is not as it was written: use head, then rows to their end."""

    source: BinaryIO
    columns: Columns = field(default_factory=dict)
    layout: int = 0
    number: int = 0
    """The line that was read last, from 1."""
    counts: dict[str, int] = field(default_factory=dict)
    figure: str = ""
    whole: "hashlib._Hash" = field(default_factory=hashlib.sha256)

    def head(self) -> None:
        """Read the first line; WrongLineError for a file that was never one of ours, too."""
        said = self._json(self._line())
        if not isinstance(said, dict) or said.get("kind") != KIND:
            raise WrongLineError(1, "does not say that this is a shop written out by queueboard")
        self.figure = _figure("", canonical({name: value for name, value in said.items() if name != "check"}))
        shapes = (("columns", dict), ("rows", dict), ("layout", int))
        if said.get("check") != self.figure or not all(isinstance(said.get(name), kind) for name, kind in shapes):
            raise WrongLineError(1, "is not as it was written")
        self.columns, self.layout, self.counts = said["columns"], said["layout"], said["rows"]

    def rows(self) -> Iterator[Line]:
        """Each row as it stands; when they end, the last line was found good, and nothing comes after it."""
        seen = dict.fromkeys(self.columns, 0)
        while True:
            whole = self.whole.hexdigest()
            line = self._line()
            said = self._json(line)
            if isinstance(said, dict):
                self._end(said, seen, whole)
                return
            yield self._row(said, line, seen)

    def _row(self, said: object, line: bytes, seen: dict[str, int]) -> Line:
        shapes = [type(part) for part in said] if isinstance(said, list) else []
        if not isinstance(said, list) or shapes != [str, list, str] or said[0] not in seen:
            raise WrongLineError(self.number, "is no row of a shop file")
        table, cells, figure = said
        self.figure = _figure(self.figure, line.decode().removesuffix(f",{canonical(figure)}]\n") + "]")
        if figure != self.figure:
            raise WrongLineError(self.number, "is not as it was written, or not where it was written")
        if len(cells) != len(self.columns[table]) or not all(_is_cell(cell) for cell in cells):
            raise WrongLineError(self.number, f"is no row of {table}")
        seen[table] += 1
        return table, cells

    def _end(self, said: Mapping[str, object], seen: Mapping[str, int], whole: str) -> None:
        if said.get("sha256") != whole or said.get("rows") != seen or seen != self.counts or len(said) != 2:
            raise WrongLineError(self.number, "does not close what stands before it")
        if self.source.read(1):
            raise WrongLineError(self.number + 1, "comes after the end")

    def _line(self) -> bytes:
        line = self.source.readline(LONGEST_LINE)
        self.number += 1
        if not line.endswith(b"\n"):
            raise WrongLineError(self.number, "is cut off" if line else "is missing: the file ends too early")
        self.whole.update(line)
        return line

    def _json(self, line: bytes) -> object:
        """What a line says; only the one way in which it would have been written is taken."""
        try:
            said: object = json.loads(line)
            if canonical(said).encode() + b"\n" == line:
                return said
        except (ValueError, RecursionError):
            pass
        raise WrongLineError(self.number, "is not as it was written")


def _is_cell(cell: object) -> bool:
    return cell is None or isinstance(cell, str) or (isinstance(cell, int) and not isinstance(cell, bool))


def fill(connection: Raw, reading: Reading) -> None:
    """Put all rows into a file of their layout that is empty; WrongLineError names a row that does not fit."""
    if reading.columns != _columns(connection):
        raise WrongLineError(1, f"names other tables than layout {reading.layout} has")
    lines = counted(Doing.TAKING_IN, reading.rows(), sum(reading.counts.values()))
    try:
        _put_in(connection, reading.columns, lines)
    except (sqlite3.DatabaseError, PeeweeException, OverflowError, UnicodeEncodeError) as error:
        raise WrongLineError(reading.number, f"does not fit into the shop file ({error})") from error


def hand_over(source: Raw, connection: Raw) -> None:
    """Put all rows of one shop into another of the same layout, which is empty."""
    columns = _columns(source)
    rows = sum(_counts(source, columns).values())
    _put_in(connection, columns, counted(Doing.HANDING_OVER, _rows(source, columns), rows))


def _put_in(connection: Raw, columns: Columns, lines: Iterable[Line]) -> None:
    for table, rows in groupby(lines, key=itemgetter(0)):
        engine_of(connection).put_in(table, columns[table], map(itemgetter(1), rows))
    _number_on(connection)


def _number_on(connection: Raw) -> None:
    """A number that was taken away is not given again: go on behind the highest that history knows."""
    for table, highest in connection.execute("SELECT entity, max(entity_id) FROM history GROUP BY entity").fetchall():
        engine_of(connection).give_on(table, highest)


def lay_out(connection: sqlite3.Connection, layout: int) -> None:
    """Make the empty tables of a layout, in the transaction that is open."""
    for statement in wording(layout):
        connection.execute(statement)
    connection.execute(f"PRAGMA user_version = {layout}")
