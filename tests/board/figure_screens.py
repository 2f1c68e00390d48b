"""The screens and questions of a day and a month that are over, or nearly."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs import evening as dialogs
from queueboard.board.screens.evening import EveningScreen
from queueboard.board.screens.month import MonthScreen
from queueboard.board.screens.wall import WallScreen
from queueboard.shop.evening_seen import Evening, evening
from tests.board.host import AnyScreen


def _seen(desk: Desk) -> Evening:
    return evening(desk.shop, desk.picture, desk.picture.now.date())


FIGURE_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    EveningScreen: EveningScreen,
    MonthScreen: MonthScreen,
    WallScreen: WallScreen,
    dialogs.TillDialog: lambda desk: dialogs.TillDialog(desk, desk.picture.now.date(), _seen(desk).money[0]),
    dialogs.CloseDayDialog: lambda desk: dialogs.CloseDayDialog(desk, _seen(desk)),
}
