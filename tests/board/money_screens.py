"""Screens and questions about charges, counts, found knives and accounts, over a shop with something to ask about."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs import account, charges, count, found, rehome
from queueboard.board.screens.found import FoundScreen
from queueboard.board.screens.owing import OwingScreen
from queueboard.priced_words import ChargeSort
from queueboard.shop.charging import add_charge, set_limit
from queueboard.shop.owing import owing
from queueboard.values.new import NewCharge
from queueboard.words import Settling
from tests.board.host import AnyScreen
from tests.shop.place import box, by
from tests.shop.undo_charging import gone_as
from tests.shop.undo_counting import found_one, one_too_many

COUNTER = 101


def _charged(desk: Desk) -> int:
    """The id of a box with something on its bill, above the limit that was agreed."""
    add_charge(desk.shop, by(), box(desk.shop, COUNTER).box, NewCharge(sort=ChargeSort.OTHER, cents=9000))
    set_limit(desk.shop, by(), box(desk.shop, COUNTER).box, 2000)
    desk.look()
    return box(desk.shop, COUNTER).box.id


def _above(desk: Desk) -> AnyScreen:
    _charged(desk)
    return charges.AboveLimitDialog(desk, box(desk.shop, COUNTER).box)


def _count(desk: Desk) -> AnyScreen:
    made = one_too_many(desk.shop)
    desk.look()
    return count.CountDialog(desk, made.box.id)


def _settle(desk: Desk) -> AnyScreen:
    one = found_one(desk.shop)
    desk.look()
    return found.SettleFoundDialog(desk, one)


def _account(desk: Desk) -> AnyScreen:
    gone_as(desk.shop, Settling.ON_ACCOUNT, name="Bo Oake")
    return account.AccountDialog(desk, owing(desk.shop, desk.picture.now)[0].boxes[0])


MONEY_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    FoundScreen: FoundScreen,
    OwingScreen: OwingScreen,
    account.AccountDialog: _account,
    charges.AboveLimitDialog: _above,
    charges.ChargeDialog: lambda desk: charges.ChargeDialog(desk, box(desk.shop, COUNTER).box),
    charges.LimitDialog: lambda desk: charges.LimitDialog(desk, box(desk.shop, COUNTER).box.id),
    charges.StrikeChargeDialog: lambda desk: charges.StrikeChargeDialog(desk, _charged(desk)),
    count.CountDialog: _count,
    found.NoteFoundDialog: found.NoteFoundDialog,
    found.SettleFoundDialog: _settle,
    rehome.MoveToBoxDialog: lambda desk: rehome.MoveToBoxDialog(desk, box(desk.shop, COUNTER).knives[0]),
}
