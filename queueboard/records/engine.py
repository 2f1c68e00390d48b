"""What the looks into a shop of any layout must know of the engine that keeps it, and nothing more."""

import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing, contextmanager
from functools import lru_cache
from typing import Any, Protocol

from queueboard.records import migrations
from queueboard.records.connection import Cell, Raw

Made = frozenset[tuple[str, ...]]
Defaults = dict[str, Cell]


class Engine(Protocol):
    """Where a file and a server differ, for a plain connection."""

    def layout(self) -> int:
        """The layout that the shop says it has."""

    def columns(self) -> dict[str, Defaults]:
        """The tables of the shop with their columns, in order, and what an older row holds in each."""

    def strange(self) -> bool:
        """True when its tables, indexes or guards are not those of its layout."""

    def given(self) -> dict[str, int]:
        """The highest number ever given, by table."""

    def give_on(self, table: str, highest: int) -> None:
        """Go on giving numbers behind this one."""

    def integrity(self, most: int) -> list[str]:
        """What the engine itself finds wrong."""

    def unmatched(self) -> int:
        """Rows that point to nothing."""

    def streamed(self, sql: str, values: Sequence[Cell] = ()) -> Iterator[tuple[Any, ...]]:
        """The rows of a large query, a portion at a time."""

    def put_in(self, table: str, columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> None:
        """Add one row after the other to a table; a file has read no further than the row that it refuses."""

    def facts(self) -> tuple[str, int, int]:
        """How it keeps its journal, how many pages it has, and how many bytes a page."""


class FileEngine:
    """SQLite, one file."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self.connection = connection

    def layout(self) -> int:
        """Stands in the file's header."""
        return int(self.connection.execute("PRAGMA user_version").fetchone()[0])

    def columns(self) -> dict[str, Defaults]:
        """As SQLite itself lists them."""
        listed = self.connection.execute(
            "SELECT t.name, c.name, c.dflt_value FROM sqlite_master t, pragma_table_info(t.name) c "
            "WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite%' ORDER BY t.name, c.cid"
        )
        tables: dict[str, Defaults] = {}
        for table, column, default in listed:
            tables.setdefault(table, {})[column] = None if default is None else _meant(default)
        return tables

    def strange(self) -> bool:
        """Held against a file freshly made in memory, word by word."""
        return _made(self.connection) != _made_by(migrations.STEPS[: self.layout()])

    def given(self) -> dict[str, int]:
        """SQLite's own table of them."""
        return dict(self.connection.execute("SELECT name, seq FROM sqlite_sequence").fetchall())

    def give_on(self, table: str, highest: int) -> None:
        """SQLite's own table of them."""
        self.connection.execute("DELETE FROM sqlite_sequence WHERE name = ?", (table,))
        self.connection.execute("INSERT INTO sqlite_sequence (name, seq) VALUES (?, ?)", (table, highest))

    def integrity(self, most: int) -> list[str]:
        """Every page looked at."""
        said = [str(row[0]) for row in self.connection.execute(f"PRAGMA integrity_check({most})")]
        return [] if said == ["ok"] else said

    def unmatched(self) -> int:
        """Every reference looked at."""
        return len(self.connection.execute("PRAGMA foreign_key_check").fetchall())

    def streamed(self, sql: str, values: Sequence[Cell] = ()) -> Iterator[tuple[Any, ...]]:
        """SQLite gives rows one by one anyway."""
        return self.connection.execute(sql, values)

    def put_in(self, table: str, columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> None:
        """Each at once."""
        insert = f"INSERT INTO {table} ({', '.join(columns)}) VALUES ({', '.join('?' * len(columns))})"
        for row in rows:
            self.connection.execute(insert, row)

    def facts(self) -> tuple[str, int, int]:
        """The mode of the journal, and the file's pages."""
        mode, pages, size = (
            self.connection.execute(f"PRAGMA {name}").fetchone()[0]
            for name in ("journal_mode", "page_count", "page_size")
        )
        return str(mode), int(pages), int(size)


def engine_of(connection: Raw) -> Engine:
    """The engine behind a plain connection."""
    if isinstance(connection, sqlite3.Connection):
        return FileEngine(connection)
    from queueboard.records.server_engine import ServerEngine

    return ServerEngine(connection)


@contextmanager
def _fresh(steps: Sequence[str]) -> Iterator[sqlite3.Connection]:
    """A file in memory, made by these steps of the layout."""
    with closing(sqlite3.connect(":memory:")) as connection:
        for step in steps:
            connection.executescript(step)
        yield connection


@lru_cache(maxsize=2)
def pattern(layout: int) -> dict[str, Defaults]:
    """The tables and columns of a layout, as the one text of it makes them."""
    with _fresh(migrations.STEPS[:layout]) as fresh:
        return FileEngine(fresh).columns()


@lru_cache(maxsize=2)
def references(layout: int) -> dict[str, dict[str, str]]:
    """For each table of a layout, the columns that point somewhere, and to which table."""
    with _fresh(migrations.STEPS[:layout]) as fresh:
        names = FileEngine(fresh).columns()
        lists = {name: fresh.execute(f"PRAGMA foreign_key_list({name})").fetchall() for name in names}
    return {name: {str(row[3]): str(row[2]) for row in rows} for name, rows in lists.items()}


@lru_cache(maxsize=2)
def _made_by(steps: tuple[str, ...]) -> Made:
    with _fresh(steps) as fresh:
        return _made(fresh)


@lru_cache(maxsize=2)
def wording(layout: int) -> tuple[str, ...]:
    """How a layout has all that it makes written, in the order in which it stands."""
    with _fresh(migrations.STEPS[:layout]) as fresh:
        made = fresh.execute("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite%'")
        return tuple(str(sql) for (sql,) in made)


def made_names(layout: int) -> Made:
    """The kind and name of all that a layout makes by name: tables, indexes, guards."""
    return frozenset((kind, name) for kind, name, _, sql in _made_by(migrations.STEPS[:layout]) if sql)


def written(table: str) -> str:
    """How the newest layout has a table written, with its rules."""
    made = _made_by(migrations.STEPS)
    return next((sql for kind, name, _, sql in made if (kind, name) == ("table", table)), "")


def _made(connection: sqlite3.Connection) -> Made:
    made = connection.execute("SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_master")
    return frozenset((*row[:3], " ".join(row[3].split())) for row in made)


@lru_cache(maxsize=64)
def _meant(default: str) -> Cell:
    """What a default comes to; there are few, and many columns have them."""
    with closing(sqlite3.connect(":memory:")) as empty:
        meant: Cell = empty.execute(f"SELECT {default}").fetchone()[0]
    return meant
