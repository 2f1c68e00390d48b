"""The list of what is owed, the money taken there, and HOLD asked back once."""

from datetime import timedelta

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.dialogs import ChargeDialog, LimitDialog, PaymentDialog, StrikeChargeDialog
from queueboard.board.screens.owing import OwingScreen
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.errors import TypedError
from queueboard.priced_words import ChargeSort
from queueboard.shop import money, moving
from queueboard.shop.charging import add_charge
from queueboard.shop.opening import Shop
from queueboard.shop.owing import owing
from queueboard.values.new import NewCharge
from queueboard.words import Column, Settling
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, cash, counter, picture
from tests.shop.undo_charging import gone_as

LATER = NOW + timedelta(days=50)


def desk_of(shop: Shop) -> Desk:
    """A desk fifty days later."""
    return Desk(shop, "MB", lambda: LATER)


async def test_the_list_reads_as_kept_and_takes_the_money(shop: Shop) -> None:
    """Each customer stands with sum, age and HOLD, each box below; + takes the money and the line goes."""
    first = gone_as(shop, Settling.ON_ACCOUNT)
    money.pay_account(shop, by(), first, cash(300))
    gone_as(shop, Settling.UNPAID, name="[red]Oake[/]", minutes=10 * 24 * 60, why="no purse")
    desk = desk_of(shop)
    app = Host(desk, lambda: OwingScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        assert_screen(app, "list-owing-80")
        await pilot.press("plus")
        await fill(pilot, "10.00", "<1>")
        assert "5.00 to pay, 13.00 paid" in dump(app)
        await pilot.press("plus")
        await fill(pilot, "<enter>", "<2>")
        assert "[red]Oake[/]" in dump(app)
        assert "Ms Verrin" not in dump(app)

    assert [account.owed_cents for account in owing(shop, LATER)] == [1800]


async def test_an_amount_that_is_none_stays_on_the_account(shop: Shop) -> None:
    """Letters get a sentence; more than is owed is asked back once; nothing is stored until then."""
    gone_as(shop, Settling.ON_ACCOUNT)
    desk = desk_of(shop)
    app = Host(desk, lambda: OwingScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("plus")
        await fill(pilot, "a lot")
        assert "“a lot” is no amount" in dump(app)
        await fill(pilot, "20,00", "<1>")
        assert "18.00 USD is owed, not 20.00 USD" in dump(app)
        assert owing(shop, LATER)
        await fill(pilot, "<1>")

    assert owing(shop, LATER) == ()


async def test_nothing_owed_is_said(shop: Shop) -> None:
    """An empty list says so, and + says where to put the cursor."""
    desk = desk_of(shop)
    app = Host(desk, lambda: OwingScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        assert "Nobody owes for anything that has left." in dump(app)
        await pilot.press("plus")
        assert "Put the cursor on a box" in dump(app)


async def test_leaving_on_account_says_hold_once(shop: Shop) -> None:
    """With an account open too long, on account is asked back once; the same once more goes through."""
    gone = gone_as(shop, Settling.ON_ACCOUNT)
    made = counter(shop, name="Oake")
    shop.database.run("UPDATE box SET customer_id = ? WHERE id = ?", (gone.customer_id, made.box.id))
    moving.move_knives(shop, by(), box(shop, made.box.number).knives, Column.READY)
    desk = desk_of(shop)
    app = Host(desk, lambda: CloseOutScreen(desk, made.box.id))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "2", "<plus>", "her son", "4")
        assert "HOLD: Ms Verrin owes 18.00 USD for 1 box, 50 days; the shop waits 45" in " ".join(dump(app).split())
        assert box(shop, made.box.number).close_out is not None
        await pilot.press("enter")
        await pilot.pause()
        close = box(shop, made.box.number).close_out
        assert close is not None
        assert close.settled is Settling.ON_ACCOUNT


async def test_receiving_says_hold_once(shop: Shop) -> None:
    """A box for a customer on hold is asked back once, with what was typed still there; the same once more takes it."""
    gone_as(shop, Settling.ON_ACCOUNT)
    desk = desk_of(shop)
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", "1", "", "chef 8", "<f2>")
        assert isinstance(app.screen, ReceiveScreen)
        assert "HOLD: Ms Verrin owes 18.00 USD" in " ".join(dump(app).split())
        assert not picture(shop).boxes
        await pilot.press("f2")
        await pilot.pause()
        assert isinstance(app.screen, ReceivedScreen)

    assert [one.customer.name for one in picture(shop).boxes] == ["Ms Verrin"]


async def test_the_keys_of_money_lead_where_they_say(shop: Shop) -> None:
    """O on the board opens the list; on a box's own screen m, M and L open what is charged, struck and agreed."""
    made = counter(shop)
    add_charge(shop, by(), made.box, NewCharge(sort=ChargeSort.OTHER, cents=100))
    desk = desk_of(shop)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("O")
        assert isinstance(app.screen, OwingScreen)
        await pilot.press("escape", "enter")
        assert isinstance(app.screen, BoxScreen)
        for key, dialog in (("m", ChargeDialog), ("M", StrikeChargeDialog), ("L", LimitDialog), ("y", PaymentDialog)):
            await pilot.press(key)
            assert isinstance(app.screen, dialog)
            await pilot.press("escape")
            assert isinstance(app.screen, BoxScreen)


def test_two_questions_are_each_asked_once(shop: Shop) -> None:
    """Where a hold and another doubt meet in one answer, each is asked once and brings up the other no more."""
    screen = OwingScreen(desk_of(shop))
    with pytest.raises(TypedError, match="on hold"):
        screen.insist("hold", "on hold")
    screen.insist("hold", "on hold")
    with pytest.raises(TypedError, match="too much"):
        screen.insist("much", "too much")

    screen.insist("hold", "on hold")
    screen.insist("much", "too much")
