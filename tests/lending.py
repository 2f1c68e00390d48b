"""Databases on the tests' server, lent to one test after the other, with connections that outlive a shop.

Making and dropping a database takes a server half a second, and a new connection knows none of its tables and plans
every statement anew. So a process keeps both: a few databases hold one kind of shop after the other, and a connection
that a shop lets go of is the next shop's.
"""

import itertools
import os
import tempfile
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from queueboard.records.pointing import address_in, point
from queueboard.shop import carrying, starting
from queueboard.shop.opening import Shop, close_shop
from tests import engines

if TYPE_CHECKING:
    import psycopg

_fillings: defaultdict[str, int] = defaultdict(int)
"""How often each database was filled."""

SWEPT_AFTER = 20
"""Fillings; nobody else sweeps up the rows of shops that are gone, and questions grow slow among them."""

EMPTY, FILLED = "empty", "filled"
"""The two sorts of databases: with nothing in them, and with the tables of a shop."""

_lent: list[tuple[str, str]] = []
"""The sort of each database, and its name."""
_free: defaultdict[str, list[str]] = defaultdict(list)
"""Databases ready to be used again, by their sort."""
_template: list[str] = []
"""The one that every filled database is a copy of; never lent."""
_contents: dict[str, dict[str, bytes]] = {}
"""By what makes a shop the rows of it, as the server writes them out: by table, without those that have none."""
_known: defaultdict[str, set[str]] = defaultdict(set)
"""By database the contents that it can be filled with at once."""
_numbers = itertools.count()
_idle: defaultdict[tuple[int, str], list["psycopg.Connection[Any]"]] = defaultdict(list)
"""Connections that no shop uses now, by process and address: a process that forks must not share one."""

_fillers: dict[str, "psycopg.Connection[Any]"] = {}
"""By database the connection that fills it, for which its guards are asleep: one that puts them to sleep and wakes them
plans all that it knows anew, and so no shop uses it."""

_used: list["psycopg.Connection[Any]"] = []
"""Connections that a shop uses now."""

MOST_IDLE = 20
"""In a process; a server takes a hundred."""

FILL = """
DO $$ DECLARE t text; again text = ''; BEGIN
  FOR t IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' LOOP
    again = again || format('DELETE FROM public.%I; ', t);
    CONTINUE WHEN to_regclass('base.of_{number}_' || t) IS NULL;
    again = again || format('INSERT INTO public.%I TABLE base.%I; ', t, 'of_{number}_' || t);
  END LOOP;
  EXECUTE format('CREATE PROCEDURE base.again_{number}() LANGUAGE plpgsql AS %L', 'BEGIN ' || again || 'END');
END $$;
"""
"""Lets a database hold one content in the place of another, by who may write past a server's guards."""


@contextmanager
def databases() -> Iterator[None]:
    """While it lasts, a new shop file becomes a new database."""
    with pytest.MonkeyPatch.context() as monkeypatch:
        for room in (starting, carrying):
            monkeypatch.setattr(room, "address_in", _address_for)
        _keep_connections(monkeypatch)
        yield
    for idle in (list(_fillers.values()), *_idle.values()):
        while idle:
            idle.pop().close()


@contextmanager
def given_back() -> Iterator[None]:
    """At the end the databases that were made meanwhile are given back; no shop may have been left open."""
    before, used = len(_lent), len(_used)
    yield
    left_open, _used[used:] = [one for one in _used[used:] if not one.closed], []
    for connection in left_open:
        connection.close()
    while len(_lent) > before:
        _give_back(*_lent.pop())
    assert not left_open, "A shop was left open; close it where the test ends."


def _keep_connections(monkeypatch: pytest.MonkeyPatch) -> None:
    from queueboard.records.server import ServerDatabase

    reach = ServerDatabase._reach

    def warm(database: ServerDatabase) -> "psycopg.Connection[Any]":
        idle = _idle[os.getpid(), str(database.database)]
        _used.append(idle.pop() if idle else reach(database))
        return _used[-1]

    def let_go(database: ServerDatabase, connection: "psycopg.Connection[Any]") -> None:
        _used.remove(connection)
        if connection.closed or connection.info.transaction_status:
            connection.close()
        else:
            _idle[os.getpid(), str(database.database)].append(connection)

    monkeypatch.setattr(ServerDatabase, "_reach", warm)
    monkeypatch.setattr(ServerDatabase, "_close", let_go)


def copy_of(make: Callable[[Path], Shop], path: Path) -> None:
    """Let *path* name a database that holds what *make* made once in a process."""
    name = make.__name__
    if name not in _contents:
        _contents[name] = _made(make)
    database = _lend(FILLED, path)
    number, filler = list(_contents).index(name), _filler(database)
    if name not in _known[database]:
        _learn(filler, _contents[name], number)
        _known[database].add(name)
    filler.execute(f"CALL base.again_{number}()")
    _fillings[database] += 1
    if not _fillings[database] % SWEPT_AFTER:
        filler.execute(f"VACUUM {', '.join(_tables(filler))}")


def _made(make: Callable[[Path], Shop]) -> dict[str, bytes]:
    """The rows of a shop that is made in a database with nothing in it."""
    before = len(_lent)
    with tempfile.TemporaryDirectory() as folder:
        first = Path(folder) / "first.qb"
        _lend(EMPTY, first)
        close_shop(make(first))
        database = engines.named(first)  # where it began as a copy itself, that is another one by now
    with _connected(database) as connection:
        rows = {table: _rows(connection, table) for table in _tables(connection)}
    if not _template:
        _template.append(database)
        _lent[:] = [one for one in _lent if one[1] != database]
        with _connected(database) as connection:
            connection.execute("CREATE SCHEMA base")
        _close_idle(database)  # a database is copied while nobody has it open
    while len(_lent) > before:
        _give_back(*_lent.pop())
    return {table: some for table, some in rows.items() if some}


def _filler(database: str) -> "psycopg.Connection[Any]":
    if database not in _fillers:
        _fillers[database] = engines.connected(database)
        _fillers[database].execute("SET session_replication_role = replica")
    return _fillers[database]


def _tables(connection: "psycopg.Connection[Any]") -> list[str]:
    return [name for (name,) in connection.execute("SELECT tablename FROM pg_tables WHERE schemaname = 'public'")]


def _rows(connection: "psycopg.Connection[Any]", table: str) -> bytes:
    with connection.cursor() as cursor, cursor.copy(f"COPY public.{table} TO STDOUT") as written:
        return b"".join(map(bytes, written))


def _learn(connection: "psycopg.Connection[Any]", content: dict[str, bytes], number: int) -> None:
    """Keep a content in a database beside the shop."""
    for table, rows in content.items():
        beside = f"base.of_{number}_{table}"
        connection.execute(f"CREATE TABLE {beside} AS TABLE public.{table} WITH NO DATA")
        with connection.cursor() as cursor, cursor.copy(f"COPY {beside} FROM STDIN") as taken:
            taken.write(rows)
    connection.execute(FILL.replace("{number}", str(number)))


def new_database(path: Path) -> None:
    """Let *path* name a database with nothing in it."""
    _lend(EMPTY, path)


def finished(path: Path) -> None:
    """Give the database that *path* names back before the test ends, where one test makes hundreds of shops."""
    if engines.on_server():
        lent = next(one for one in _lent if one[1] == engines.named(path))
        _lent.remove(lent)
        _give_back(*lent)


def cut(path: Path) -> None:
    """Cut every connection of the program to the database that *path* names, as a server that is stopped does."""
    _close_idle(engines.named(path))
    _cut(engines.named(path), ())


@contextmanager
def away(path: Path) -> Iterator[None]:
    """While it lasts, the database that *path* names lets nobody in."""
    name = engines.named(path)
    engines.ruling().execute(f"ALTER DATABASE {name} ALLOW_CONNECTIONS false")
    cut(path)
    try:
        yield
    finally:
        engines.ruling().execute(f"ALTER DATABASE {name} ALLOW_CONNECTIONS true")


def _cut(name: str, kept: tuple[int, ...]) -> None:
    if name in _fillers:
        kept = (*kept, _fillers[name].info.backend_pid)
    engines.ruling().execute(
        "SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity WHERE datname = %s AND pid <> ALL (%s)",
        (name, list(kept)),
    )


def _close_idle(name: str) -> None:
    idle = _idle[os.getpid(), engines.address(name)]
    while idle:
        idle.pop().close()


@contextmanager
def _connected(name: str) -> Iterator["psycopg.Connection[Any]"]:
    """A connection to a database that no shop has open."""
    idle = _idle[os.getpid(), engines.address(name)]
    if not idle:
        idle.append(engines.connected(name))
    yield idle[-1]


def _lend(sort: str, path: Path) -> str:
    name = _free[sort].pop() if _free[sort] else _created(f"TEMPLATE {_template[0]}" if sort == FILLED else "")
    _lent.append((sort, name))
    point(path, engines.address(name))
    return name


def _created(how: str) -> str:
    name = f"test_{os.getpid()}_{next(_numbers)}"
    engines.ruling().execute(f"CREATE DATABASE {name} {how}")
    return name


def _give_back(sort: str, name: str) -> None:
    """Make a database ready for the next; whoever still has it open is cut off."""
    _cut(name, tuple(one.info.backend_pid for one in _idle[os.getpid(), engines.address(name)]))
    if sort == EMPTY:
        with _connected(name) as connection:
            connection.execute("DROP SCHEMA public CASCADE; CREATE SCHEMA public")
    if sum(map(len, _idle.values())) > MOST_IDLE:
        _close_idle(name)
    _free[sort].append(name)


def _address_for(path: Path) -> str | None:
    if not path.exists() and path.suffix == ".qb":
        new_database(path)
    return address_in(path)
