"""Going back to a copy: whole or not at all, nothing deleted, nobody surprised."""

import os
import shutil
import sqlite3
import stat
from contextlib import closing
from pathlib import Path
from unittest.mock import Mock

import pytest

from queueboard.errors import BusyError, FileError
from queueboard.records import putting_back
from queueboard.records.auditing import audit
from queueboard.records.migrations import STEPS
from queueboard.shop.checking import check
from queueboard.shop.keeping import copy_to
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.restoring import restore
from queueboard.words import Column
from tests.records.test_migrating import OLDER, old_file
from tests.shop.place import NOW, by, counter, parcel, small_disk, small_shop, state

pytestmark = pytest.mark.sqlite_file

Place = tuple[Path, Path]
"""A shop file, closed, and an older copy of it."""


@pytest.fixture
def place(tmp_path: Path) -> Place:
    """A copy, and a file in which two boxes came in since."""
    shop = small_shop(tmp_path)
    parcel(shop)
    copy = tmp_path / "stick.qb"
    copy_to(shop, copy, NOW)
    counter(shop)
    close_shop(shop)
    return shop.path, copy


def everything(path: Path) -> dict[str, object]:
    """All state of a file."""
    shop = open_shop(path)
    try:
        return {name: rows for name, rows in state(shop).items() if name != "restored"}
    finally:
        close_shop(shop)


def untouched(place: Place, words: str, error: type[FileError] = FileError) -> None:
    """Going back is refused with these words, and nothing at all lies otherwise than before."""
    path, copy = place
    before = {file: file.read_bytes() for file in path.parent.rglob("*") if file.is_file()}

    with pytest.raises(error, match=words):
        restore(path, copy, by("J", minutes=9))

    assert {file: file.read_bytes() for file in path.parent.rglob("*") if file.is_file()} == before


def test_the_copy_stands_in_the_place_of_the_file(place: Place) -> None:
    """What was in the copy is on the board; what stood there lies aside, byte for byte; both are the owner's alone."""
    path, copy = place
    present, wanted = path.read_bytes(), everything(copy)

    done = restore(path, copy, by("J", minutes=9))

    assert everything(path) == wanted
    assert done.aside == path.with_name("test-aside-2026-11-09-140900")
    assert done.aside is not None
    assert (done.aside / path.name).read_bytes() == present
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(done.aside.stat().st_mode) == 0o700
    assert {file.name for file in path.parent.iterdir()} == {path.name, done.aside.name}


def test_history_tells_of_it(place: Place) -> None:
    """Who went back, from which copy, how much of history it had and how much more the file had; all holds together."""
    path, copy = place
    with closing(sqlite3.connect(path)) as raw:
        (lines,) = raw.execute("SELECT count(*) FROM history").fetchone()
    done = restore(path, copy, by("J", minutes=9))

    assert done.lines_kept + (done.lines_beyond or 0) == lines
    with closing(sqlite3.connect(path)) as raw:
        told = raw.execute("SELECT from_file, lines_kept, lines_beyond, restored_by FROM restored").fetchall()
        assert told == [(str(copy), done.lines_kept, done.lines_beyond, "J")]
        assert list(audit(raw)) == []


def test_work_goes_on_and_one_can_go_forward_again(place: Place) -> None:
    """The board works on, and the file that was moved aside is itself a copy to go back to."""
    path, copy = place
    before = everything(path)
    aside = restore(path, copy, by("J", minutes=9)).aside
    assert aside is not None
    again = restore(path, aside / path.name, by("J", minutes=10))

    assert everything(path) == before
    assert again.lines_beyond is None


def test_a_missing_file_is_put_back(place: Place) -> None:
    """Where there is no file any more nothing is moved aside, and the folder is made if need be."""
    path, copy = place
    wanted = everything(copy)
    shutil.rmtree(path.parent)

    done = restore(path, copy, by("J", minutes=9))

    assert (done.aside, done.lines_beyond) == (None, None)
    assert everything(path) == wanted


@pytest.mark.parametrize("harm", ["cut", "scrambled", "empty", "text"])
def test_a_damaged_file_is_kept_with_what_belongs_to_it(harm: str, place: Place) -> None:
    """Whatever is left of the file goes aside under its own names, a log beside it included."""
    path, copy = place
    whole = path.read_bytes()
    harmed = {
        "cut": whole[:-4096],
        "scrambled": whole[:100] + b"\xa5" * (len(whole) - 100),
        "empty": b"",
        "text": b"knives: 13\n",
    }[harm]
    path.write_bytes(harmed)
    for end in ("-wal", "-shm"):
        path.with_name(path.name + end).write_bytes(b"left over")

    done = restore(path, copy, by("J", minutes=9))

    assert done.aside is not None
    assert (done.aside / path.name).read_bytes() == harmed
    assert {file.name for file in done.aside.iterdir()} >= {path.name, f"{path.name}-wal"}
    assert check(path, NOW).sound
    assert not list(path.parent.glob("*-wal"))


def test_what_a_log_still_holds_goes_aside_too(place: Place, tmp_path: Path) -> None:
    """Steps that SQLite had only in its log when the machine stopped are in the file that lies aside."""
    path, copy = place
    with closing(sqlite3.connect(path)) as raw:
        raw.execute("PRAGMA journal_mode = WAL")
    shop = open_shop(path)
    made = parcel(shop, name="Late Comer")
    stopped = tmp_path / "stopped"
    shutil.copytree(path.parent, stopped)
    close_shop(shop)
    path = stopped / path.name
    path.with_name(path.name + ".open").unlink()
    assert path.with_name(path.name + "-wal").stat().st_size > 0

    aside = restore(path, copy, by("J", minutes=9)).aside

    assert aside is not None
    assert made.customer.name in [row["name"] for row in _customers(aside / path.name)]


def _customers(path: Path) -> list[dict[str, object]]:
    shop = open_shop(path)
    try:
        return state(shop)["customer"]
    finally:
        close_shop(shop)


@pytest.mark.parametrize(
    ("kept", "filled", "words"),
    [
        (0, b"", "is empty"),
        (0, b"knives: 13\n", "is not a shop file"),
        (-4096, b"", "is damaged"),
        (200, b"\xa5" * 100_000, "is not as it was written|is damaged|is no good"),
    ],
    ids=["empty", "text", "cut", "scrambled"],
)
@pytest.mark.parametrize("with_sum", [True, False])
def test_a_bad_copy_changes_nothing(kept: int, filled: bytes, words: str, with_sum: bool, place: Place) -> None:
    """A copy that is empty, another's, cut short or scrambled is refused, with and without its sum."""
    _, copy = place
    copy.write_bytes(copy.read_bytes()[:kept] + filled)
    if not with_sum:
        copy.with_name(copy.name + ".sha256").unlink()

    untouched(place, words)


def test_an_empty_database_is_no_copy(place: Place) -> None:
    """What a copy killed half-way leaves passes SQLite's own check; it is refused all the same."""
    _, copy = place
    copy.unlink()
    with closing(sqlite3.connect(copy)) as raw:
        raw.execute("CREATE TABLE shop (id INTEGER)")
        raw.commit()
        assert raw.execute("PRAGMA quick_check").fetchone() == ("ok",)

    untouched(place, "is not a shop file")


def test_a_copy_that_does_not_fit_its_history_is_refused(place: Place) -> None:
    """A row changed behind history's back is found before anything moves."""
    _, copy = place
    copy.with_name(copy.name + ".sha256").unlink()
    with closing(sqlite3.connect(copy)) as raw, raw:
        raw.execute("UPDATE knife SET price_cents = 1 WHERE id = 1")

    untouched(place, "is no good copy: knife 1 is not as its history left it. Nothing was changed")


def test_a_copy_of_a_newer_queueboard_is_refused(place: Place) -> None:
    """Its layout is not known here."""
    _, copy = place
    copy.with_name(copy.name + ".sha256").unlink()
    with closing(sqlite3.connect(copy)) as raw:
        raw.execute("PRAGMA user_version = 99")

    untouched(place, "layout is 99")


@pytest.mark.parametrize("layout", OLDER)
def test_a_copy_of_an_older_layout_is_led_on(layout: int, place: Place, tmp_path: Path) -> None:
    """The copy itself stays as it is; the file in its place has today's layout."""
    path, _ = place
    old = old_file(layout, tmp_path / "old.qb")
    before = old.read_bytes()

    restore(path, old, by("J", minutes=9))

    assert old.read_bytes() == before
    assert check(path, NOW).layout == len(STEPS)
    assert check(path, NOW).sound


def test_the_file_itself_is_no_copy(place: Place) -> None:
    """Nobody goes back to where they are."""
    path, _ = place

    untouched((path, path), "is the shop file itself")


def test_an_open_board_is_in_the_way(place: Place) -> None:
    """While anybody has the file open nothing moves; once it is closed, it goes, and no lock is left behind."""
    path, copy = place
    board, command = open_shop(path), open_shop(path)
    untouched(place, "is open in a board or a command. Close every board", BusyError)
    close_shop(command)
    untouched(place, "is open in a board or a command", BusyError)
    close_shop(board)

    restore(path, copy, by("J", minutes=9))

    assert not list(path.parent.glob("*.open"))


def test_a_board_cannot_open_while_a_copy_is_put_there(place: Place, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who opens the file in that moment is told to try again."""
    path, copy = place
    opened: list[str] = []
    put = putting_back.put_in_place

    def put_while_somebody_opens(made: Path, target: Path, aside: Path) -> None:
        with pytest.raises(BusyError) as caught:
            open_shop(path)
        opened.append(str(caught.value))
        put(made, target, aside)

    monkeypatch.setattr(putting_back, "put_in_place", put_while_somebody_opens)
    restore(path, copy, by("J", minutes=9))

    assert opened == [f"A copy is just being put in the place of {path}. Try again in a moment."]


@pytest.mark.parametrize("step", ["fetch", "put_in_place"])
def test_a_disk_that_refuses_leaves_the_file(step: str, place: Place, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where there is no room the sentence says so, and the present file is as it was."""
    monkeypatch.setattr(putting_back, step, Mock(side_effect=OSError(28, "No space left on device")))

    untouched(place, "could not be put in the place of .*: No space left.* The shop file is as it was")


def test_a_full_disk_leaves_the_file(place: Place) -> None:
    """The same with a disk that is really too small for what is written."""
    with small_disk():
        untouched(place, "could not be put in the place of|is full")


def test_a_disk_without_second_names_will_do(place: Place, monkeypatch: pytest.MonkeyPatch) -> None:
    """There the file is moved aside in a step of its own."""
    path, copy = place
    wanted, present = everything(copy), path.read_bytes()
    monkeypatch.setattr(os, "link", Mock(side_effect=PermissionError(1, "Operation not permitted")))

    aside = restore(path, copy, by("J", minutes=9)).aside

    assert everything(path) == wanted
    assert aside is not None
    assert (aside / path.name).read_bytes() == present


def test_a_window_left_open_over_it_is_stopped(shop: Shop, tmp_path: Path) -> None:
    """Where no lock could tell, a window on the file that was moved aside cannot write any more."""
    made = parcel(shop)
    copy_to(shop, tmp_path / "stick.qb", NOW)
    lock = shop.path.with_name(shop.path.name + ".open")
    lock.unlink()

    restore(shop.path, tmp_path / "stick.qb", by("J", minutes=9))

    with pytest.raises(FileError, match="was moved or taken away"):
        move_knives(shop, by(), made.knives, Column.ON_BENCH)
