"""Screens and questions about the shelf, messages, gone boxes and call-backs, over a shop that has them."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs import call_back, shelf
from queueboard.board.screens.gone import GoneScreen
from queueboard.board.screens.message import MessageScreen
from queueboard.board.screens.shelf import ShelfScreen
from queueboard.shelf_words import MessageSort
from queueboard.shop.moving import move_knives
from queueboard.shop.receiving import receive_box
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy
from tests.board.host import AnyScreen
from tests.shop.place import box, by, chef
from tests.shop.undo_shelf import gone

COUNTER = 101


def _ready(desk: Desk) -> int:
    """The id of a box that is ready and not fetched."""
    move_knives(desk.shop, by(), box(desk.shop, COUNTER).knives, Column.READY)
    desk.look()
    return box(desk.shop, COUNTER).box.id


def _shelf(desk: Desk) -> AnyScreen:
    _ready(desk)
    return ShelfScreen(desk)


def _link(desk: Desk) -> AnyScreen:
    old = gone(desk.shop)
    again = NewBox(
        customer_id=old.customer.id,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=1,
        knives=(chef(mark="nick 0"),),
    )
    number = receive_box(desk.shop, by(), again)
    desk.look()
    return call_back.LinkCallBackDialog(desk, box(desk.shop, number).box.id)


SHELF_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    ShelfScreen: _shelf,
    MessageScreen: lambda desk: MessageScreen(desk, _ready(desk)),
    GoneScreen: lambda desk: GoneScreen(desk, gone(desk.shop)),
    shelf.PlaceDialog: lambda desk: shelf.PlaceDialog(desk, box(desk.shop, COUNTER).box.id),
    shelf.NoticeDialog: lambda desk: shelf.NoticeDialog(
        desk, box(desk.shop, COUNTER).box.id, COUNTER, MessageSort.READY, "It is ready."
    ),
    call_back.TakeBackDialog: lambda desk: call_back.TakeBackDialog(desk, gone(desk.shop)),
    call_back.LinkCallBackDialog: _link,
}
