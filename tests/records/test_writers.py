"""Several windows that move one knife at once lose nothing, with either kind of journal."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from queueboard.records import database
from queueboard.seedfiles import seed_text
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.keeping import copy_to
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.restoring import restore
from queueboard.shop.starting import start_shop
from tests.bench.writers import race
from tests.shop.place import NOW, by


def mode_of(path: Path) -> object:
    """The kind of journal that a shop file is worked in with, as its own connection says."""
    shop = open_shop(path)
    mode = shop.database.one("PRAGMA journal_mode")
    close_shop(shop)
    return mode


@pytest.mark.sqlite_file
@pytest.mark.parametrize("mended", [True, False])
def test_each_file_that_is_made_gets_the_journal_for_its_library(
    mended: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Started, put back or taken in: the write-ahead log where the library is mended, else the slower journal."""
    monkeypatch.setattr(database, "has_wal_reset_fix", lambda _: mended)
    started, taken, copy = tmp_path / "shop.qb", tmp_path / "taken.qb", tmp_path / "copy.qb"
    shop = start_shop(started, by(), seed_text("settings.toml"))
    copy_to(shop, copy, NOW)
    write_out(shop, tmp_path / "out.jsonl")
    close_shop(shop)
    take_in(taken, tmp_path / "out.jsonl", by())
    wanted = "wal" if mended else "truncate"

    assert mode_of(started) == mode_of(taken) == wanted
    restore(started, copy, by())
    assert mode_of(started) == wanted
    with closing(sqlite3.connect(copy)) as raw:
        assert raw.execute("PRAGMA journal_mode").fetchone() == ("delete",)  # a copy is one file that can be carried


@pytest.mark.parametrize("log", [False, True], ids=["journal", "log"])
def test_no_move_is_lost_between_four_windows(log: bool, tmp_path: Path) -> None:
    """Each move that was said to be stored is counted, and the file is sound."""
    done = race(tmp_path, 4, 80, careful=True, log=log)

    assert (done.lost, done.sound) == (0, True)
    assert done.back == 40


def test_the_control_loses_some(tmp_path: Path) -> None:
    """Without asking for the version that was seen, moves are written over."""
    assert any(race(tmp_path / str(number), 4, 80, careful=False).lost for number in range(10))
