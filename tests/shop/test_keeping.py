"""Copies of the shop file."""

import sqlite3
import stat
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from queueboard.errors import FileError
from queueboard.records import copying
from queueboard.records.copies import copies_of
from queueboard.records.database import ShopDatabase
from queueboard.shop.keeping import copy_to, daily_copy
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests.shop.place import NOW, box, parcel, small_disk, state


def test_a_copy_opens_as_the_same_shop(shop: Shop, tmp_path: Path) -> None:
    """A copy holds every row of the original and is readable by the owner only."""
    parcel(shop)

    copy_to(shop, tmp_path / "stick.qb", NOW)

    copy = open_shop(tmp_path / "stick.qb")
    assert state(copy) == state(shop)
    assert stat.S_IMODE((tmp_path / "stick.qb").stat().st_mode) == 0o600
    assert (tmp_path / "stick.qb.sha256").read_text().endswith("  stick.qb\n")
    close_shop(copy)


def test_one_copy_a_day(shop: Shop) -> None:
    """The day's first start makes a copy, the second none, the next day another."""
    first = daily_copy(shop, NOW)
    assert first is not None
    assert first.is_file()
    assert daily_copy(shop, NOW + timedelta(hours=2)) is None
    assert daily_copy(shop, NOW + timedelta(days=1)) not in (None, first)
    assert copies_of(shop.path) == (first, first.with_name("test-2026-11-10.qb"))


def test_a_place_that_takes_no_copy(shop: Shop) -> None:
    """Where the folder of the copies cannot be made, the sentence says so, that nothing is lost, and what to do."""
    (shop.path.parent / "copies").write_text("in the way")

    with pytest.raises(
        FileError, match=r"could not be made: .*exists.* The shop file is whole.*queueboard backup FILE"
    ):
        daily_copy(shop, NOW)
    assert (shop.path.parent / "copies").read_text() == "in the way"


@pytest.mark.parametrize("make", [daily_copy, lambda shop, now: copy_to(shop, shop.path.with_name("b.qb"), now)])
def test_a_folder_that_may_not_even_be_looked_into(
    make: Callable[[Shop, datetime], object], shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the machine does not tell whether the copy is there already, that is said of the copy too."""

    def forbidden(path: Path) -> bool:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "exists", forbidden)

    with pytest.raises(FileError, match=r"could not be made: Permission denied\. The shop file is whole"):
        make(shop, NOW)


def test_a_disk_that_is_full_under_the_copy(shop: Shop, tmp_path: Path) -> None:
    """What SQLite says of the copy's disk is said of the copy; nothing of it stays, and the shop goes on."""
    made = parcel(shop)
    said = r"The copy .*stick\.qb could not be made: .*The shop file is whole"
    with small_disk(), pytest.raises(FileError, match=said):
        copy_to(shop, tmp_path / "stick.qb", NOW)

    assert not list(tmp_path.glob("stick*"))
    assert box(shop, made.box.number) == made


class Failing(sqlite3.Connection):
    """A file on a disk that fails while it is read."""

    def backup(self, *_: object, **__: object) -> None:
        """Fail as SQLite does."""
        error = sqlite3.OperationalError("disk I/O error")
        error.sqlite_errorname = "SQLITE_IOERR_READ"
        raise error


def test_a_shop_file_that_cannot_be_read_is_not_blamed_on_the_copy(
    shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the disk of the shop file fails, the sentence is about that file, and no half of a copy stays."""
    failing = sqlite3.connect(shop.path, factory=Failing)
    monkeypatch.setattr(ShopDatabase, "raw", lambda _: failing)

    with pytest.raises(FileError, match=rf"The disk that holds {shop.path} could not be read"):
        copy_to(shop, tmp_path / "stick.qb", NOW)

    monkeypatch.undo()
    failing.close()
    assert not list(tmp_path.glob("stick*"))


def test_files_of_one_folder_have_copies_of_their_own(shop: Shop) -> None:
    """Two shop files beside each other, named alike but for their ends, each get a copy a day."""
    shop.path = shop.path.with_suffix(".backup")
    other = daily_copy(shop, NOW)
    shop.path = shop.path.with_suffix(".qb")
    assert copies_of(shop.path) == ()
    assert daily_copy(shop, NOW) not in (None, other)


def test_an_existing_file_is_not_overwritten(shop: Shop, tmp_path: Path) -> None:
    """A copy never takes the place of a file that is there."""
    (tmp_path / "mine.txt").write_text("dear diary")

    with pytest.raises(FileError, match="is there already"):
        copy_to(shop, tmp_path / "mine.txt", NOW)

    assert (tmp_path / "mine.txt").read_text() == "dear diary"


@pytest.mark.parametrize("content", [b"", b"SQLite format 3\x00" + b"\xa5" * 9000, b"no database" * 99])
def test_a_copy_that_is_not_whole_is_thrown_away(
    content: bytes, shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An empty database passes SQLite's own check, not ours; one that cannot be read is blamed on the copy alone."""

    def half_a_copy(source: sqlite3.Connection, target: Path) -> None:
        target.write_bytes(content)

    monkeypatch.setattr(copying, "copy_whole", half_a_copy)

    with pytest.raises(FileError, match="not whole"):
        copy_to(shop, tmp_path / "stick.qb", NOW)

    assert not list(tmp_path.glob("stick*"))


def test_a_missing_folder_is_named(shop: Shop, tmp_path: Path) -> None:
    """A copy into a folder that is not there says so."""
    with pytest.raises(FileError, match="There is no folder"):
        copy_to(shop, tmp_path / "nowhere" / "stick.qb", NOW)
