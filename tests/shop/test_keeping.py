"""Copies of the shop file."""

import sqlite3
import stat
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from unittest.mock import Mock

import pytest

from queueboard.errors import FileError
from queueboard.records import copying
from queueboard.records.copies import as_written, copies_of, day_of, elsewhere, note_elsewhere
from queueboard.records.database import FileDatabase
from queueboard.records.thinning import kept
from queueboard.seedfiles import seed_text
from queueboard.shop.keeping import copy_to, daily_copy
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests.shop.place import NOW, box, by, parcel, small_disk, state

pytestmark = pytest.mark.sqlite_file


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
    monkeypatch.setattr(FileDatabase, "raw", lambda _: failing)

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


def test_copies_are_thinned_behind_a_verified_one(shop: Shop) -> None:
    """After forty days those too old are gone with their sums; another file's copies and strange names stay."""
    folder = shop.path.parent / "copies"
    folder.mkdir()
    others = {folder / "other-2020-01-01.qb", folder / "test-2020-13-01.qb"}
    for other in others:
        other.touch()

    for day in range(40):
        daily_copy(shop, NOW + timedelta(days=day))

    left = {day_of(copy) for copy in copies_of(shop.path)} - {None}
    assert left == kept((NOW + timedelta(days=day)).date() for day in range(40))
    assert {Path(f"{copy}.sha256") for copy in copies_of(shop.path) if day_of(copy)} == set(folder.glob("*.sha256"))
    assert others <= set(folder.iterdir())


def test_nothing_is_thinned_before_the_new_copy_is_verified(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the new copy turns out not to be whole, every old one is still there."""
    for day in range(30):
        daily_copy(shop, NOW + timedelta(days=day))
    before = copies_of(shop.path)
    monkeypatch.setattr(copying, "same_content", Mock(return_value=False))

    with pytest.raises(FileError, match="not whole"):
        daily_copy(shop, NOW + timedelta(days=300))

    assert copies_of(shop.path) == before


def test_a_spoiled_copy_of_today_is_made_anew(shop: Shop) -> None:
    """A copy that is not as it was written does not stand for today's."""
    first = daily_copy(shop, NOW)
    assert first is not None
    first.write_bytes(b"gone")

    assert daily_copy(shop, NOW) == first
    assert as_written(first)


def with_second_folder(shop: Shop, folder: Path) -> None:
    """Take in settings that name a second folder."""
    text = seed_text("settings.toml").replace('second_folder = ""', f'second_folder = "{folder}"')
    take_settings(shop, by(), text)


def test_a_second_folder_gets_the_same_copies(shop: Shop, tmp_path: Path) -> None:
    """A stick that is named in the settings holds each day's copy with its sum, and is thinned alike."""
    stick = tmp_path / "stick"
    stick.mkdir()
    with_second_folder(shop, stick)

    for day in range(20):
        daily_copy(shop, NOW + timedelta(days=day))

    here = copies_of(shop.path)
    assert [copy.name for copy in copies_of(shop.path, stick)] == [copy.name for copy in here]
    assert all(as_written(stick / copy.name) for copy in here)
    assert {stat.S_IMODE(file.stat().st_mode) for file in stick.iterdir()} == {0o600}


def test_a_stick_that_comes_later_gets_the_copy_of_the_day(shop: Shop, tmp_path: Path) -> None:
    """Not plugged in it is no trouble; at the next start of the same day it is served."""
    stick = tmp_path / "stick"
    with_second_folder(shop, stick)
    made = daily_copy(shop, NOW)
    assert made is not None
    assert not stick.exists()
    stick.mkdir()

    assert daily_copy(shop, NOW) is None
    assert as_written(stick / made.name)


def test_a_full_stick_is_a_sentence_and_today_s_copy_stays(
    shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What the stick cannot take is said of the stick; nothing half-written stays on it."""
    stick = tmp_path / "stick"
    stick.mkdir()
    with_second_folder(shop, stick)
    with_copy = shop.path.parent / "copies"
    monkeypatch.setattr("shutil.copyfile", Mock(side_effect=OSError(28, "No space left on device")))

    with pytest.raises(FileError, match=r"stick.* could not be made: No space"):
        daily_copy(shop, NOW)

    assert list(stick.iterdir()) == []
    assert len(list(with_copy.glob("*.qb"))) == 1


def test_a_stick_that_reads_back_otherwise_is_a_sentence(
    shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What arrived is read again before it gets its name."""

    def worn_out(_: Path, target: Path) -> None:
        target.write_bytes(b"worn out")

    stick = tmp_path / "stick"
    stick.mkdir()
    with_second_folder(shop, stick)
    monkeypatch.setattr("shutil.copyfile", worn_out)

    with pytest.raises(FileError, match="is not what was written there"):
        daily_copy(shop, NOW)

    assert list(stick.iterdir()) == []


def test_where_a_copy_went_off_this_disk_is_remembered(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder on the same disk does not count; one on another is remembered with its day."""
    note_elsewhere(shop.path, shop.path.parent, NOW)
    assert elsewhere(shop.path) is None

    note_elsewhere(shop.path, Path("/proc"), NOW)

    assert elsewhere(shop.path) == (NOW, "/proc")


@pytest.mark.parametrize("sums", [None, "", "0" * 64 + "  stick.qb\n", "é"])
def test_a_copy_without_its_sum_is_not_known_to_be_good(sums: str | None, shop: Shop, tmp_path: Path) -> None:
    """A missing, empty or other sum is no proof."""
    copy_to(shop, tmp_path / "stick.qb", NOW)
    assert as_written(tmp_path / "stick.qb")
    if sums is None:
        (tmp_path / "stick.qb.sha256").unlink()
    else:
        (tmp_path / "stick.qb.sha256").write_text(sums, encoding="utf-8")

    assert not as_written(tmp_path / "stick.qb")


def test_a_damaged_shop_file_is_noticed_by_its_daily_copy(shop: Shop) -> None:
    """When what is copied is damaged itself, the sentence is about the shop file and names the newest good copy."""
    parcel(shop)
    first = daily_copy(shop, NOW)
    root = int(str(shop.database.one("SELECT rootpage FROM sqlite_master WHERE name = 'box_customer'")))
    with shop.path.open("r+b") as file:
        file.seek((root - 1) * 4096 + 8)
        file.write(b"\xa5" * 200)
    shop.database.rows("PRAGMA cache_size = 0")

    with pytest.raises(FileError, match=rf"is damaged; .* restore {first}"):
        daily_copy(shop, NOW + timedelta(days=1))


def test_files_are_the_owner_s_alone_everywhere(shop: Shop) -> None:
    """The shop file, its copies, their sums and the folders made for them."""
    parcel(shop)
    daily_copy(shop, NOW)
    kinds = {(path.is_dir(), stat.S_IMODE(path.stat().st_mode)) for path in shop.path.parent.rglob("*")}

    assert kinds == {(True, 0o700), (False, 0o600)}
