"""Charges, limits, deposits and money given back over a real shop file: stored, or a sentence and nothing lost."""

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.board.screens.box import BoxScreen
from queueboard.errors import RuleError
from queueboard.priced_words import ChargeSort, Finding, MoneySort
from queueboard.seedfiles import seed_text
from queueboard.shop.charging import add_charge, set_limit
from queueboard.shop.money import take_payment
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import receive_box
from queueboard.values.new import NewBox, NewCharge, NewCustomer, NewKnife, NewPayment
from queueboard.words import CameBy, Edge, GoesBy, PayWay, WaitingFor
from tests.board.answering import COUNTER, answered, refused
from tests.board.dump import assert_screen
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by


async def test_a_chip_is_put_on_the_bill(two_boxes: Shop) -> None:
    """Enter takes chips, an amount and what it is for stand on the bill of the knife's box."""
    knife = box(two_boxes, COUNTER).knives[0]

    assert await answered(two_boxes, lambda desk: dialogs.ChargeDialog(desk, knife), "<enter>", "6.00", "2 mm deep")

    charge = box(two_boxes, COUNTER).charges[0]
    assert (charge.knife_id, charge.sort, charge.cents, charge.text) == (knife.id, ChargeSort.CHIPS, 600, "2 mm deep")
    assert box(two_boxes, COUNTER).owed_cents == 2400


async def test_the_lists_price_is_offered(two_boxes: Shop) -> None:
    """A digit chooses rust, whose price stands there; two Enters put it on the bill."""
    knife = box(two_boxes, COUNTER).knives[0]

    assert await answered(two_boxes, lambda desk: dialogs.ChargeDialog(desk, knife), "<3>", "<enter>", "<enter>")

    assert [(one.sort, one.cents) for one in box(two_boxes, COUNTER).charges] == [(ChargeSort.RUST, 400)]


async def test_a_discount_in_percent(two_boxes: Shop) -> None:
    """Ten per cent come off the work; a second discount takes the place of the first."""
    whole = box(two_boxes, COUNTER).box
    assert await answered(two_boxes, lambda desk: dialogs.ChargeDialog(desk, whole), "<1>", "10 %", "regular")
    assert box(two_boxes, COUNTER).price_cents == 1620

    now = box(two_boxes, COUNTER).box
    assert await answered(two_boxes, lambda desk: dialogs.ChargeDialog(desk, now), "<1>", "5,00", "late")
    assert box(two_boxes, COUNTER).price_cents == 1300


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("-3", "“-3” is no amount"),
        ("1e9", "“1e9” is no amount"),
        ("1000000", "1000000 is more than 99999.99"),
        ("twelve", "“twelve” is no amount"),
        ("x%", "“x%” is no percentage"),
    ],
)
async def test_what_is_no_amount_stays_to_be_mended(two_boxes: Shop, typed: str, says: str) -> None:
    """A charge of -3, of a billion or in letters gets a sentence, and what was typed stays."""
    knife = box(two_boxes, COUNTER).knives[0]

    screen = await refused(two_boxes, lambda desk: dialogs.ChargeDialog(desk, knife), "<1>", typed)

    assert says in screen
    assert f"how much, USD {typed}" in screen
    assert not box(two_boxes, COUNTER).charges


async def test_a_percentage_on_a_chip_is_asked_back(two_boxes: Shop) -> None:
    """Only a rush and a discount are shares; of a chip that is said, and nothing is stored."""
    knife = box(two_boxes, COUNTER).knives[0]

    screen = await refused(two_boxes, lambda desk: dialogs.ChargeDialog(desk, knife), "<1>", "10 %", "x")

    assert "Only a rush or a discount is in percent" in screen
    assert not box(two_boxes, COUNTER).charges


async def test_a_charge_is_taken_off_again(two_boxes: Shop) -> None:
    """The charges stand as numbered lines; a digit takes its line off. Without any it says so."""
    knife, whole = box(two_boxes, COUNTER).knives[0], box(two_boxes, COUNTER).box
    assert await answered(two_boxes, lambda desk: dialogs.ChargeDialog(desk, knife), "<1>", "6", "")

    assert await answered(two_boxes, lambda desk: dialogs.StrikeChargeDialog(desk, whole.id), "<1>")

    assert not box(two_boxes, COUNTER).charges
    with pytest.raises(RuleError, match="Nothing is charged beside"):
        dialogs.StrikeChargeDialog(Desk(two_boxes, "MB", lambda: NOW), whole.id)


async def test_above_the_limit_the_customer_is_called(two_boxes: Shop) -> None:
    """A charge that takes a box above what was agreed offers to let it wait for the yes to the estimate."""
    set_limit(two_boxes, by(), box(two_boxes, COUNTER).box, 2000)
    knife = box(two_boxes, COUNTER).knives[0]
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.ChargeDialog(desk, knife))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "<1>", "6.00", "2 mm")
        assert_screen(app, "dialog-above-limit")
        await pilot.press("enter")
        assert app.left

    assert box(two_boxes, COUNTER).box.waiting_for is WaitingFor.ESTIMATE
    assert box(two_boxes, COUNTER).above_limit


async def test_a_limit_is_set_and_taken_away(two_boxes: Shop) -> None:
    """An amount sets the most that was agreed, an empty line takes it away."""
    box_id = box(two_boxes, COUNTER).box.id
    assert await answered(two_boxes, lambda desk: dialogs.LimitDialog(desk, box_id), "60,00")
    assert box(two_boxes, COUNTER).box.not_above_cents == 6000

    assert await answered(two_boxes, lambda desk: dialogs.LimitDialog(desk, box_id), "<backspace>", "<enter>")
    assert box(two_boxes, COUNTER).box.not_above_cents is None


async def test_a_deposit_and_money_back(two_boxes: Shop) -> None:
    """Shift+Tab reaches what the money is: a deposit counts as paid, money back comes off it."""
    box_id = box(two_boxes, COUNTER).box.id

    deposit = ("<shift+tab>", "<2>", "10.00", "<1>")
    assert await answered(two_boxes, lambda desk: dialogs.PaymentDialog(desk, box_id), *deposit)
    back = ("<shift+tab>", "<3>", "4.00", "<2>")
    assert await answered(two_boxes, lambda desk: dialogs.PaymentDialog(desk, box_id), *back)

    now = box(two_boxes, COUNTER)
    assert [(one.sort, one.cents, one.way) for one in now.payments] == [
        (MoneySort.DEPOSIT, 1000, PayWay.CASH),
        (MoneySort.REFUND, 400, PayWay.CARD),
    ]
    assert (now.paid_cents, now.owed_cents) == (600, 1200)


async def test_no_more_is_given_back_than_was_paid(two_boxes: Shop) -> None:
    """Giving back more than was paid is refused, and what was typed stays."""
    box_id = box(two_boxes, COUNTER).box.id

    back = ("<shift+tab>", "<3>", "4.00", "<1>")
    screen = await refused(two_boxes, lambda desk: dialogs.PaymentDialog(desk, box_id), *back)

    assert "0.00 was paid for box 101; no more than that can be given back" in screen
    assert "how much, USD 4.00" in screen


async def test_the_charge_dialog_reads_as_kept(two_boxes: Shop) -> None:
    """What can be put on the bill of a box stands line by line."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.ChargeDialog(desk, box(two_boxes, COUNTER).box))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down", "down")
        assert_screen(app, "dialog-charge")


async def test_a_box_with_all_its_money_fits_the_small_screen(shop: Shop) -> None:
    """Add-ons, discount, shipping, tax, what is paid and the limit stand on the box's own screen in 80 by 24."""
    text = seed_text("settings.toml").replace("# [prices.tax]\n# knives = 7.25", "[prices.tax]\nknives = 7.25")
    take_settings(shop, by(), text)
    chipped = NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200, chip_um=2000, findings=(Finding.FRECKLES,))
    new = NewBox(
        new_customer=NewCustomer(name="Ms Verrin"),
        came_by=CameBy.MAIL,
        goes_by=GoesBy.PARCEL,
        counted=2,
        knives=(chipped, NewKnife(kind="bread", edge=Edge.SERRATED)),
        number=214,
    )
    receive_box(shop, by(), new)
    add_charge(shop, by(), box(shop, 214).box, NewCharge(sort=ChargeSort.DISCOUNT, ppm=100_000, text="regular"))
    deposit = NewPayment(cents=1000, way=PayWay.CARD, paid_before_cents=0, sort=MoneySort.DEPOSIT)
    take_payment(shop, by(), box(shop, 214).box, deposit)
    set_limit(shop, by(), box(shop, 214).box, 4000)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: BoxScreen(desk, box(shop, 214).box.id))
    async with app.run_test(size=SMALL):
        assert_screen(app, "box-charged-80")
