"""Keys that come in one piece are heard one after the other, each where the one before it has led."""

import pytest
from textual.events import Key
from textual.pilot import Pilot

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field
from queueboard.board.screens.dialogs import PaymentDialog
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.widgets.tag_entry import TagEntry
from queueboard.shop.opening import Shop
from tests.board.answering import COUNTER
from tests.board.host import LARGE, SMALL, Host, until
from tests.shop.place import NOW, box

NAMES = {"-": "minus", "+": "plus", "*": "asterisk", "\r": "enter", " ": "space", ".": "full_stop"}


def type_at_once(app: QueueboardApp, text: str) -> None:
    """Post every key of a text before any of them is heard."""
    for sign in text:
        app.post_message(Key(NAMES.get(sign, sign), sign))


async def heard(pilot: Pilot[int]) -> None:
    """Wait until every key has been heard."""
    app = pilot.app
    assert isinstance(app, QueueboardApp)
    await until(pilot, lambda: app.key_turns.at_rest)


async def test_a_form_opened_and_filled_in_one_piece(two_boxes: Shop) -> None:
    """The key that opens the form, and all its answers with their Enters, land in their own fields."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()

        type_at_once(app, "rZed Quill\r555 0199\r")
        await heard(pilot)

        assert isinstance(app.screen, ReceiveScreen)
        assert app.screen.picker.new_name == "Zed Quill"
        assert app.screen.picker.phone.value == "555 0199"
        assert app.focused is app.screen.picker.town


async def test_a_payment_typed_in_one_piece(two_boxes: Shop) -> None:
    """The sum and the way it was paid do not run together."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: PaymentDialog(desk, box(two_boxes, COUNTER).box.id))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()

        type_at_once(app, "10\r2\r")
        await heard(pilot)

        assert box(two_boxes, COUNTER).paid_cents == 1000


@pytest.mark.parametrize(("opens", "typed"), [("n", "hello there"), ("r", "Zed Quill")])
async def test_what_is_typed_while_a_form_opens_goes_into_it(two_boxes: Shop, opens: str, typed: str) -> None:
    """No letter is lost, and none acts on the screen below, while the form is put together."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()

        type_at_once(app, opens + typed)
        await heard(pilot)

        assert isinstance(app.focused, Field)
        assert app.focused.value == typed
        assert len(app.screen_stack) == 2


async def test_keys_behind_a_form_that_has_left_go_to_the_board(two_boxes: Shop) -> None:
    """What is typed behind the last answer is for the screen that lies below."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()

        type_at_once(app, "nhello\r417")
        await heard(pilot)

        assert len(app.screen_stack) == 1
        assert app.screen.query_one(TagEntry).typed == "417"


async def test_a_part_that_goes_away_holds_no_key_up(two_boxes: Shop) -> None:
    """A cursor that is taken from the screen in the middle of a key leaves the keys behind it alive."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        type_at_once(app, "n")
        await until(pilot, lambda: isinstance(app.focused, Field))
        assert app.focused is not None

        type_at_once(app, "xyz")
        await app.focused.remove()
        app.post_message(Key("escape", None))
        type_at_once(app, "417")
        await heard(pilot)

        assert app.screen.query_one(TagEntry).typed == "417"
