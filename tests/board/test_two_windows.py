"""Two windows on one file: what the other has stored meanwhile is never written over unseen."""

from collections.abc import Callable

import pytest
from textual.widgets import Input

from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog
from queueboard.board.screens import dialogs
from queueboard.board.screens.customers import GiveBoxDialog
from queueboard.board.screens.dialogs.correct import CorrectBoxDialog, CorrectCustomerDialog, CorrectKnifeDialog
from queueboard.shop.correcting import correct_box, correct_customer, correct_knife, give_box_to
from queueboard.shop.money import set_price
from queueboard.shop.moving import move_knives, pack_box
from queueboard.shop.noting import decline_knife, note_box, note_knife
from queueboard.shop.opening import Shop
from queueboard.shop.promising import set_flags
from queueboard.shop.waiting import box_waits, knives_wait
from queueboard.words import Column, DeclineReason, Packing, WaitingFor
from tests.board.answering import COUNTER, PARCEL
from tests.board.dump import dump
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, state

Other = Callable[[Shop], None]
"""What the other window does meanwhile."""


def meanwhile(change: Callable[[Shop], object]) -> Other:
    """A change as something that answers nothing."""

    def done(shop: Shop) -> None:
        change(shop)

    return done


K = "K"
CASES: dict[str, tuple[Callable[[Desk], Dialog], Other, tuple[str, ...]]] = {
    "a knife's note": (
        lambda desk: dialogs.NoteDialog(desk, box(desk.shop, COUNTER).knives[0]),
        meanwhile(lambda shop: note_knife(shop, by(K), box(shop, COUNTER).knives[0], "theirs")),
        ("mine",),
    ),
    "a box's note": (
        lambda desk: dialogs.NoteDialog(desk, box(desk.shop, COUNTER).box),
        meanwhile(lambda shop: note_box(shop, by(K), box(shop, COUNTER).box, "theirs")),
        ("mine",),
    ),
    "a price": (
        lambda desk: dialogs.PriceDialog(desk, box(desk.shop, COUNTER).knives[0]),
        meanwhile(lambda shop: set_price(shop, by(K), box(shop, COUNTER).knives[0], 700)),
        ("9",),
    ),
    "a knife's line": (
        lambda desk: CorrectKnifeDialog(desk, box(desk.shop, COUNTER).knives[0]),
        meanwhile(lambda shop: correct_knife(shop, by(K), box(shop, COUNTER).knives[0], mark="theirs")),
        ("chef", "", "plain", "dull", "", "mine", ""),
    ),
    "a box": (
        lambda desk: CorrectBoxDialog(desk, box(desk.shop, COUNTER).box),
        meanwhile(lambda shop: correct_box(shop, by(K), box(shop, COUNTER).box, carrier_days=7)),
        ("101", "2", "", "9", "<enter>", "<enter>"),
    ),
    "a customer": (
        lambda desk: CorrectCustomerDialog(desk, box(desk.shop, COUNTER).customer),
        meanwhile(lambda shop: correct_customer(shop, by(K), box(shop, COUNTER).customer, town="theirs")),
        ("Ms Verrin", "555 0199", "mine", "", ""),
    ),
    "whose it is": (
        lambda desk: GiveBoxDialog(desk, box(desk.shop, COUNTER).box.id),
        meanwhile(lambda shop: give_box_to(shop, by(K), box(shop, COUNTER).box, box(shop, PARCEL).customer)),
        ("verrin",),
    ),
    "flags": (
        lambda desk: dialogs.FlagsDialog(desk, box(desk.shop, COUNTER).box.id),
        meanwhile(
            lambda shop: set_flags(shop, by(K), box(shop, COUNTER).box, rush=True, this_next=False, never_slip=False)
        ),
        ("<enter>", "<enter>", "<plus>", "<enter>"),
    ),
    "waiting": (
        lambda desk: dialogs.WaitingDialog(desk, box(desk.shop, COUNTER).knives[0]),
        meanwhile(lambda shop: knives_wait(shop, by(K), (box(shop, COUNTER).knives[0],), WaitingFor.BELTS)),
        ("<3>",),
    ),
    "a box that waits": (
        lambda desk: dialogs.WaitingDialog(desk, box(desk.shop, COUNTER).box),
        meanwhile(lambda shop: box_waits(shop, by(K), box(shop, COUNTER).box, WaitingFor.BELTS)),
        ("<3>",),
    ),
    "declining": (
        lambda desk: dialogs.DeclineDialog(desk, box(desk.shop, COUNTER).knives[0]),
        meanwhile(lambda shop: decline_knife(shop, by(K), box(shop, COUNTER).knives[0], DeclineReason.CRACKED)),
        ("<2>", "mine", ""),
    ),
    "packing": (
        lambda desk: dialogs.PackingDialog(desk, box(desk.shop, COUNTER).box.id),
        meanwhile(lambda shop: pack_box(shop, by(K), box(shop, COUNTER).box, Packing.ON_SHELF)),
        ("<1>",),
    ),
}


@pytest.mark.parametrize(("make", "other", "typed"), CASES.values(), ids=CASES)
async def test_the_second_window_is_told(
    two_boxes: Shop, make: Callable[[Desk], Dialog], other: Other, typed: tuple[str, ...]
) -> None:
    """A question answered over what has changed stores nothing, also when Enter is pressed again, and says how on."""
    move_knives(two_boxes, by(), box(two_boxes, COUNTER).knives, Column.READY)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        other(two_boxes)
        stored = state(two_boxes)
        app.look_around()
        await fill(pilot, *typed)
        await pilot.press("enter")

        assert state(two_boxes) == stored
        assert not app.left
        assert "F5 looks again" in dump(app)

        await pilot.press("f5")
        await pilot.pause()
        assert "F5" not in dump(app)
        await pilot.press("escape")
        await pilot.pause()
        assert app.left
        assert app.answer is None


async def test_looking_again_shows_both(two_boxes: Shop) -> None:
    """F5 keeps what was typed and tells what the other window stored; Enter then stores what was typed."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    about = box(two_boxes, COUNTER).box
    app = Host(desk, lambda: dialogs.NoteDialog(desk, about))
    async with app.run_test(size=SMALL) as pilot:
        note_box(two_boxes, by("K"), about, "[b]theirs[/]")
        await fill(pilot, "mine")
        await pilot.press("f5")
        await pilot.pause()

        assert "note is now “[b]theirs[/]”" in dump(app)
        assert "note          mine" in dump(app)

        await pilot.press("enter")
        await pilot.pause()
        assert app.answer is True
    assert box(two_boxes, COUNTER).box.note == "mine"


async def test_a_letter_goes_on_behind_the_old_note(two_boxes: Shop) -> None:
    """Typing into a note adds to it; it is not all marked to be typed over."""
    note_box(two_boxes, by(), box(two_boxes, COUNTER).box, "on the left shelf")
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.NoteDialog(desk, box(two_boxes, COUNTER).box))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("!")

        assert app.screen.query_one(Input).value == "on the left shelf!"
