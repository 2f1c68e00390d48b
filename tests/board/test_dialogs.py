"""The small dialogs over a real shop file: what is typed is stored, or a sentence comes and what was typed stays."""

from datetime import date, time

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.errors import RuleError
from queueboard.priced_words import Finding
from queueboard.seedfiles import seed_text
from queueboard.shop.moving import move_knives
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.values.knife import Knife
from queueboard.values.new import NewBox
from queueboard.words import (
    CameBy,
    Column,
    DeclineReason,
    GoesBy,
    LabelState,
    Packing,
    PayWay,
    PromiseKind,
    WaitingFor,
)
from tests.board.answering import COUNTER, answered, refused
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by


def first(shop: Shop, number: int = COUNTER) -> Knife:
    """The first knife of a box."""
    return box(shop, number).knives[0]


async def test_a_knife_waits_and_goes_on(two_boxes: Shop) -> None:
    """A digit puts a knife on waiting at once; for one that waits, Enter takes the offer that it goes on."""
    assert await answered(two_boxes, lambda desk: dialogs.WaitingDialog(desk, first(two_boxes)), "<4>")
    assert first(two_boxes).waiting_for is WaitingFor.BELTS

    assert await answered(two_boxes, lambda desk: dialogs.WaitingDialog(desk, first(two_boxes)), "<enter>")
    assert first(two_boxes).waiting_for is None


async def test_a_whole_box_waits(two_boxes: Shop) -> None:
    """A box can wait as a whole."""
    assert await answered(two_boxes, lambda desk: dialogs.WaitingDialog(desk, box(two_boxes, COUNTER).box), "<3>")
    assert box(two_boxes, COUNTER).box.waiting_for is WaitingFor.MONEY


@pytest.mark.parametrize("key", ["minus", "q", "escape"])
async def test_leaving_stores_nothing(two_boxes: Shop, key: str) -> None:
    """Minus, q and escape leave a dialog without doing anything."""
    assert not await answered(two_boxes, lambda desk: dialogs.WaitingDialog(desk, first(two_boxes)), f"<{key}>")
    assert first(two_boxes).waiting_for is None


async def test_a_knife_is_declined_and_taken_after_all(two_boxes: Shop) -> None:
    """A reason and a note decline a knife; the same dialog takes it back."""
    assert await answered(
        two_boxes,
        lambda desk: dialogs.DeclineDialog(desk, first(two_boxes)),
        *("<1>", "9 mm from the heel", "Ms Verrin", "<+>", "<enter>"),
    )
    declined = first(two_boxes)
    assert (declined.declined, declined.findings) == (DeclineReason.CRACKED, (Finding.PHOTO,))
    assert declined.note == "9 mm from the heel; told Ms Verrin 2026-11-09 09:00, MB"

    assert await answered(two_boxes, lambda desk: dialogs.DeclineDialog(desk, first(two_boxes)), "<plus>")
    assert first(two_boxes).declined is None


async def test_notes(two_boxes: Shop) -> None:
    """A knife and a box each take a note; markup in it is text."""
    assert await answered(two_boxes, lambda desk: dialogs.NoteDialog(desk, first(two_boxes)), "[red]x[/]")
    assert await answered(two_boxes, lambda desk: dialogs.NoteDialog(desk, box(two_boxes, COUNTER).box), "[/]")
    assert (first(two_boxes).note, box(two_boxes, COUNTER).box.note) == ("[red]x[/]", "[/]")


async def test_a_price_by_hand(two_boxes: Shop) -> None:
    """A price is typed with a point or a comma."""
    assert await answered(two_boxes, lambda desk: dialogs.PriceDialog(desk, first(two_boxes)), "12,50")
    assert first(two_boxes).price_cents == 1250


async def test_a_price_that_is_none_stays_to_be_mended(two_boxes: Shop) -> None:
    """What is no amount is said, and stands in the field as it was typed."""
    screen = await refused(two_boxes, lambda desk: dialogs.PriceDialog(desk, first(two_boxes)), "a lot")

    assert "“a lot” is no amount" in screen
    assert "price in USD a lot" in screen


async def test_what_is_owed_is_offered_as_payment(two_boxes: Shop) -> None:
    """Enter takes the whole debt, a digit says how it was paid."""
    owed = box(two_boxes, COUNTER).owed_cents
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.PaymentDialog(desk, box(two_boxes, COUNTER).box.id))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter", "2")
        assert app.left

    payment = box(two_boxes, COUNTER).payments[-1]
    assert (payment.cents, payment.way) == (owed, PayWay.CARD)


async def test_money_is_taken_in_the_currency_it_was_asked_in(two_boxes: Shop) -> None:
    """While the question stands, other settings are taken in but for another currency; the payment is what it said."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.PaymentDialog(desk, box(two_boxes, COUNTER).box.id))
    async with app.run_test(size=SMALL) as pilot:
        with pytest.raises(RuleError, match="The currency stays USD"):
            take_settings(two_boxes, by("K"), seed_text("settings.toml").replace('"USD"', '"EUR"'))
        take_settings(two_boxes, by("K"), seed_text("settings.toml").replace("price = 9.00", "price = 19.00"))
        await fill(pilot, "7.50", "<1>")
        assert app.left, dump(app)

    assert [payment.cents for payment in box(two_boxes, COUNTER).payments] == [750]
    assert desk.look().settings.currency == "USD"


async def test_a_second_promise_needs_who_and_why(two_boxes: Shop) -> None:
    """A later date is stored beside the first, with who was told and why; without why it is asked for."""
    box_id = box(two_boxes, COUNTER).box.id
    screen = await refused(
        two_boxes,
        lambda desk: dialogs.PromiseDialog(desk, box_id),
        "<up>",
        "<2>",
        "+2",
        "16:00",
        "Ms V",
        "",
    )
    assert "A second date needs who was told and why" in screen

    answers = ("<shift+tab>", "<2>", "+2", "16:00", "Ms V", "belts came late")
    assert await answered(two_boxes, lambda desk: dialogs.PromiseDialog(desk, box_id), *answers)
    told = box(two_boxes, COUNTER).promises
    assert len(told) == 2
    assert (told[1].kind, told[1].day, told[1].at) == (PromiseKind.BY_TIME, date(2026, 11, 11), time(16))
    assert (told[1].told_to, told[1].reason) == ("Ms V", "belts came late")


async def test_a_label_is_bought_with_its_expiry(two_boxes: Shop) -> None:
    """A label that stood to be bought is marked bought with what is printed on it."""
    customer = add_customer(two_boxes, by(), name="Bo Tallis")
    new = NewBox(customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, knives=(), opened=False)
    number = receive_box(two_boxes, by(), new)
    assert box(two_boxes, number).label is not None

    answers = ("<enter>", "+20", "the blue van", "Bo Tallis", "", "2 kg", "150", "12.50", "", "")
    assert await answered(two_boxes, lambda desk: dialogs.LabelDialog(desk, box(two_boxes, number).box.id), *answers)

    label = box(two_boxes, number).label
    assert label is not None
    assert (label.state, label.expires_on, label.carrier) == (LabelState.HERE, date(2026, 11, 29), "the blue van")
    assert (label.limit_g, label.value_cents, label.price_cents) == (2000, 15000, 1250)


async def test_packing_and_flags(two_boxes: Shop) -> None:
    """A ready box is packed a step at a time; flags are ticked with plus."""
    move_knives(two_boxes, by(), box(two_boxes, COUNTER).knives, Column.READY)
    box_id = box(two_boxes, COUNTER).box.id

    assert await answered(two_boxes, lambda desk: dialogs.PackingDialog(desk, box_id), "<4>")
    assert await answered(
        two_boxes,
        lambda desk: dialogs.FlagsDialog(desk, box_id),
        *("<plus>", "<enter>", "<enter>", "<plus>", "<enter>", "<plus>", "<enter>"),
    )

    own = box(two_boxes, COUNTER).box
    assert own.packing is Packing.ON_SHELF
    assert (own.rush, own.this_next, own.never_slip, own.complaint) == (True, False, True, True)


async def test_a_box_with_nothing_ready_is_not_packed(two_boxes: Shop) -> None:
    """The rule's own sentence shows in the dialog, which stays."""
    screen = await refused(two_boxes, lambda desk: dialogs.PackingDialog(desk, box(two_boxes, COUNTER).box.id), "<1>")

    assert "Box 101 cannot be packed: 0 of its 2 knives are ready" in screen


async def test_a_knife_and_a_thing_are_added_later(two_boxes: Shop) -> None:
    """A walk-in's knife gets the next tag of his box; a sheath is added to what must go back."""
    box_id = box(two_boxes, COUNTER).box.id

    assert await answered(two_boxes, lambda desk: dialogs.AddKnifeDialog(desk, box_id), "bread 9 ! as a present")
    assert await answered(two_boxes, lambda desk: dialogs.ThingDialog(desk, box_id), "sheath")

    now = box(two_boxes, COUNTER)
    assert (now.knives[-1].tag, now.knives[-1].kind, now.knives[-1].wish) == ("101-3", "bread", "as a present")
    assert [thing.name for thing in now.things] == ["sheath"]


async def test_an_unopened_box_is_opened(two_boxes: Shop) -> None:
    """The count comes first, then lines that must agree with it; what a quit left half-typed goes on where it was."""
    customer = add_customer(two_boxes, by(), name="Bo Tallis")
    new = NewBox(customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, knives=(), opened=False)
    number = receive_box(two_boxes, by(), new)
    box_id = box(two_boxes, number).box.id

    answers = ("3", "", "2 chef 8", "", "", "<enter>")
    screen = await refused(two_boxes, lambda desk: dialogs.OpenBoxDialog(desk, box_id), *answers)
    assert "You counted 3 and typed 2 knives" in screen

    answers = ("3", "2", "bread", "", "roll", "<enter>")
    assert await answered(two_boxes, lambda desk: dialogs.OpenBoxDialog(desk, box_id), *answers)
    now = box(two_boxes, number)
    assert (now.box.opened, now.box.counted, now.box.waiting_for) == (True, 3, WaitingFor.COUNT)
    assert [knife.kind for knife in now.knives] == ["chef", "chef", "bread"]


async def test_every_dialog_fits_a_small_screen(two_boxes: Shop) -> None:
    """The dialogs as a person sees them at 80x24."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    knife, number = first(two_boxes), box(two_boxes, COUNTER).box.id
    for name, make in {
        "waiting": lambda: dialogs.WaitingDialog(desk, knife),
        "decline": lambda: dialogs.DeclineDialog(desk, knife),
        "payment": lambda: dialogs.PaymentDialog(desk, number),
        "promise": lambda: dialogs.PromiseDialog(desk, number),
        "packing": lambda: dialogs.PackingDialog(desk, number),
        "correct": lambda: dialogs.CorrectDialog(desk, knife),
        "open": lambda: dialogs.OpenBoxDialog(desk, number),
    }.items():
        app = Host(desk, make)
        async with app.run_test(size=SMALL) as pilot:
            await pilot.pause()
            assert_screen(app, f"dialog-{name}")
