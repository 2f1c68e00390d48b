"""The shop file is taken away, emptied, replaced, or may only be read: the board says so by itself."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests.board.dump import dump
from tests.board.host import LARGE, until
from tests.shop.place import NOW

pytestmark = pytest.mark.sqlite_file


def emptied(path: Path) -> None:
    """Nothing is left in the file."""
    path.write_bytes(b"")


def replaced(path: Path) -> None:
    """Another file lies under its name."""
    whole = path.read_bytes()
    path.rename(path.with_suffix(".aside"))
    path.write_bytes(whole)


def led_on(path: Path) -> None:
    """A newer queueboard has led the file to a layout of its own."""
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA user_version = 99")


@pytest.mark.parametrize(
    ("happens", "said"),
    [
        (led_on, "was written by a newer queueboard (its layout is 99"),
        (Path.unlink, "was moved or taken away while the board is open"),
        (replaced, "was moved or taken away while the board is open"),
        (emptied, "was emptied while the board is open"),
    ],
)
async def test_the_board_notices_by_itself(two_boxes: Shop, happens: Callable[[Path], None], said: str) -> None:
    """Nobody presses a key: the sentence comes, and an action that is tried says the same and not “Saved”."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        happens(two_boxes.path)
        app.look_around()
        await until(pilot, lambda: said in " ".join(dump(app).split()))

        await pilot.press("escape")
        assert said not in " ".join(dump(app).split())
        await pilot.press("plus", "plus")
        await until(pilot, lambda: said in " ".join(dump(app).split()))


async def test_a_file_that_may_only_be_read(two_boxes: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """The board shows it, says so in one line and on top, and refuses what would be stored with a sentence."""
    monkeypatch.setattr("queueboard.records.database._writable", lambda _: False)
    shop = open_shop(two_boxes.path)
    app = QueueboardApp(Desk(shop, "shop", lambda: NOW))

    def says(words: str) -> bool:
        return words in " ".join(dump(app).split())

    async with app.run_test(size=LARGE) as pilot:
        await until(pilot, lambda: says("may only be read: this board shows it and saves nothing"))
        assert says("ONLY TO READ")
        assert says("R. Tallis")
        await pilot.press("escape")
        await pilot.press(*"100", "plus", "enter")
        await until(pilot, lambda: says("may only be read, not written"))
    close_shop(shop)
