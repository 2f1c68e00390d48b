"""Keys that arrive in one burst on every screen: each acts once, where it belongs, and none of them fails."""

import asyncio
from collections.abc import Callable, Iterator, Mapping

import pytest
from textual.events import Key

from queueboard.board.base import ShopModal, ShopScreen, show_everywhere
from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog, Form
from queueboard.board.screens import dialogs
from queueboard.board.screens.announce import AnnounceScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.box_history import BoxHistoryScreen
from queueboard.board.screens.box_list import BoxListScreen
from queueboard.board.screens.box_money import BoxMoney
from queueboard.board.screens.box_papers import BoxPapers
from queueboard.board.screens.box_shelf import BoxShelf
from queueboard.board.screens.boxes import BoxesScreen
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.customers import GiveBoxDialog, MergeDialog
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.day_cursor import RunCursor
from queueboard.board.screens.day_runs import DayRuns
from queueboard.board.screens.dialogs.call_back import CallBackAsked
from queueboard.board.screens.dialogs.correct import CorrectBoxDialog, CorrectCustomerDialog, CorrectKnifeDialog
from queueboard.board.screens.dialogs.numbers import Telling
from queueboard.board.screens.dialogs.orders import OrdersDialog
from queueboard.board.screens.edge_view import EdgeView
from queueboard.board.screens.find import FindScreen
from queueboard.board.screens.first import FirstScreen
from queueboard.board.screens.help import HelpScreen
from queueboard.board.screens.initials import InitialsScreen
from queueboard.board.screens.labels import LabelsScreen
from queueboard.board.screens.late import LateScreen
from queueboard.board.screens.loose import LooseScreen
from queueboard.board.screens.numbers import OwnNumbersScreen
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
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.undoing import steps
from queueboard.values.box import CloseOut
from queueboard.values.gone import GoneBox
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy, Settling
from tests.board.answering import COUNTER, PARCEL
from tests.board.bench_screens import BENCH_SCREENS
from tests.board.figure_screens import FIGURE_SCREENS
from tests.board.host import SMALL, AnyScreen, Home, Host
from tests.board.market_screens import MARKET_SCREENS
from tests.board.money_screens import MONEY_SCREENS
from tests.board.number_screens import NUMBER_SCREENS
from tests.board.shelf_screens import SHELF_SCREENS
from tests.board.swap_screens import SWAP_SCREENS
from tests.shop.place import NOW, box, by
from tests.shop.undo_announcing import announced

BURSTS = (("enter", "enter"), ("escape", "escape"), ("enter", "escape"), ("plus", "plus"), ("q", "u", "q"), ("1", "1"))
SIGNS = {"plus": "+", "enter": "\r"}

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


def _kinds(of: type[AnyScreen]) -> Iterator[type[AnyScreen]]:
    for kind in of.__subclasses__():
        yield kind
        yield from _kinds(kind)


def test_every_screen_is_tried() -> None:
    """A screen that is added is tried with bursts too."""
    shared = {
        ShopModal,
        Form,
        Dialog,
        BoxListScreen,
        RunCursor,
        DayRuns,
        EdgeView,
        BoxPapers,
        BoxMoney,
        BoxShelf,
        CallBackAsked,
    }
    shared |= {OwnNumbersScreen, Telling}
    ours = {kind for kind in _kinds(ShopScreen) if kind.__module__.startswith("queueboard.board.screens")}
    at_home = {kind for kind in ours if kind.__module__.rpartition(".")[2].startswith("board")}

    assert ours - shared - at_home == set(SCREENS)


async def one_turn() -> None:
    """Let everything that is ready go on by one step."""
    turn = asyncio.get_running_loop().create_future()
    turn.get_loop().call_soon(turn.set_result, None)
    await turn


@pytest.mark.parametrize("make", SCREENS.values(), ids=[kind.__name__ for kind in SCREENS])
@pytest.mark.parametrize("burst", BURSTS, ids="-".join)
async def test_a_burst_of_keys_right_behind_the_one_that_opened_it(
    two_boxes: Shop, make: Make, burst: tuple[str, ...]
) -> None:
    """Keys that come before a screen stands fail nowhere, store nothing twice and leave what lies below."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL) as pilot:
        screen = make(desk)
        before = len(steps(two_boxes, "MB"))
        app.push_screen(screen)
        for key in burst:
            app.post_message(Key(key, SIGNS.get(key, key if len(key) == 1 else None)))
        await pilot.pause()
        await pilot.pause()

        assert app.failure is None
        assert isinstance(app.screen_stack[1], Home)
        done = len(steps(two_boxes, "MB")) - before
        assert done <= 1 or not isinstance(screen, Dialog)


@pytest.mark.parametrize("make", SCREENS.values(), ids=[kind.__name__ for kind in SCREENS])
async def test_left_twice_it_takes_nothing_with_it(two_boxes: Shop, make: Make) -> None:
    """A screen that is left a second time leaves the one below where it is."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL) as pilot:
        below, screen = app.screen, make(desk)
        await app.push_screen(screen)
        screen.dismiss(None)
        screen.dismiss(None)
        await pilot.pause()

        assert app.screen is below


@pytest.mark.parametrize("make", SCREENS.values(), ids=[kind.__name__ for kind in SCREENS])
async def test_the_look_for_other_windows_waits_for_a_screen(
    two_boxes: Shop, make: Make, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A new picture that comes while a screen is being put together, part by part, finds nothing missing."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    monkeypatch.setattr(desk, "is_stale", lambda: True)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL) as pilot:
        screen = make(desk)
        app.push_screen(screen)
        while not screen.is_mounted:
            app.look_around()
            await one_turn()
        app.look_around()
        await pilot.pause()

        assert app.failure is None


@pytest.mark.parametrize("make", SCREENS.values(), ids=[kind.__name__ for kind in SCREENS])
async def test_a_board_that_closes_looks_no_more(two_boxes: Shop, make: Make, monkeypatch: pytest.MonkeyPatch) -> None:
    """While a board is taken apart, part by part, no new picture is shown on what is left of it."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    monkeypatch.setattr(desk, "is_stale", lambda: True)
    app = Host(desk, lambda: Home(desk))

    async def look_on() -> None:
        while app.screen_stack:
            app.look_around()
            await one_turn()

    async with app.run_test(size=SMALL) as pilot:
        await app.push_screen(make(desk))
        await pilot.pause()
        looking = asyncio.create_task(look_on())

    await looking
    assert app.failure is None


@pytest.mark.parametrize("make", SCREENS.values(), ids=[kind.__name__ for kind in SCREENS])
async def test_what_is_shown_everywhere_goes_past_a_screen_that_still_opens(two_boxes: Shop, make: Make) -> None:
    """An action that ends while a screen is being put together finds nothing missing on it."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL) as pilot:
        screen = make(desk)
        app.push_screen(screen)
        while not screen.is_mounted:
            show_everywhere(app)
            await one_turn()
        await pilot.pause()

        assert app.failure is None
