"""A shop file that is missing, foreign, newer or damaged gets its own sentence and is never written to."""

import sqlite3
import stat
from contextlib import closing
from pathlib import Path

import pytest

from queueboard.errors import BusyError, FileError, SettingsError
from queueboard.records import database, migrations
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.receiving import add_customer
from queueboard.shop.starting import start_shop
from queueboard.words import Column
from tests.shop.place import NOW, box, by, parcel, small_shop, state

pytestmark = pytest.mark.sqlite_file


def refused(path: Path, words: str) -> None:
    """Opening fails with a sentence that has these words, and not a byte of the file changes."""
    before = path.read_bytes() if path.is_file() else None

    with pytest.raises(FileError, match=words):
        open_shop(path)

    assert (path.read_bytes() if path.is_file() else None) == before


@pytest.fixture
def closed(tmp_path: Path) -> Path:
    """The path of a sound shop file that nobody has open."""
    made = small_shop(tmp_path)
    parcel(made)
    close_shop(made)
    return made.path


def test_a_shop_opens_as_it_was_left(closed: Path) -> None:
    """What was stored before closing is there after opening."""
    shop = open_shop(closed)

    assert [b.customer.name for b in look(shop, NOW).boxes] == ["R. Tallis"]
    close_shop(shop)


def test_a_missing_file_is_not_made(tmp_path: Path) -> None:
    """A missing file is named, and opening does not make one."""
    refused(tmp_path / "none.qb", "There is no shop file")

    assert not (tmp_path / "none.qb").exists()


def test_a_folder_is_no_shop_file(tmp_path: Path) -> None:
    """A folder in place of the file has its own sentence."""
    refused(tmp_path, "is a folder")


@pytest.mark.parametrize("content", [b"", b"knives: 13\n", b"SQLite format 3\x00" + b"\x00" * 84])
def test_a_foreign_file_is_left_alone(tmp_path: Path, content: bytes) -> None:
    """An empty file, a text and another program's database are none of ours."""
    path = tmp_path / "other.qb"
    path.write_bytes(content)

    refused(path, "is not a shop file")


def test_another_programs_database_is_left_alone(tmp_path: Path) -> None:
    """A sound SQLite file with other tables is refused before anything is written."""
    path = tmp_path / "other.qb"
    with sqlite3.connect(path) as other:
        other.execute("CREATE TABLE recipe (id INTEGER)")
    other.close()

    refused(path, "is not a shop file")


def test_a_newer_file_asks_for_an_upgrade(closed: Path) -> None:
    """A file of a newer layout is refused with both numbers."""
    raw = sqlite3.connect(closed)
    raw.execute("PRAGMA user_version = 99")
    raw.close()

    refused(closed, "layout is 99.*Upgrade")


def test_a_file_cut_short_is_damaged(closed: Path) -> None:
    """A file that lost its end is named as damaged, with what to put in its place."""
    closed.write_bytes(closed.read_bytes()[:-4096])

    refused(
        closed,
        "is damaged; nothing in it was touched. Put a copy .* restore COPY`; the damaged file is kept",
    )


def test_a_scrambled_file_is_damaged(closed: Path) -> None:
    """A file whose pages were overwritten is named as damaged."""
    content = closed.read_bytes()
    closed.write_bytes(content[:100] + b"\xa5" * (len(content) - 100))

    refused(closed, "is damaged")


def test_an_existing_file_is_never_started_over(closed: Path) -> None:
    """Starting a shop where a file is already changes nothing."""
    before = closed.read_bytes()

    with pytest.raises(FileError, match="is there already"):
        start_shop(closed, by(), "name = 1")

    assert closed.read_bytes() == before


def test_wrong_settings_leave_no_half_made_shop(tmp_path: Path) -> None:
    """A shop whose settings have a mistake is not made at all."""
    with pytest.raises(SettingsError):
        start_shop(tmp_path / "new" / "shop.qb", by(), "nonsense = [")

    assert not (tmp_path / "new" / "shop.qb").exists()


def test_file_and_folder_are_the_owners_alone(shop: Shop) -> None:
    """Customers' data can be read by the owner only."""
    assert stat.S_IMODE(shop.path.stat().st_mode) == 0o600
    assert stat.S_IMODE(shop.path.parent.stat().st_mode) == 0o700


def test_an_old_sqlite_gets_a_sentence(monkeypatch: pytest.MonkeyPatch, closed: Path) -> None:
    """A SQLite without STRICT tables is named with its version."""
    monkeypatch.setattr(sqlite3, "sqlite_version_info", (3, 36, 0))

    refused(closed, "needs 3.37 or newer")


@pytest.mark.parametrize(
    ("version", "fixed"),
    [
        ((3, 40, 1), False),
        ((3, 44, 6), True),
        ((3, 45, 0), False),
        ((3, 50, 7), True),
        ((3, 51, 2), False),
        ((3, 51, 3), True),
        ((3, 53, 4), True),
    ],
)
def test_wal_is_used_only_where_its_reset_is_mended(version: tuple[int, int, int], fixed: bool) -> None:
    """The checkpoint race was mended in 3.51.3 and in 3.44.6 and 3.50.7 (sqlite.org/wal.html#walresetbug)."""
    assert database.has_wal_reset_fix(version) is fixed


def test_a_second_window_sees_the_first_ones_work(shop: Shop) -> None:
    """Two windows on one file: each sees what the other stored."""
    made = parcel(shop)
    other = open_shop(shop.path)
    move_knives(other, by("K"), made.knives, Column.TESTING)

    assert {knife.column for knife in box(shop, made.box.number).knives} == {Column.TESTING}
    close_shop(other)


def test_a_busy_file_says_try_again(shop: Shop) -> None:
    """While another window holds the writer's lock an action is refused with a sentence and nothing is stored."""
    made = parcel(shop)
    before = state(shop)
    other = sqlite3.connect(shop.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    impatient = open_shop(shop.path, patience_ms=1)

    with pytest.raises(BusyError, match="try again"):
        move_knives(impatient, by(), made.knives, Column.TESTING)

    other.execute("ROLLBACK")
    other.close()
    assert state(shop) == before
    close_shop(impatient)


def test_a_file_moved_away_says_so(shop: Shop) -> None:
    """An action on a file that was moved while it was open is refused with that sentence; put back, it goes on."""
    made = parcel(shop)
    away = shop.path.with_name("elsewhere.qb")
    shop.path.rename(away)
    with pytest.raises(FileError, match="was moved or taken away"):
        move_knives(shop, by(), made.knives, Column.ON_BENCH)
    away.rename(shop.path)

    move_knives(shop, by(), made.knives, Column.ON_BENCH)

    assert {knife.column for knife in box(shop, made.box.number).knives} == {Column.ON_BENCH}


def test_a_full_disk_says_so_and_loses_nothing(shop: Shop) -> None:
    """SQLite's own word for a full disk comes out, and everything stored is still there."""
    made = parcel(shop)
    before = state(shop)
    shop.database.one(f"PRAGMA max_page_count = {shop.database.one('PRAGMA page_count')}")

    with pytest.raises(FileError, match="is full"):
        parcel(shop, knives=500)

    shop.database.one("PRAGMA max_page_count = 1000000")
    assert box(shop, made.box.number).knives == made.knives
    assert len(state(shop)["knife"]) >= len(before["knife"])


def test_an_older_layout_is_led_to_the_newest(closed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file of an older layout is copied aside and brought up; its rows stay."""
    monkeypatch.setattr(
        migrations, "STEPS", (*migrations.STEPS, "ALTER TABLE thing ADD COLUMN place TEXT NOT NULL DEFAULT '';")
    )
    monkeypatch.setattr("queueboard.shop.opening.STEPS", migrations.STEPS)

    shop = open_shop(closed)

    assert shop.database.one("PRAGMA user_version") == len(migrations.STEPS)
    assert "place" in [row[1] for row in shop.database.rows("PRAGMA table_info(thing)")]
    assert [b.customer.name for b in look(shop, NOW).boxes] == ["R. Tallis"]
    assert list(closed.parent.glob(f"*-before-layout-{len(migrations.STEPS)}.qb"))
    close_shop(shop)


def test_a_step_that_fails_leaves_the_old_layout(closed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A migration that breaks half-way leaves the file wholly as it was."""
    broken = "ALTER TABLE thing ADD COLUMN place TEXT; ALTER TABLE nowhere ADD COLUMN x TEXT;"
    newest = len(migrations.STEPS)
    monkeypatch.setattr(migrations, "STEPS", (*migrations.STEPS, broken))
    monkeypatch.setattr("queueboard.shop.opening.STEPS", migrations.STEPS)

    with pytest.raises(FileError, match="no such table"):
        open_shop(closed)

    raw = sqlite3.connect(closed)
    assert raw.execute("PRAGMA user_version").fetchone() == (newest,)
    assert "place" not in [row[1] for row in raw.execute("PRAGMA table_info(thing)")]
    raw.close()


def test_a_file_led_to_a_newer_layout_while_it_is_open_is_not_written(shop: Shop) -> None:
    """What an open window tries after another queueboard has upgraded the file is refused, and stores nothing."""
    with closing(sqlite3.connect(shop.path)) as raw:
        raw.execute("PRAGMA user_version = 99")

    with pytest.raises(FileError, match="layout is 99"):
        add_customer(shop, by(), name="Maren Tallis")
    with closing(sqlite3.connect(shop.path)) as raw:
        assert raw.execute("SELECT count(*) FROM customer").fetchone() == (0,)
