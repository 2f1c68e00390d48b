"""Files that are none, or none any more, each get a sentence before anything waits for them."""

import hashlib
import os
import socket
import sqlite3
from pathlib import Path

import pytest

from queueboard.errors import FileError
from queueboard.records.database import look_before_opening
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests.shop.place import NOW, parcel, small_shop

pytestmark = pytest.mark.sqlite_file


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    """A shop with one box, closed."""
    shop = small_shop(tmp_path)
    parcel(shop)
    close_shop(shop)
    return shop


def test_a_pipe_is_refused_before_it_is_waited_for(tmp_path: Path) -> None:
    """Opening a named pipe would wait until somebody writes into it."""
    os.mkfifo(tmp_path / "pipe")

    with pytest.raises(FileError, match="is a device or a pipe, not a shop file"):
        look_before_opening(tmp_path / "pipe")


def test_a_socket_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A socket holds no shop."""
    monkeypatch.chdir(tmp_path)
    with socket.socket(socket.AF_UNIX) as listening:
        listening.bind("socket")

        with pytest.raises(FileError, match="is a device or a pipe, not a shop file"):
            look_before_opening(Path("socket"))


@pytest.mark.parametrize("device", ["/dev/null", "/dev/zero", "/dev/tty"])
@pytest.mark.skipif(not Path("/dev/null").exists(), reason="needs devices that are files")
def test_a_device_is_refused(device: str) -> None:
    """A device is refused by what it is; a terminal would wait for somebody to type."""
    with pytest.raises(FileError, match="is a device or a pipe, not a shop file"):
        look_before_opening(Path(device))


@pytest.mark.parametrize("name", ["x" * 300, "a/" * 3000, "flat/shop.qb"], ids=["long", "deep", "in a file"])
def test_a_name_no_file_can_have_is_a_sentence(name: str, tmp_path: Path) -> None:
    """Names too long for the disk, and a file in the place of a folder, end in a sentence of ours."""
    (tmp_path / "flat").write_text("", encoding="utf-8")

    with pytest.raises(FileError, match=r"cannot be looked at: |There is no shop file at "):
        look_before_opening(tmp_path / name)


def test_an_empty_file_has_its_own_sentence(tmp_path: Path) -> None:
    """A file of 0 bytes is said to be empty, and what to do about it."""
    (tmp_path / "shop.qb").touch()

    with pytest.raises(FileError, match=r"is empty .*Put a copy that you made .*, or move it away and run"):
        open_shop(tmp_path / "shop.qb")


@pytest.mark.parametrize("kept", [0, 0.9], ids=["empty", "damaged"])
@pytest.mark.parametrize(
    ("good", "others"),
    [
        ("", ()),
        ("", ("shop-2026-11-28.qb", "shop-old-2026-11-27.qb", "shop-2026.qb")),
        ("shop-2026-11-26.qb", ("shop-2026-11-27.qb", "shop-old-2026-11-30.qb")),
    ],
)
def test_the_newest_good_copy_is_named(
    kept: float, good: str, others: tuple[str, ...], shop: Shop, tmp_path: Path
) -> None:
    """A lost file is sent to its newest copy that is as it was written, or else to one the person made."""
    path, folder = tmp_path / "shop.qb", tmp_path / "copies"
    whole = shop.path.read_bytes()
    path.write_bytes(whole[: int(kept * len(whole))])
    folder.mkdir()
    for name in (good, *others):
        if name:
            (folder / name).write_bytes(whole)
            sums = hashlib.sha256(whole if name == good else b"otherwise").hexdigest()
            (folder / f"{name}.sha256").write_text(f"{sums}  {name}\n")

    with pytest.raises(FileError) as caught:
        open_shop(path)

    which = f"the newest good copy back with `queueboard --file {path} restore {folder / good}`"
    mine = f"a copy that you made of it back with `queueboard --file {path} restore COPY`"
    assert (which if good else mine) in str(caught.value)


def test_a_file_emptied_while_it_is_open_has_the_same_sentence(shop: Shop) -> None:
    """When the disk loses the file's bytes under an open window, the next look says so."""
    again = open_shop(shop.path)
    os.truncate(shop.path, 0)

    with pytest.raises(FileError, match="is empty"):
        look(again, NOW)
    close_shop(again)


def test_a_name_that_is_no_text_opens_all_the_same(shop: Shop) -> None:
    """A file whose name holds a byte that belongs to no letter is a file like others."""
    strange = shop.path.with_name(os.fsdecode(b"\xff 100% ?#.qb"))
    shop.path.rename(strange)

    again = open_shop(strange)
    assert len(look(again, NOW).boxes) == 1
    close_shop(again)


def test_a_disk_that_cannot_be_read_is_a_sentence(shop: Shop) -> None:
    """SQLite's word for a failing disk names the file and what to look at."""
    again = open_shop(shop.path)
    failing = sqlite3.OperationalError("disk I/O error")
    failing.sqlite_errorname = "SQLITE_IOERR_READ"

    with pytest.raises(FileError, match="could not be read or written"), again.reading():
        raise failing
    close_shop(again)
