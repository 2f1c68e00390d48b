"""A shop on a PostgreSQL server: connecting, making, and what differs from a file. Loaded only for such a shop."""

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from functools import cache
from itertools import count
from typing import Any, TypeVar

import peewee
import psycopg
from peewee import InterfaceError, OperationalError
from psycopg.types.numeric import Int8Dumper
from psycopg.types.string import StrDumper

from queueboard.errors import FileError, LostError
from queueboard.records import lost, migrations, typed_password
from queueboard.records.connection import Cell, Cursor, ShopDatabase
from queueboard.records.reaching import Try, answered_within
from queueboard.records.server_schema import FILLED, FIRST, for_server
from queueboard.records.server_sql import for_driver

T = TypeVar("T")

REACH_SECONDS = 3
"""How long a server may take to answer before it counts as away."""

ANSWER_SECONDS = 0.5
"""How long a server may take to say that a transaction has begun, the queue of writers included; else it is away."""

PAUSE_SECONDS = 1.0
"""How long a server that was away is left alone."""

CUT_LOOSE_MS = 15_000
"""After so long in the middle of an action without a word, the server rolls it back: its writer's machine is away."""

PREPARED_AFTER, MOST_PREPARED = 1, 500
"""A statement that was asked so often before is prepared: planning it takes a server longer than running it."""

FILLING = (
    "SET CONSTRAINTS ALL DEFERRED; SET LOCAL queueboard.filling = on; SET LOCAL idle_in_transaction_session_timeout = 0"
)
"""Looking years of history over takes minutes in which the server is asked for little; nobody else is there yet."""

LOCK = "SELECT pg_advisory_xact_lock(hashtext('queueboard'), hashtext(current_schema()))"
"""Writers queue: lines of history are then numbered in the order in which they are stored, and chain to the last."""


class _Sum:
    """A sum comes as a decimal; SQLite gives whole numbers, and fractions where there are some."""

    format = psycopg.pq.Format.TEXT

    def __init__(self, oid: int, context: object = None) -> None:
        """The driver makes one for each result."""

    def load(self, data: "bytes | bytearray | memoryview") -> int | float:
        """One figure as the server writes it."""
        figure = bytes(data)
        return float(figure) if b"." in figure or b"N" in figure else int(figure)


_as_peewee: "AbstractContextManager[None]" = vars(peewee)["__exception_wrapper__"]
"""Turns the driver's errors into peewee's, as it does for its own calls; its stubs do not know it."""


_streams = count()
"""Large queries may be read side by side, each by a name of its own."""


class ServerRaw:
    """The plain connection beneath; says errors as peewee does."""

    def __init__(self, connection: "psycopg.Connection[Any]") -> None:
        self.connection = connection

    def execute(self, sql: str, values: Sequence[Any] = (), /) -> Cursor:
        """Run one statement."""
        with _as_peewee:
            cursor: Cursor = self.connection.execute(for_driver(sql), tuple(values))
        return cursor

    def put_in(self, table: str, columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> None:
        """Add rows to a table, without waiting for an answer to each."""
        copying = f"COPY {table} ({', '.join(columns)}) FROM STDIN"
        with _as_peewee, self.connection.cursor() as cursor, cursor.copy(copying) as copy:
            for row in rows:
                copy.write_row(row)

    def streamed(self, sql: str, values: Sequence[Any] = ()) -> Iterator[tuple[Any, ...]]:
        """Rows a few thousand at a time; the whole of history need not fit into memory.

        Without an open transaction the server keeps the rows until they are read.
        """
        alone = self.connection.info.transaction_status == psycopg.pq.TransactionStatus.IDLE
        with _as_peewee, self.connection.cursor(name=f"streamed_{next(_streams)}", withhold=alone) as cursor:
            cursor.itersize = 2000
            cursor.execute(for_driver(sql), tuple(values))
            yield from cursor


class ServerDatabase(ShopDatabase):
    """A connection to one shop on a server."""

    param = "%s"  # peewee's word for how its own few statements name a value
    on_server = True
    patience_ms = 250
    left_alone_until = 0.0
    trying: "Try[psycopg.Connection[Any]] | None" = None
    """The try to reach a server that was away."""

    def _connect(self) -> "psycopg.Connection[Any]":
        connection = self._reach() if self.trying is None else self.trying.outcome()
        connection.adapters.register_loader("numeric", _Sum)
        # A whole number is one of 64 bits whatever its size, and text is text: one statement is then prepared once.
        connection.adapters.register_dumper(int, Int8Dumper)
        connection.adapters.register_dumper(str, StrDumper)
        connection.prepare_threshold, connection.prepared_max = PREPARED_AFTER, MOST_PREPARED
        connection.execute(
            f"SET lock_timeout = {int(self.patience_ms)}; SET synchronous_commit = on; SET client_encoding = 'UTF8'; "
            "SET jit = off"
        )
        return connection

    def _reach(self) -> "psycopg.Connection[Any]":
        return psycopg.connect(str(self.database), autocommit=True, **self.connect_params)

    def driver(self) -> "psycopg.Connection[Any]":
        """The driver's own connection."""
        connection: psycopg.Connection[Any] = self.connection()  # type: ignore[no-untyped-call]  # untyped in the stubs
        return connection

    def raw(self) -> ServerRaw:
        """The plain connection beneath, with SQL as SQLite has it."""
        return ServerRaw(self.driver())

    def layout(self) -> int:
        """Stands in a table of its own."""
        return int(self.one("SELECT layout FROM layout_now") or 0)

    def run(self, sql: str, values: Sequence[Cell] = ()) -> Cursor:
        """Run one fixed statement; the cursor knows what it did."""
        return super().run(for_driver(sql), values)

    def insert(self, sql: str, values: Sequence[Cell]) -> int:
        """The server says the id that it gave."""
        return int(self.one(f"{sql} RETURNING id", values) or 0)

    def begin(self) -> None:
        """Begin an action as the only writer; a connection that was lost before it is made anew first."""
        self._first(f"BEGIN; SET LOCAL idle_in_transaction_session_timeout = {CUT_LOOSE_MS}; {LOCK}")

    def rollback(self) -> None:
        """Roll back, unless there is nothing to roll back on: the error that cut the connection is the one to tell."""
        if not self.is_closed() and not self.driver().closed:
            super().rollback()

    @contextmanager
    def reading(self) -> Iterator[None]:
        """One consistent view over several queries; it never takes the writers' lock."""
        self._first("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY")
        try:
            yield
        finally:
            if not self.is_closed() and not self.driver().closed:
                # Behind a ROLLBACK the driver would let go of all that it has had the server prepare.
                self.execute_sql("COMMIT")  # type: ignore[no-untyped-call]  # untyped in the stubs

    def revive(self) -> None:
        """Connect again where the connection was lost; LostError while the server does not answer.

        It is tried beside the program and waited for once, no longer than for another who is writing, so that a machine
        that is away holds no keys up; the next call finds what became of it.
        """
        if not self.is_closed() and not self.driver().closed:
            return
        self.close()
        if time.monotonic() < self.left_alone_until:
            raise LostError(lost.AWAY)
        patience_ms = self.patience_ms if self.trying is None else 0
        self.trying = self.trying or Try(self._reach)
        if not self.trying.over_within(patience_ms / 1000):
            raise LostError(lost.AWAY)
        try:
            self.connect()
        except OperationalError:
            self.left_alone_until = time.monotonic() + PAUSE_SECONDS
            raise
        finally:
            self.trying = None

    def _first(self, sql: str) -> None:
        """Run what begins a transaction; nothing has happened yet, so that a lost connection may be made anew."""
        self.revive()
        try:
            self._begin(sql)
        except (OperationalError, InterfaceError) as error:
            self.rollback()
            if not lost.is_lost(error):
                raise
            self.revive()
            self._begin(sql)

    def _begin(self, sql: str) -> None:
        patience = max(ANSWER_SECONDS, 2 * self.patience_ms / 1000)
        with answered_within(patience, self.driver().fileno()):
            self.execute_sql(sql)  # type: ignore[no-untyped-call]  # untyped in the stubs


def connect(address: str, patience_ms: int) -> ServerDatabase:
    """Connect to a server; faults are the caller's to tell."""
    database = ServerDatabase(
        address,
        autoconnect=False,
        connect_timeout=REACH_SECONDS,
        tcp_user_timeout=REACH_SECONDS * 1000,
        keepalives_idle=REACH_SECONDS,
        keepalives_interval=1,
        keepalives_count=3,
        application_name="queueboard",
        password=typed_password.kept(),
    )
    database.patience_ms = patience_ms
    try:
        database.connect()
    except OperationalError as error:
        raise lost.not_reached(error) from error
    return database


def has_shop(database: ServerDatabase) -> bool:
    """True when there is a shop in the database."""
    return database.one("SELECT to_regclass('layout_now') IS NOT NULL") == 1


def make(database: ServerDatabase, fill: Callable[[ServerRaw], T]) -> T:
    """Make a shop of today's layout where there is none, and fill it, in one transaction: wholly, or not at all.

    Rows bring their numbers along; what fills ends with number_on.
    """
    with database.atomic():
        if has_shop(database):
            raise there_already()
        database.execute_sql(FIRST)  # type: ignore[no-untyped-call]  # untyped in the stubs
        database.execute_sql("INSERT INTO layout_now (layout) VALUES (0)")  # type: ignore[no-untyped-call]  # untyped in the stubs
        bring_up(database)
        database.execute_sql(FILLING)  # type: ignore[no-untyped-call]  # untyped in the stubs
        return fill(database.raw())


def number_on(raw: ServerRaw) -> None:
    """Behind the rows that a shop was filled with, go on with the numbers above theirs."""
    raw.execute(FILLED)


def there_already() -> FileError:
    """The sentence for a database that would have to be written over."""
    return FileError("That database has a shop in it already; nothing was changed. Name an empty database with --file.")


def bring_up(database: ServerDatabase) -> None:
    """Lead a shop to the newest layout; call it in a transaction, behind the writers' lock."""
    database.execute_sql(_steps(database.layout()))  # type: ignore[no-untyped-call]  # untyped in the stubs
    database.run("UPDATE layout_now SET layout = ?", (len(migrations.STEPS),))


@cache
def _steps(layout: int) -> str:
    """All that leads on from a layout as one text: to wait for each of its statements took most of the time."""
    written = migrations.statements("\n".join(migrations.STEPS[layout:]))
    return "\n".join(made for statement in written for made in for_server(statement))
