"""Answering dialogs over a real shop file: what every test of them needs."""

from collections.abc import Callable

from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog
from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW

PARCEL, COUNTER = 100, 101
"""The numbers of the two boxes in the shop of two_boxes."""


async def answered(shop: Shop, make: Callable[[Desk], Dialog], *answers: str) -> bool:
    """Open a dialog, type the answers; True when it was left with something done."""
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *answers)
        assert app.left, f"the dialog is still open:\n{dump(app)}"
    return app.answer is True


async def refused(shop: Shop, make: Callable[[Desk], Dialog], *answers: str) -> str:
    """Open a dialog, type the answers; the words on the screen with which it stays open."""
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *answers)
        assert not app.left, "the dialog was left"
        return " ".join(dump(app).replace("│", " ").split())
