"""A file of every older layout becomes exactly a freshly made one, with all that stood in it."""

import gzip
import sqlite3
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from threading import Barrier

import pytest

from queueboard.errors import FileError
from queueboard.records import database
from queueboard.records.migrations import STEPS
from queueboard.records.schema_v1 import APPLICATION_ID
from queueboard.shop import undoing
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.values.actor import Actor
from queueboard.words import Column
from tests.shop.place import of_file, picture, small_disk, small_shop, state

pytestmark = pytest.mark.sqlite_file

OLDER = tuple(range(1, len(STEPS)))
"""Every layout before today's; for each the invented shop lies in values/, written out by the program of that time."""

VALUES = Path(__file__).parent / "values"
MORNING = datetime(2026, 11, 25, 13, 30, tzinfo=UTC)


def schema(connection: sqlite3.Connection) -> list[tuple[str, str]]:
    """Every table, index and trigger of a file as it was written."""
    return sorted(
        (name, " ".join(sql.split()))
        for name, sql in connection.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL")
    )


@cache
def columns_of(layout: int) -> dict[str, list[str]]:
    """The tables of a layout with their columns."""
    with closing(sqlite3.connect(":memory:")) as first:
        for step in STEPS[:layout]:
            first.executescript(step)
        tables = [str(row[0]) for row in first.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {name: [row[1] for row in first.execute(f"PRAGMA table_info({name})")] for name in tables}


def content(path: Path, layout: int) -> dict[str, list[tuple[object, ...]]]:
    """All rows of the tables of a layout, with the columns that it had."""
    columns = columns_of(layout)
    connection = sqlite3.connect(path)
    try:
        rows = {
            name: connection.execute(f"SELECT {', '.join(columns[name])} FROM {name} ORDER BY rowid").fetchall()
            for name in columns
        }
        rows["sqlite_sequence"] = [
            row for row in rows["sqlite_sequence"] if row[0] in columns
        ]  # newer tables count too
        return rows
    finally:
        connection.close()


@pytest.fixture(params=OLDER)
def layout(request: pytest.FixtureRequest) -> int:
    """An older layout."""
    return int(request.param)


def old_file(layout: int, path: Path) -> Path:
    """A file of that layout with the content of the invented shop."""
    path.write_bytes(_old_bytes(layout))
    return path


@cache
def _old_bytes(layout: int) -> bytes:
    """Made once, and copied for each test."""
    kept = VALUES / f"demo_layout_{layout}.sql.gz"
    with closing(sqlite3.connect(":memory:")) as connection:
        connection.executescript(gzip.decompress(kept.read_bytes()).decode())
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute(f"PRAGMA user_version = {layout}")
        return connection.serialize()


@pytest.fixture
def old(layout: int, tmp_path: Path) -> Path:
    """The same, where a test can write."""
    return old_file(layout, tmp_path / "old.qb")


@pytest.fixture
def migrated(old: Path) -> Iterator[Shop]:
    """The same file, opened by this program."""
    shop = open_shop(old)
    yield shop
    close_shop(shop)


def test_an_older_layout_becomes_what_a_new_file_is(migrated: Shop, tmp_path: Path) -> None:
    """Tables, columns, indexes and the guards of history are those of a file made today."""
    fresh = small_shop(tmp_path)

    assert schema(of_file(migrated)) == schema(of_file(fresh))
    assert migrated.database.one("PRAGMA user_version") == len(STEPS)
    assert migrated.database.one("PRAGMA integrity_check") == "ok"
    assert migrated.database.rows("PRAGMA foreign_key_check") == []
    close_shop(fresh)


def test_all_that_stood_in_an_older_layout_is_still_there(layout: int, old: Path) -> None:
    """Not a row is lost or changed, and the file as it was lies beside it."""
    before = content(old, layout)
    close_shop(open_shop(old))

    assert len(before["history"]) > 500
    assert content(old, layout) == before
    assert content(old.with_name(f"old-before-layout-{len(STEPS)}.qb"), layout) == before


def test_a_disk_too_small_for_the_copy_leaves_the_old_layout(old: Path) -> None:
    """Where the file cannot be copied first, the sentence says so, and not a byte of it is led on."""
    before = old.read_bytes()

    said = r"The copy .*before-layout.* could not be written: .* The shop file is as it was"
    with small_disk(), pytest.raises(FileError, match=said):
        open_shop(old)

    assert old.read_bytes() == before


def test_two_windows_that_open_an_old_file_at_once_both_get_it(layout: int, old: Path) -> None:
    """Both see the old layout; one leads the file on, the other waits and finds it done, and nothing is lost."""
    before = content(old, layout)
    together = Barrier(2, timeout=60)

    def open_it() -> int:
        together.wait()
        shop = open_shop(old, patience_ms=10_000)
        try:
            return int(str(shop.database.one("PRAGMA user_version")))
        finally:
            close_shop(shop)

    with ThreadPoolExecutor(2) as pool:
        windows = [pool.submit(open_it) for _ in range(2)]
        assert [window.result() for window in windows] == [len(STEPS)] * 2

    assert content(old, layout) == before
    assert content(old.with_name(f"old-before-layout-{len(STEPS)}.qb"), layout) == before


def test_a_window_that_saw_the_old_layout_finds_the_new_one(
    layout: int, old: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Between the look at the header and the lock another window led the file on; its copy of the old one stays."""
    look = database.look_before_opening

    def look_and_be_overtaken(path: Path) -> int:
        seen = look(path)
        monkeypatch.undo()
        close_shop(open_shop(path))
        return seen

    before = content(old, layout)
    monkeypatch.setattr(database, "look_before_opening", look_and_be_overtaken)
    shop = open_shop(old)

    assert shop.database.one("PRAGMA user_version") == len(STEPS)
    assert content(old.with_name(f"old-before-layout-{len(STEPS)}.qb"), layout) == before
    close_shop(shop)


def test_a_step_from_before_is_undone_after(migrated: Shop) -> None:
    """What history holds of an older layout can be taken back, box and knives included, and done again."""
    before = state(migrated)
    received = next(step for step in undoing.steps(migrated, "MB", 400) if step.operation == "receive_box")
    back = Actor(initials="MB", now=MORNING)
    undoing.undo(migrated, back, received.group_id, "entered twice")
    assert len(state(migrated)["box"]) == len(before["box"]) - 1

    undoing.undo(migrated, Actor(initials="MB", now=MORNING), back.group_id, "was right")

    assert state(migrated) == before


def test_work_goes_on_after_the_step(migrated: Shop) -> None:
    """The board is read from the migrated file, and a knife moves."""
    knife = next(k for seen in picture(migrated).boxes for k in seen.in_column(Column.RECEIVED) if not k.waiting_for)
    move_knives(migrated, Actor(initials="K", now=MORNING), [knife], Column.ON_BENCH)

    moved = picture(migrated).knife(knife.tag)
    assert moved is not None
    assert moved.column is Column.ON_BENCH
