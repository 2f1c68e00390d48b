"""Six thousand digits pasted where a number belongs: a sentence, and everything typed stays."""

from collections.abc import Callable

import pytest

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field
from queueboard.board.forms.form import Form
from queueboard.board.screens import dialogs
from queueboard.board.screens.dialogs.correct import CorrectBoxDialog, CorrectKnifeDialog
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.shop.opening import Shop
from tests.board.answering import COUNTER
from tests.board.dump import dump
from tests.board.host import LARGE, AnyScreen, Host
from tests.shop.place import NOW, box

DIGITS = "9" * 6000

FORMS: dict[str, Callable[[Desk], AnyScreen]] = {
    "receiving": ReceiveScreen,
    "a price": lambda desk: dialogs.PriceDialog(desk, box(desk.shop, COUNTER).knives[0]),
    "a payment": lambda desk: dialogs.PaymentDialog(desk, box(desk.shop, COUNTER).box.id),
    "a promise": lambda desk: dialogs.PromiseDialog(desk, box(desk.shop, COUNTER).box.id),
    "a knife's line": lambda desk: CorrectKnifeDialog(desk, box(desk.shop, COUNTER).knives[0]),
    "a box": lambda desk: CorrectBoxDialog(desk, box(desk.shop, COUNTER).box),
    "a knife added": lambda desk: dialogs.AddKnifeDialog(desk, box(desk.shop, COUNTER).box.id),
    "a label": lambda desk: dialogs.LabelDialog(desk, box(desk.shop, COUNTER).box.id),
}


@pytest.mark.parametrize("make", FORMS.values(), ids=FORMS)
async def test_a_number_without_end_is_a_sentence(two_boxes: Shop, make: Callable[[Desk], AnyScreen]) -> None:
    """In whatever field of a form it is pasted, the form stays, says why, and keeps it."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=LARGE) as pilot:
        form = app.screen
        assert isinstance(form, Form)
        for field in [field for field in form.query(Field).results(Field) if field.region]:
            was = field.value
            field.value = DIGITS
            await pilot.pause()
            await field.action_submit()
            await pilot.pause()
            form.action_go()
            await pilot.pause()

            assert app.screen is form, "the form is gone"
            assert any(sign in dump(app) for sign in ("! ", "? "))
            assert field.value == DIGITS
            field.value = was
