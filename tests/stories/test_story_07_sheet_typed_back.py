"""Story 7 goes on: the power stayed away, the day was kept on the day sheet, and typing it back is cut off too."""

import sys
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import receive_box
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewCustomer, NewPromise
from queueboard.words import CameBy, Column, GoesBy, PromiseKind
from tests.shop.place import chef, small_shop
from tests.terminal.pty import Terminal

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals of this kind are not there")

MORNING = datetime.fromisoformat("2026-11-13T09:00:00-05:00")
BOARD = "tests.stories.board_at"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A shop with box 360: four knives of Mr Oake, due today at the counter."""
    shop = small_shop(tmp_path)
    box = NewBox(
        new_customer=NewCustomer(name="Mr Oake"),
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=4,
        knives=tuple(chef(mark=f"nick {place}") for place in range(1, 5)),
        number=360,
        promise=NewPromise(kind=PromiseKind.DAY, day=MORNING.date()),
    )
    receive_box(shop, Actor(initials="MB", now=MORNING - timedelta(days=1)), box)
    close_shop(shop)
    return shop.path


def stored(file: Path) -> BoxPicture:
    """What the shop file holds of 360."""
    shop = open_shop(file)
    try:
        box = look(shop, MORNING).box(360)
    finally:
        close_shop(shop)
    assert box is not None
    return box


def test_typing_a_sheet_back_survives_the_next_power_cut(file: Path) -> None:
    """Killed half-way down the sheet, the board goes on behind the last Enter; no knife and no payment is doubled."""
    first = Terminal(file, program=(BOARD, str(file), MORNING.isoformat()))
    again = None
    try:
        first.shows("Mr Oake")
        first.type("d")
        first.shows("360-1")
        first.type("v")
        first.shows("Written to")
        first.type("B")
        first.shows("5 lines, 5 to go")
        first.type("+\r-\r+*20.00\r")
        first.shows("5 lines, 2 to go")
        first.type("+*16.0")
        first.kill()
        held = stored(file)
        assert [k.column is Column.READY for k in held.knives] == [True, False, True, False]
        assert [payment.cents for payment in held.payments] == [2000]

        again = Terminal(file, program=(BOARD, str(file), MORNING.isoformat()))
        again.shows("Mr Oake")
        again.type("B")
        again.shows("5 lines, 2 to go")
        again.type("360-4\r+\r*16.00\r")
        again.shows("typed back to its end")
        again.kill()
    finally:
        for terminal in filter(None, (first, again)):
            if terminal.process.isalive():
                terminal.kill()
            terminal.process.close(force=True)

    after = stored(file)
    assert [k.column is Column.READY for k in after.knives] == [True, False, True, True]
    assert [payment.cents for payment in after.payments] == [2000, 1600]
