"""Every screen that is opened over the board, and how."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.board.screens.announce import AnnounceScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.box_history import BoxHistoryScreen
from queueboard.board.screens.boxes import BoxesScreen
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.customers import GiveBoxDialog, MergeDialog
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.dialogs.correct import CorrectBoxDialog, CorrectCustomerDialog, CorrectKnifeDialog
from queueboard.board.screens.dialogs.orders import OrdersDialog
from queueboard.board.screens.find import FindScreen
from queueboard.board.screens.first import FirstScreen
from queueboard.board.screens.help import HelpScreen
from queueboard.board.screens.initials import InitialsScreen
from queueboard.board.screens.labels import LabelsScreen
from queueboard.board.screens.late import LateScreen
from queueboard.board.screens.loose import LooseScreen
from queueboard.board.screens.papers import PapersDialog
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.board.screens.run_ask import RunDialog
from queueboard.board.screens.said import SaidScreen
from queueboard.board.screens.summary import SummaryScreen
from queueboard.board.screens.tray import TrayDialog
from queueboard.board.screens.type_back import TypeBackScreen
from queueboard.board.screens.undo import UndoScreen
from queueboard.board.screens.walk_in import WalkInScreen
from queueboard.board.screens.week import WeekScreen
from queueboard.board.trays import trays_by
from queueboard.shop import closing
from queueboard.shop.moving import move_knives
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.values.box import CloseOut
from queueboard.values.gone import GoneBox
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy, Settling
from tests.board.answering import COUNTER, PARCEL
from tests.board.bench_screens import BENCH_SCREENS
from tests.board.figure_screens import FIGURE_SCREENS
from tests.board.host import AnyScreen
from tests.board.market_screens import MARKET_SCREENS
from tests.board.money_screens import MONEY_SCREENS
from tests.board.number_screens import NUMBER_SCREENS
from tests.board.shelf_screens import SHELF_SCREENS
from tests.board.swap_screens import SWAP_SCREENS
from tests.shop.place import box, by
from tests.shop.undo_announcing import announced

Make = Callable[[Desk], AnyScreen]


def _unopened(desk: Desk) -> int:
    """The id of a box that stands unopened."""
    customer = add_customer(desk.shop, by(), name="Bo Tallis")
    new = NewBox(customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, knives=(), opened=False)
    number = receive_box(desk.shop, by(), new)
    desk.look()
    return box(desk.shop, number).box.id


def _announced(desk: Desk) -> int:
    """The id of a box that is only announced."""
    made = announced(desk.shop)
    desk.look()
    return made.box.id


def _gone_but_one(desk: Desk) -> GoneBox:
    """The counter box is closed out without its second knife, which is looked for."""
    own = box(desk.shop, COUNTER)
    move_knives(desk.shop, by(), own.knives, Column.READY)
    closing.begin_close_out(desk.shop, by(), own.box)
    closing.count(desk.shop, by(), _close(desk), 1)
    closing.tick(desk.shop, by(), _close(desk), own.knives[0].id)
    closing.ticks_done(desk.shop, by(), _close(desk))
    closing.why_missing(desk.shop, by(), _close(desk), "not in any tray")
    closing.confirm_names(desk.shop, by(), _close(desk))
    closing.confirm_label(desk.shop, by(), _close(desk), "Ms Verrin")
    closing.settle(desk.shop, by(), _close(desk), Settling.ON_ACCOUNT)
    gone = closing.send_off(desk.shop, by(), _close(desk))
    desk.look()
    return gone


def _close(desk: Desk) -> CloseOut:
    close = box(desk.shop, COUNTER).close_out
    assert close is not None
    return close


def _lost(desk: Desk) -> int:
    """The id of a box of which a knife is looked for."""
    return _gone_but_one(desk).box.id


def _help(desk: Desk) -> AnyScreen:
    about: AnyScreen = DayScreen(desk)
    return HelpScreen(desk, about)


SCREENS: Mapping[type[AnyScreen], Make] = {
    dialogs.AddKnifeDialog: lambda desk: dialogs.AddKnifeDialog(desk, box(desk.shop, COUNTER).box.id),
    dialogs.AnnouncedDialog: lambda desk: dialogs.AnnouncedDialog(desk, _announced(desk)),
    dialogs.CallOffDialog: lambda desk: dialogs.CallOffDialog(desk, _announced(desk)),
    dialogs.CorrectDialog: lambda desk: dialogs.CorrectDialog(desk, box(desk.shop, COUNTER).knives[0]),
    dialogs.DeclineDialog: lambda desk: dialogs.DeclineDialog(desk, box(desk.shop, COUNTER).knives[0]),
    dialogs.ExpectDialog: lambda desk: dialogs.ExpectDialog(desk, _announced(desk)),
    dialogs.FlagsDialog: lambda desk: dialogs.FlagsDialog(desk, box(desk.shop, COUNTER).box.id),
    dialogs.WeighDialog: lambda desk: dialogs.WeighDialog(desk, box(desk.shop, PARCEL).box.id),
    dialogs.LabelDialog: lambda desk: dialogs.LabelDialog(desk, box(desk.shop, PARCEL).box.id),
    dialogs.LostDialog: lambda desk: dialogs.LostDialog(desk, _lost(desk)),
    dialogs.NoteDialog: lambda desk: dialogs.NoteDialog(desk, box(desk.shop, COUNTER).knives[0]),
    OrdersDialog: OrdersDialog,
    dialogs.OpenBoxDialog: lambda desk: dialogs.OpenBoxDialog(desk, _unopened(desk)),
    dialogs.PackingDialog: lambda desk: dialogs.PackingDialog(desk, box(desk.shop, COUNTER).box.id),
    dialogs.PaymentDialog: lambda desk: dialogs.PaymentDialog(desk, box(desk.shop, COUNTER).box.id),
    dialogs.PriceDialog: lambda desk: dialogs.PriceDialog(desk, box(desk.shop, COUNTER).knives[0]),
    dialogs.PromiseDialog: lambda desk: dialogs.PromiseDialog(desk, box(desk.shop, COUNTER).box.id),
    dialogs.StrikeDialog: lambda desk: dialogs.StrikeDialog(desk, box(desk.shop, COUNTER).knives[0]),
    dialogs.ThingDialog: lambda desk: dialogs.ThingDialog(desk, box(desk.shop, COUNTER).box.id),
    dialogs.WaitingDialog: lambda desk: dialogs.WaitingDialog(desk, box(desk.shop, COUNTER).knives[0]),
    CorrectKnifeDialog: lambda desk: CorrectKnifeDialog(desk, box(desk.shop, COUNTER).knives[0]),
    CorrectBoxDialog: lambda desk: CorrectBoxDialog(desk, box(desk.shop, COUNTER).box),
    CorrectCustomerDialog: lambda desk: CorrectCustomerDialog(desk, box(desk.shop, COUNTER).customer),
    GiveBoxDialog: lambda desk: GiveBoxDialog(desk, box(desk.shop, COUNTER).box.id),
    MergeDialog: lambda desk: MergeDialog(desk, box(desk.shop, COUNTER).customer),
    AnnounceScreen: AnnounceScreen,
    BoxScreen: lambda desk: BoxScreen(desk, box(desk.shop, COUNTER).box.id),
    BoxHistoryScreen: lambda desk: BoxHistoryScreen(desk, box(desk.shop, COUNTER).box.id),
    BoxesScreen: BoxesScreen,
    CloseOutScreen: lambda desk: CloseOutScreen(desk, box(desk.shop, COUNTER).box.id),
    DayScreen: DayScreen,
    FindScreen: FindScreen,
    FirstScreen: lambda desk: FirstScreen(desk, "", "", ""),
    HelpScreen: _help,
    InitialsScreen: InitialsScreen,
    LabelsScreen: LabelsScreen,
    LateScreen: LateScreen,
    LooseScreen: LooseScreen,
    PapersDialog: lambda desk: PapersDialog(desk, box(desk.shop, COUNTER).box.id),
    ReceiveScreen: ReceiveScreen,
    ReceivedScreen: lambda desk: ReceivedScreen(desk, COUNTER),
    RunDialog: lambda desk: RunDialog(desk, box(desk.shop, COUNTER).knives, Column.READY),
    SaidScreen: SaidScreen,
    SummaryScreen: lambda desk: SummaryScreen(desk, _gone_but_one(desk)),
    TrayDialog: lambda desk: TrayDialog(desk, trays_by(box(desk.shop, COUNTER), 1)),
    TypeBackScreen: TypeBackScreen,
    UndoScreen: UndoScreen,
    WalkInScreen: WalkInScreen,
    WeekScreen: WeekScreen,
    **BENCH_SCREENS,
    **FIGURE_SCREENS,
    **NUMBER_SCREENS,
    **MONEY_SCREENS,
    **SHELF_SCREENS,
    **SWAP_SCREENS,
    **MARKET_SCREENS,
}
"""Every screen that is opened over the board, and how."""
