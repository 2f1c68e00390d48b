"""A connection to one shop, whichever engine keeps it: a file of its own, or a database on a server."""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Protocol

from peewee import Database

if TYPE_CHECKING:
    from queueboard.records.benched import Benched
    from queueboard.records.measuring import Worked

Cell = int | str | None
"""What a column holds: integers and text only."""


class Cursor(Protocol):
    """What comes out of one statement."""

    @property
    def description(self) -> Any:  # the driver's own shape
        """The columns, each by its name first."""

    @property
    def rowcount(self) -> int:
        """How many rows it changed."""

    def fetchone(self) -> Any:
        """The next row; None behind the last."""

    def fetchall(self) -> list[Any]:
        """All rows that are left."""

    def __iter__(self) -> Iterator[Any]: ...


class Raw(Protocol):
    """A plain connection, as the looks into a shop of any layout need it; sqlite3's own is one."""

    def execute(self, sql: str, values: Sequence[Any] = ..., /) -> Cursor:
        """Run one statement."""


class ShopDatabase(Database):
    """A connection to one shop: what holds of a file and of a server alike. Queries are fixed SQL that both read."""

    only_read = False
    """True for a shop that may not be written by whoever opened it."""

    on_server = False
    """True where copies are the server's own work, and not ours."""

    benched: "Benched | None" = None
    """How many knives have come to the bench, as it was last counted (records/benched.py)."""

    belts_at_work: "Mapping[int, Worked]" = MappingProxyType({})
    """By the id of a belt that is up a knife that it has done, as it was last seen (shop/belt_counts.py)."""

    def raw(self) -> Raw:
        """The plain connection beneath."""
        raise NotImplementedError

    def layout(self) -> int:
        """Which layout the shop has now; a newer program may have led it on."""
        raise NotImplementedError

    def insert(self, sql: str, values: Sequence[Cell]) -> int:
        """Run an INSERT of one row; returns its id."""
        raise NotImplementedError

    def revive(self) -> None:
        """Connect again where the connection was lost; nothing can be lost between us and a file."""

    def leave_no_trace(self) -> None:
        """Have what is erased from here on written over, not only let go, where that is in our hands."""

    def bring_home(self) -> None:
        """Have nothing wait beside the shop that is in it already: a log would hold erased words a while longer."""

    def run(self, sql: str, values: Sequence[Cell] = ()) -> Cursor:
        """Run one fixed statement; the cursor knows what it did."""
        cursor: Cursor = self.execute_sql(sql, values)  # type: ignore[no-untyped-call]  # untyped in the stubs
        return cursor

    def rows(self, sql: str, values: Sequence[Cell] = ()) -> list[tuple[Cell, ...]]:
        """All rows of one fixed query as plain tuples."""
        return self.run(sql, values).fetchall()

    def one(self, sql: str, values: Sequence[Cell] = ()) -> Cell:
        """The first cell of the first row; None when there is no row."""
        rows = self.rows(sql, values)
        return rows[0][0] if rows else None

    @contextmanager
    def reading(self) -> Iterator[None]:
        """One consistent view over several queries; it never takes the writer's lock."""
        raise NotImplementedError
        yield
