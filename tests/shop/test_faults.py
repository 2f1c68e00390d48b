"""The fault map: what can go wrong with a shop file, each with its own sentence, and nothing lost by it.

Rows 1 to 14 as decided before the work began; how a real machine answers is tried where it can be.
"""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing as closing_it
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import Mock

import pytest

from queueboard.cli import main
from queueboard.errors import BusyError, FileError, QueueboardError, RuleError
from queueboard.records.auditing import audit
from queueboard.records.migrations import STEPS
from queueboard.shop import closing, moving, noting
from queueboard.shop.checking import check
from queueboard.shop.keeping import daily_copy
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.words import Column, Settling
from tests.cli.schema import clock
from tests.shop.place import NOW, another, box, by, counter, of_file, own_path, parcel, started, state
from tests.shop.strangers import stranger
from tests.shop.undo_closing import close

pytestmark = pytest.mark.sqlite_file

Step = Callable[[Shop, int], object]

CLOSE_OUT: tuple[Step, ...] = (
    lambda shop, number: closing.begin_close_out(shop, by(), box(shop, number).box),
    lambda shop, number: closing.count(shop, by(), close(shop, number), 3),
    lambda shop, number: closing.confirm_names(shop, by(), close(shop, number)),
    lambda shop, number: closing.confirm_label(shop, by(), close(shop, number)),
    lambda shop, number: closing.settle(shop, by(), close(shop, number), Settling.ON_ACCOUNT),
    lambda shop, number: closing.send_off(shop, by(), close(shop, number)),
)
"""All that is stored until a parcel has gone."""


@pytest.fixture
def public(shop: Shop) -> Iterator[Path]:
    """A shop file with a parcel in a folder that anybody may enter, closed; all that is needed to look is loaded."""
    parcel(shop)
    look(shop, NOW)
    with TemporaryDirectory() as name:
        Path(name).chmod(0o755)
        with closing_it(sqlite3.connect(Path(name) / "shop.qb")) as copy:
            of_file(shop).backup(copy)
        opened = open_shop(Path(name) / "shop.qb")
        moving.move_knives(opened, by(), box(opened, 100).knives, Column.ON_BENCH)
        close_shop(opened)
        yield Path(name) / "shop.qb"
        Path(name).chmod(0o755)


def attempt(act: Callable[[], object]) -> str:
    """What an act was refused with; empty when it went."""
    try:
        act()
    except QueueboardError as error:
        return str(error)
    return ""


def full_at(shop: Shop, number: int) -> int | None:
    """Close a parcel out on a disk that takes no page more; the step at which it was full, after which all was mended.

    None where everything still found room.
    """
    for place, step in enumerate(CLOSE_OUT):
        before = state(shop)
        said = attempt(partial(step, shop, number))
        if said:
            assert "is full. Nothing stored was lost; free some room and try again" in said
            assert state(shop) == before
            assert list(audit(shop.database.raw())) == []
            shop.database.one("PRAGMA max_page_count = 1000000")
            for again in CLOSE_OUT[place:]:
                again(shop, number)
            return place
    return None


def six_ready(path: Path) -> Shop:
    """A shop with six parcels that can go."""
    shop = another(started, path)
    for _ in range(6):
        moving.move_knives(shop, by(), parcel(shop).knives, Column.READY)
    return shop


def test_1_a_disk_full_in_the_middle_of_a_close_out(tmp_path: Path) -> None:
    """Whichever step finds no room is refused whole, what was said to be saved stands, and the same step goes later."""
    seen: set[int] = set()
    for more in range(8):
        shop = another(six_ready, own_path(tmp_path / str(more)))
        numbers = [seen.box.number for seen in look(shop, NOW).boxes]
        for note in range(more):
            noting.note_box(shop, by(), box(shop, numbers[0]).box, f"{note}" * 100)
        shop.database.one(f"PRAGMA max_page_count = {shop.database.one('PRAGMA page_count')}")
        places = [full_at(shop, number) for number in numbers]
        seen |= {place for place in places if place is not None}

        assert [place for place in places if place is not None]
        assert look(shop, NOW).boxes == ()
        assert list(audit(shop.database.raw())) == []
        close_shop(shop)

    assert len(seen) > 1


def test_2_another_window_that_is_writing(shop: Shop) -> None:
    """Within the patience of a window nothing is stored and the sentence says to try again; then it goes."""
    made = parcel(shop)
    before = state(shop)
    impatient = open_shop(shop.path, patience_ms=1)
    with closing_it(sqlite3.connect(shop.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(BusyError, match=r"Nothing was lost; try again"):
            moving.move_knives(impatient, by(), made.knives, Column.TESTING)
        other.execute("ROLLBACK")

    assert state(shop) == before
    moving.move_knives(impatient, by(), made.knives, Column.TESTING)
    close_shop(impatient)


def test_3_a_file_that_may_only_be_read(public: Path) -> None:
    """It opens and shows the board; the first thing that would be stored is refused, and nothing is changed."""
    public.chmod(0o444)
    before = public.read_bytes()
    with stranger():
        shop = open_shop(public)
        made = box(shop, 100)
        with pytest.raises(FileError, match=r"may only be read, not written\. Check who owns"):
            moving.move_knives(shop, by(), made.knives, Column.TESTING)
        close_shop(shop)

    assert public.read_bytes() == before


@pytest.mark.parametrize("log", [True, False])
def test_4_a_folder_that_takes_no_file(log: bool, public: Path) -> None:
    """Where SQLite cannot keep what it needs beside the file it is still shown, with either kind of journal."""
    if log:
        with closing_it(sqlite3.connect(public)) as raw:
            raw.execute("PRAGMA journal_mode = WAL")
    public.chmod(0o666)
    public.parent.chmod(0o555)
    before, beside = public.read_bytes(), set(public.parent.iterdir())
    with stranger():
        shop = open_shop(public)
        try:
            made = box(shop, 100)
            with pytest.raises(FileError, match=r"may only be read, not written\. Check who owns"):
                moving.move_knives(shop, by(), made.knives, Column.TESTING)
            assert check(public, NOW).sound
        finally:
            close_shop(shop)

    assert shop.only_read
    assert public.read_bytes() == before
    assert set(public.parent.iterdir()) == beside


def test_5_no_permission_no_folder_and_a_folder(public: Path) -> None:
    """Three troubles for which SQLite has one word have a sentence each."""
    public.chmod(0o000)
    said = set()
    for path in (public, public.parent / "nowhere" / "shop.qb", public.parent):
        with stranger(), pytest.raises(FileError) as caught:
            open_shop(path)
        said.add(str(caught.value).replace(str(path), "IT"))

    assert said == {
        "You may not read IT. Ask its owner, or choose another file with --file.",
        "There is no shop file at IT. `queueboard start` makes one; `queueboard demo` shows an invented shop.",
        "IT is a folder, not a shop file. Choose another with --file.",
    }
    public.chmod(0o600)


def refused(path: Path, words: str) -> None:
    """Opening is refused with these words, and neither makes nor changes a file."""
    before = path.read_bytes() if path.exists() else None
    beside = set(path.parent.iterdir())

    with pytest.raises(FileError, match=words):
        open_shop(path)

    assert (path.read_bytes() if path.exists() else None) == before
    assert set(path.parent.iterdir()) == beside


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (None, "There is no shop file at"),
        (b"", "is empty and so is not a shop file"),
        (b"knives: 13\n", "is not a shop file of queueboard; nothing in it was touched"),
        (b"SQLite format 3\x00" + b"\xa5" * 4080, "is not a shop file of queueboard"),
    ],
    ids=["missing", "empty", "text", "smashed header"],
)
def test_6_and_7_what_is_no_shop_file(content: bytes | None, words: str, tmp_path: Path) -> None:
    """Nothing, an empty file, a text and a smashed header are told apart and left alone."""
    if content is not None:
        (tmp_path / "shop.qb").write_bytes(content)

    refused(tmp_path / "shop.qb", words)


def test_8_the_database_of_another_program(tmp_path: Path) -> None:
    """A sound file with other tables is never written into."""
    with closing_it(sqlite3.connect(tmp_path / "shop.qb")) as raw:
        raw.execute("CREATE TABLE recipe (id INTEGER)")

    refused(tmp_path / "shop.qb", "is not a shop file of queueboard")


@pytest.fixture
def closed(shop: Shop) -> Path:
    """A shop file with a parcel and a copy of the day, closed."""
    parcel(shop)
    daily_copy(shop, NOW)
    close_shop(shop)
    return shop.path


def test_9_a_newer_layout(closed: Path) -> None:
    """It is refused before anything is written, with both numbers."""
    with closing_it(sqlite3.connect(closed)) as raw:
        raw.execute("PRAGMA user_version = 99")

    refused(
        closed, f"its layout is 99, this one knows {len(STEPS)}.*Upgrade queueboard; nothing in the file was touched"
    )


@pytest.mark.parametrize("cut", [1, 4095, 4096, 3 * 4096])
def test_10_a_file_cut_short(cut: int, closed: Path) -> None:
    """Whether or not the cut is between two pages, the newest good copy is named."""
    closed.write_bytes(closed.read_bytes()[:-cut])

    refused(closed, r"is damaged; nothing in it was touched\. Put the newest good copy back with .*test-2026-11-09\.qb")


@pytest.mark.parametrize("filled", [b"\xa5", b"\xff", b"\x00"])
def test_11_damage_anywhere(filled: bytes, closed: Path) -> None:
    """Whatever stands in a page that was smashed, each look ends in a board or in one of our sentences."""

    def open_and_look() -> None:
        shop = open_shop(closed)
        try:
            look(shop, NOW)
        finally:
            close_shop(shop)

    whole, damaged = closed.read_bytes(), 0
    for page in range(1, len(whole) // 4096):
        closed.write_bytes(whole[: page * 4096] + filled * 4096 + whole[(page + 1) * 4096 :])
        said = attempt(open_and_look)
        assert not said or "is damaged" in said or said.startswith("line ")  # a line of the settings
        damaged += "is damaged" in said

    assert damaged > 3


def test_12_a_rule_of_the_tables(shop: Shop) -> None:
    """What a constraint or history's own guard refuses is a rule of the shop, in the trade's words."""
    made, other = parcel(shop), counter(shop)
    with (
        pytest.raises(RuleError, match="That action was stored already"),
        shop.writing(by(), "x") as w,
    ):
        w.database.run("UPDATE history SET by = 'X'")
    with (
        pytest.raises(RuleError, match=r"The shop file refused that .*nothing was stored"),
        shop.writing(by(), "x") as w,
    ):
        w.database.run("UPDATE box SET number = 0 WHERE id = ?", (made.box.id,))
    with pytest.raises(RuleError, match="Another box has that number by now"), shop.writing(by(), "x") as w:
        w.database.run("UPDATE box SET number = ? WHERE id = ?", (other.box.number, made.box.id))

    assert list(audit(shop.database.raw())) == []


def test_13_a_network_share_is_warned_of_at_the_start(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file made on a share works, and its maker is told what cannot be kept there."""
    for share in ("nfs4", ""):
        monkeypatch.setattr("queueboard.shop.checking.share_of", Mock(return_value=share))
        assert main(["start", "--file", str(tmp_path / f"{share}.qb")], clock=clock) == 0
        said = capsys.readouterr().out

        assert ("It lies on a network share (nfs4): two windows cannot be kept apart there." in said) is bool(share)


def test_14_a_newer_queueboard_led_the_file_on_while_we_run(shop: Shop) -> None:
    """What an open window would read or store after that is refused with both numbers; nothing is stored."""
    made = parcel(shop)
    with closing_it(sqlite3.connect(shop.path)) as raw:
        raw.execute("PRAGMA user_version = 99")

    with pytest.raises(FileError, match=r"layout is 99"):
        look(shop, NOW)
    with pytest.raises(FileError, match=r"layout is 99"):
        moving.move_knives(shop, by(), made.knives, Column.ON_BENCH)
    with closing_it(sqlite3.connect(shop.path)) as raw:
        assert raw.execute("SELECT count(*) FROM knife WHERE place <> 'received'").fetchone() == (0,)
