"""What SQLite and history say of an open shop file, read without changing it."""

from itertools import islice

from queueboard.records.auditing import NOT_READABLE, audit
from queueboard.records.connection import Raw
from queueboard.records.engine import engine_of
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


def look_over(connection: Raw) -> Found:
    """Everything that can be found wrong with a file; the errors of a damaged one become its troubles."""
    engine = engine_of(connection)
    journal_mode, pages, page_bytes = engine.facts()
    return Found(
        journal_mode=journal_mode,
        layout=engine.layout(),
        pages=pages,
        page_bytes=page_bytes,
        integrity=_integrity(connection),
        unmatched=_unmatched(connection),
        history=tuple(islice(audit(connection), MOST_TROUBLES)),
        lines=_lines(connection),
    )


def _integrity(connection: Raw) -> tuple[str, ...]:
    try:
        return tuple(engine_of(connection).integrity(MOST_TROUBLES))
    except NOT_READABLE as error:
        return (str(error),)


def _unmatched(connection: Raw) -> int:
    try:
        return engine_of(connection).unmatched()
    except NOT_READABLE:
        return 1


def _lines(connection: Raw) -> int:
    try:
        return int(connection.execute("SELECT count(*) FROM history").fetchone()[0])
    except NOT_READABLE:
        return 0
