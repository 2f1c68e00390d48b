"""Leaving the board: one key from everywhere, and no other key that pretends to."""

from collections.abc import Callable

import pytest
from textual.events import Key

from queueboard.board.desk import Desk
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.dialogs import NoteDialog
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.undo import UndoScreen
from queueboard.shop.opening import Shop
from tests.board.answering import COUNTER
from tests.board.dump import dump
from tests.board.host import SMALL, AnyScreen, Host, until
from tests.shop.place import NOW, box

OPENED: dict[str, Callable[[Desk], AnyScreen]] = {
    "a screen": DayScreen,
    "a form": ReceiveScreen,
    "a list over the board": UndoScreen,
    "a question with a field": lambda desk: NoteDialog(desk, box(desk.shop, COUNTER).knives[0]),
}


@pytest.mark.parametrize("make", OPENED.values(), ids=OPENED)
async def test_ctrl_q_leaves_from_anywhere(two_boxes: Shop, make: Callable[[Desk], AnyScreen]) -> None:
    """Ctrl+Q ends the board, whatever lies over it and wherever the cursor is."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("ctrl+q")

        assert not app.is_running


@pytest.mark.parametrize("make", OPENED.values(), ids=OPENED)
async def test_ctrl_c_says_what_leaves(two_boxes: Shop, make: Callable[[Desk], AnyScreen]) -> None:
    """Ctrl+C ends nothing and says, in our words, which key does."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("ctrl+c")

        await until(pilot, lambda: "Ctrl+Q leaves the board" in dump(app))
        assert app.is_running


async def test_what_comes_while_the_board_closes_is_let_go(two_boxes: Shop) -> None:
    """A look for other windows and a key that come when no screen stands any more make no failure of a quit."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: DayScreen(desk))
    async with app.run_test(size=SMALL):
        pass

    app.look_around()
    await app.on_event(Key("plus", "+"))

    assert app.failure is None
