"""The shop file held against its own history: the chain, each row's whole life, and the words kept beside it.

Works on a plain connection and on any layout, so that a copy can be looked at without being changed.
"""

import json
import sqlite3
from collections.abc import Generator, Iterable, Iterator, Mapping
from contextlib import closing
from itertools import groupby
from operator import itemgetter
from typing import TypeVar

from peewee import PeeweeException

from queueboard.records.connection import Raw
from queueboard.records.engine import engine_of
from queueboard.records.tables import STATE
from queueboard.records.writing import FIRST_PREVIOUS, Values, chain, digest, masked
from queueboard.slotted import dataclass
from queueboard.values.progress import Doing, counted

T = TypeVar("T")

HASHED = (
    "group_id", "line", "at_us", "by", "operation", "about", "undoes", "reason", "entity", "entity_id", "before",
    "after",
)  # fmt: skip
"""The columns of a line that its hash is of."""

ERASING = "erase_customer"
"""The operation behind whose lines no words are kept; it tells which older words it emptied."""

NOT_READABLE = (sqlite3.DatabaseError, PeeweeException, ValueError, TypeError, KeyError, IndexError)
"""What comes out of a damaged file where a number, a text or JSON was expected."""


@dataclass(frozen=True, slots=True)
class Life:
    """What history tells of one row."""

    entity: str
    entity_id: int
    last: Values | None
    """The row as its last line left it; None where it was taken away."""
    known: Values
    """The same, of the last line that left anything."""
    broken_at: int | None
    """The first line whose before is not the after before it."""


def audit(connection: Raw) -> Iterator[str]:
    """A sentence for each thing that does not hold together, the most telling first; nothing for a sound file."""
    for look in (_layout, _chain, _states, _words, _numbers):
        try:
            yield from look(connection)
        except NOT_READABLE as error:
            yield f"something in it cannot be read ({error})"


def emptied(connection: Raw) -> frozenset[int]:
    """Ids of the words beside history that were erased on purpose, as history itself tells."""
    told = connection.execute("SELECT about FROM history WHERE line = 0 AND operation = ?", (ERASING,))
    return frozenset(number for (about,) in told for number in json.loads(about).get("emptied", ()))


def lives(connection: Raw, only: str | None = None, columns: Mapping[str, Values] | None = None) -> Iterator[Life]:
    """Each row that ever was, as history tells it; *only* those of one table, where it is named.

    columns: the tables of the shop with what an older row holds in each column, from whoever has looked them up.
    """
    # The order of the index history_entity, so that no more than one row's life is held at a time.
    engine = engine_of(connection)
    lines = engine.streamed(
        f"SELECT entity, entity_id, id, before, after FROM history {'' if only is None else 'WHERE entity = ?'} "
        "ORDER BY entity, entity_id, id",
        () if only is None else (only,),
    )
    defaults = columns or {}
    told = _counted(connection, lines, 1) if only is None else lines
    for (entity, entity_id), life in groupby(told, key=itemgetter(0, 1)):
        defaults = defaults or engine.columns()
        last: Values | None = None
        known: Values = {}
        broken_at = None
        for _, _, line_id, before, after in life:
            was, now = _read(before), _read(after)
            if broken_at is None and not _follows(was, now, last, defaults.get(entity, {})):
                broken_at = line_id
            last = None if now is None else {**(last or {}), **now}
            known = known if last is None else last
        yield Life(entity, entity_id, last, known, broken_at)


def _read(line: str | None) -> Values | None:
    return None if line is None else dict(json.loads(line))


def _follows(was: Values | None, now: Values | None, last: Values | None, defaults: Values) -> bool:
    """True when a line begins where the one before it ended; a layout may have given the row columns in between.

    A line that takes a row away tells all of it, one that changes it at least what changed.
    """
    if was is None or last is None:
        return was is last
    then = {**defaults, **last}
    if now is None:
        return {**defaults, **was} == then
    return was.keys() <= then.keys() and now.keys() <= then.keys() and {**then, **was} == then


def _layout(connection: Raw) -> Iterator[str]:
    """Tables, indexes and the guards of history are those of the layout that the file says it has."""
    engine = engine_of(connection)
    if engine.strange():
        yield f"its tables are not those of layout {engine.layout()}"


def _chain(connection: Raw) -> Iterator[str]:
    previous = FIRST_PREVIOUS
    lines = engine_of(connection).streamed(f"SELECT id, previous, hash, {', '.join(HASHED)} FROM history ORDER BY id")
    for number, row in enumerate(_counted(connection, lines, 0), start=1):
        if row[0] != number:
            yield f"line {number} of history is not there"
            return
        if row[1] != previous or row[2] != chain(previous, dict(zip(HASHED, row[3:], strict=True))):
            yield f"line {number} of history is not as it was written"
            return
        previous = row[2]


def _counted(connection: Raw, lines: Iterable[T], times: int) -> Iterator[T]:
    """The lines of history, which are read three times: for the chain, for the rows and for the words."""
    (count,) = connection.execute("SELECT count(*) FROM history").fetchone()
    return counted(Doing.LOOKING_OVER, lines, 3 * count, times * count)


def _states(connection: Raw) -> Iterator[str]:
    salt = str(connection.execute("SELECT salt FROM shop").fetchone()[0])
    engine = engine_of(connection)
    defaults = {name: columns for name, columns in engine.columns().items() if name in STATE}
    there = set(defaults)
    told = dict.fromkeys(there, 0)
    newest = dict.fromkeys(there, 0)
    with closing(_Rows(connection)) as rows:
        for life in lives(connection, columns=defaults):
            where = f"{life.entity.replace('_', ' ')} {life.entity_id}"
            if life.broken_at is not None:
                yield f"line {life.broken_at} of history does not follow from the line before about the same {where}"
            newest[life.entity] = max(newest[life.entity], life.entity_id)
            told[life.entity] += life.last is not None
            stored = rows.row(life.entity, life.entity_id)
            if (stored is None) != (life.last is None):
                yield f"{where} is {'missing' if stored is None else 'there'}, against its history"
            elif stored is not None and life.last is not None:
                row = masked(STATE[life.entity], stored, salt)
                if row != {**defaults[life.entity], **life.last}:
                    yield f"{where} is not as its history left it"
    ever = engine.given()
    for name in sorted(there):
        if connection.execute(f"SELECT count(*) FROM {name}").fetchone()[0] != told[name]:
            yield f"there are rows of {name.replace('_', ' ')} that history does not know"
        if ever.get(name, 0) != newest[name]:
            yield f"the next number for a {name.replace('_', ' ')} does not follow from history"


class _Rows:
    """The rows of the tables, walked once each: they are asked for by table, and by ids that only grow."""

    def __init__(self, connection: Raw) -> None:
        self._connection = connection
        self._table = ""
        self._rows: Generator[Values, None, None] | None = None
        self._next: Values | None = None

    def row(self, table: str, row_id: int) -> Values | None:
        """One row; None where there is none."""
        if table != self._table or self._rows is None:
            self.close()
            self._table, self._rows = table, self._of(table)
            self._next = next(self._rows, None)
        while self._next is not None and int(str(self._next["id"])) < row_id:
            self._next = next(self._rows, None)
        return self._next if self._next is not None and self._next["id"] == row_id else None

    def close(self) -> None:
        """Let go of the table that was walked last; a server would hold it open."""
        if self._rows is not None:
            self._rows.close()

    def _of(self, table: str) -> Generator[Values, None, None]:
        head = self._connection.execute(f"SELECT * FROM {table} LIMIT 0")
        names = [column[0] for column in head.description]
        for row in engine_of(self._connection).streamed(f"SELECT * FROM {table} ORDER BY id"):
            yield dict(zip(names, row, strict=True))


def _words(connection: Raw) -> Iterator[str]:
    """Behind each digest stands its word, or an empty one where it was erased."""
    salt = str(connection.execute("SELECT salt FROM shop").fetchone()[0])
    gone = emptied(connection)
    streamed = engine_of(connection).streamed
    stored = groupby(
        streamed("SELECT history_id, side, field, text, id FROM personal ORDER BY history_id, id"), key=itemgetter(0)
    )
    history_id, words = next(stored, (None, iter(())))
    lines = streamed("SELECT id, operation, entity, before, after, reason FROM history ORDER BY id")
    for row in _counted(connection, lines, 2):
        digests = {} if row[1] == ERASING else _digests(row[2], row[3], row[4])
        if row[5]:
            digests["reason", "reason"] = row[5]
        found: dict[tuple[str, str], object] = {}
        if history_id == row[0]:
            for _, side, name, text, word_id in words:
                told = digests.get((side, name))
                found[side, name] = told if (word_id in gone if text == "" else digest(text, salt) == told) else None
            history_id, words = next(stored, (None, iter(())))
        if found != digests:
            yield f"the words kept for line {row[0]} of history are not those that were written"
            return
    if history_id is not None:
        yield f"there are words for a line {history_id} of history, which is not there"


def _digests(entity: str, before: str | None, after: str | None) -> dict[tuple[str, str], object]:
    personal = STATE[entity].personal
    sides = (("before", before), ("after", after))
    return {
        (side, name): cell
        for side, values in sides
        # Most lines name nothing personal; with a backslash a name can be written in other signs.
        if values is not None and ("\\" in values or any(f'"{name}"' in values for name in personal))
        for name, cell in json.loads(values).items()
        if name in personal and cell not in (None, "")
    }


def _numbers(connection: Raw) -> Iterator[str]:
    """What no line of history says, but follows from it."""
    (created,) = connection.execute("SELECT created_us FROM shop").fetchone()
    first = connection.execute("SELECT at_us FROM history WHERE id = 1").fetchone()
    if first is not None and first[0] != created:
        yield "the day on which the file was made is not that of the first line of history"
    ever = engine_of(connection).given()
    for name in ("history", "personal"):
        count, most = connection.execute(f"SELECT count(*), coalesce(max(id), 0) FROM {name}").fetchone()
        if not count == most == ever.get(name, 0):
            yield f"some of {name.replace('personal', 'the words beside history')} is not there"
