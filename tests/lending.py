"""Databases on the tests' server, lent to one test after the other, with connections that outlive a shop.

Making and dropping a database takes a server half a second, and a new connection knows none of its tables. So a process
keeps both: a database is brought back to what it held, and a connection that a shop lets go of is the next shop's.
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

_lent: list[tuple[str, str]] = []
"""What each database holds when it is given back, and its name."""
_free: defaultdict[str, list[str]] = defaultdict(list)
"""Databases ready to be used again, by what they hold."""
_templates: dict[str, str] = {}
_numbers = itertools.count()
_idle: defaultdict[tuple[int, str], list["psycopg.Connection[Any]"]] = defaultdict(list)
"""Connections that no shop uses now, by process and address: a process that forks must not share one."""

_used: list["psycopg.Connection[Any]"] = []
"""Connections that a shop uses now."""

MOST_IDLE = 20
"""In a process; a server takes a hundred."""

EMPTY = "empty"

KEEP = """
CREATE SCHEMA base;
DO $$ DECLARE t text; filled boolean; again text = ''; BEGIN
  FOR t IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' LOOP
    again = again || format('DELETE FROM public.%I; ', t);
    EXECUTE format('SELECT EXISTS (TABLE public.%I)', t) INTO filled;
    CONTINUE WHEN NOT filled;
    EXECUTE format('CREATE TABLE base.%I AS TABLE public.%I', t, t);
    again = again || format('INSERT INTO public.%I TABLE base.%I; ', t, t);
  END LOOP;
  EXECUTE format('CREATE PROCEDURE base.again() LANGUAGE plpgsql SET session_replication_role = replica AS %L',
    'BEGIN ' || again || 'END');
END $$;
"""
"""Remembers what a database holds, and how it holds that again; a server's guards are asleep meanwhile."""


@contextmanager
def databases() -> Iterator[None]:
    """While it lasts, a new shop file becomes a new database."""
    with pytest.MonkeyPatch.context() as monkeypatch:
        for room in (starting, carrying):
            monkeypatch.setattr(room, "address_in", _address_for)
        _keep_connections(monkeypatch)
        yield
    for idle in _idle.values():
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
    if name not in _templates:
        with tempfile.TemporaryDirectory() as folder:
            first = Path(folder) / "first.qb"
            _lend(EMPTY, first)
            close_shop(make(first))
            # Where it began as a copy itself, that is another database by now.
            _templates[name] = engines.named(first)
            _lent[:] = [one for one in _lent if one[1] != _templates[name]]
        with _quiet(_templates[name]) as connection:
            connection.execute("DROP SCHEMA IF EXISTS base CASCADE")
            connection.execute(KEEP)
        _close_idle(_templates[name])  # a database is copied while nobody has it open
    _lend(name, path)


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
    engines.ruling().execute(
        "SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity WHERE datname = %s AND pid <> ALL (%s)",
        (name, list(kept)),
    )


def _close_idle(name: str) -> None:
    idle = _idle[os.getpid(), engines.address(name)]
    while idle:
        idle.pop().close()


@contextmanager
def _quiet(name: str) -> Iterator["psycopg.Connection[Any]"]:
    """A connection to a database that no shop has open; whoever still has is cut off."""
    idle = _idle[os.getpid(), engines.address(name)]
    if not idle:
        idle.append(engines.connected(name))
    _cut(name, tuple(one.info.backend_pid for one in idle))
    yield idle[-1]


def _lend(holds: str, path: Path) -> None:
    template = _templates.get(holds)
    name = _free[holds].pop() if _free[holds] else _created(f"TEMPLATE {template}" if template else "")
    _lent.append((holds, name))
    point(path, engines.address(name))


def _created(how: str) -> str:
    name = f"test_{os.getpid()}_{next(_numbers)}"
    engines.ruling().execute(f"CREATE DATABASE {name} {how}")
    return name


def _give_back(holds: str, name: str) -> None:
    """Bring a database back to what it held."""
    with _quiet(name) as connection:
        connection.execute(
            "DROP SCHEMA public CASCADE; CREATE SCHEMA public" if holds == EMPTY else "CALL base.again()"
        )
    if sum(map(len, _idle.values())) > MOST_IDLE:
        _close_idle(name)
    _free[holds].append(name)


def _address_for(path: Path) -> str | None:
    if not path.exists() and path.suffix == ".qb":
        new_database(path)
    return address_in(path)
