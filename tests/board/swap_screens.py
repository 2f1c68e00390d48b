"""Screens and questions about swap sets, over a shop with a kitchen that has two."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs import swaps
from queueboard.board.screens.swaps import SwapSheetScreen, SwapsScreen
from queueboard.shop.swaps_seen import Kitchen, kitchens
from tests.board.host import AnyScreen
from tests.shop.place import picture
from tests.shop.undo_swapping import one_missing


def seen(desk: Desk) -> Kitchen:
    """A kitchen whose set B came back without its paring knife; it is called like the first customer of the shop."""
    boxes = picture(desk.shop).boxes
    one_missing(desk.shop, boxes[0].customer.name if boxes else "Brant Street kitchen")
    desk.look()
    return kitchens(desk.shop, desk.picture.now)[0]


def _sheet(desk: Desk) -> AnyScreen:
    return SwapSheetScreen(desk, seen(desk).customer.id)


def _list(desk: Desk) -> AnyScreen:
    seen(desk)
    return SwapsScreen(desk)


def _charge(desk: Desk) -> AnyScreen:
    one = seen(desk)
    return swaps.ChargeMissingDialog(desk, one.missing[0], one.customer.id)


SWAP_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    SwapsScreen: _list,
    SwapSheetScreen: _sheet,
    swaps.DefineSetDialog: swaps.DefineSetDialog,
    swaps.RoundDialog: lambda desk: swaps.RoundDialog(desk, seen(desk)),
    swaps.ChargeMissingDialog: _charge,
}
