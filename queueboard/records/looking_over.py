"""What SQLite and history say of an open shop file, read without changing it."""

import sqlite3
from itertools import islice

from queueboard.records.auditing import NOT_READABLE, audit
from queueboard.slotted import dataclass

MOST_TROUBLES = 5
"""One damaged page can spoil thousands of rows; the first few say enough."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One look at what stands in a file."""

    journal_mode: str
    layout: int
    pages: int
    page_bytes: int
    integrity: tuple[str, ...]
    unmatched: int
    history: tuple[str, ...]
    lines: int

    @property
    def sound(self) -> bool:
        """True when nothing is wrong."""
        return not self.integrity and not self.unmatched and not self.history


def look_over(connection: sqlite3.Connection) -> Found:
    """Everything that can be found wrong with a file; the errors of a damaged one become its troubles."""
    return Found(
        journal_mode=str(_number(connection, "PRAGMA journal_mode")),
        layout=int(_number(connection, "PRAGMA user_version")),
        pages=int(_number(connection, "PRAGMA page_count")),
        page_bytes=int(_number(connection, "PRAGMA page_size")),
        integrity=_integrity(connection),
        unmatched=_unmatched(connection),
        history=tuple(islice(audit(connection), MOST_TROUBLES)),
        lines=_lines(connection),
    )


def _number(connection: sqlite3.Connection, sql: str) -> int | str:
    return connection.execute(sql).fetchone()[0]  # type: ignore[no-any-return]  # sqlite3 leaves cells untyped


def _integrity(connection: sqlite3.Connection) -> tuple[str, ...]:
    try:
        said = [str(row[0]) for row in connection.execute(f"PRAGMA integrity_check({MOST_TROUBLES})")]
    except NOT_READABLE as error:
        return (str(error),)
    return () if said == ["ok"] else tuple(said)


def _unmatched(connection: sqlite3.Connection) -> int:
    try:
        return len(connection.execute("PRAGMA foreign_key_check").fetchall())
    except NOT_READABLE:
        return 1


def _lines(connection: sqlite3.Connection) -> int:
    try:
        return int(_number(connection, "SELECT count(*) FROM history"))
    except NOT_READABLE:
        return 0
