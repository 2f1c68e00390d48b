"""A scanner is a keyboard that sends a tag quickly and then Enter: it works wherever a tag can be typed."""

from collections.abc import Callable

from textual.events import Key

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.dialogs.found import NoteFoundDialog, SettleFoundDialog
from queueboard.board.screens.dialogs.rehome import MoveToBoxDialog
from queueboard.board.screens.find import FindScreen
from queueboard.board.screens.loose import LooseScreen
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.tray import TrayDialog
from queueboard.board.screens.type_back import TypeBackScreen
from queueboard.board.trays import trays_by
from queueboard.shop import closing
from queueboard.shop.found_knives import note_found
from queueboard.shop.loose import Candidate
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.running import start_run
from queueboard.values.knife import Knife
from queueboard.words import Column
from tests.board.answering import COUNTER, PARCEL
from tests.board.host import SMALL, AnyScreen, Host, until
from tests.shop.place import NOW, box, by, state
from tests.shop.place import picture as picture_of


def keys() -> tuple[str, ...]:
    """The keys of the scanned tag of the second knife of the counter box."""
    return (*(("minus" if sign == "-" else sign) for sign in "101-2"), "enter")


async def scanned(shop: Shop, make: Callable[[Desk], AnyScreen], *before: str, then: tuple[str, ...] = ()) -> Host:
    """Open a screen, type what comes before, scan; the app as it was left."""
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: make(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*before, *keys(), *then)
        await pilot.pause()
    return app


async def test_on_the_board_it_goes_there(two_boxes: Shop) -> None:
    """The cursor stands on the knife that was scanned, and nothing is stored."""
    before = state(two_boxes)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*keys())
        await pilot.pause()
        board = app.screen
        assert isinstance(board, BoardScreen)
        knife = board.knife_here()
    assert knife is not None
    assert knife.tag == "101-2"
    assert state(two_boxes) == before


async def test_from_a_box_it_goes_to_the_board(two_boxes: Shop) -> None:
    """On another box's screen the first digit leads to the board, and the tag is taken there."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        app.push_screen(BoxScreen(desk, box(two_boxes, PARCEL).box.id))
        await pilot.pause()
        await pilot.press(*keys())
        await pilot.pause()
        board = app.screen
        assert isinstance(board, BoardScreen)
        knife = board.knife_here()
    assert knife is not None
    assert knife.tag == "101-2"


async def test_on_the_day_list_its_dash_is_no_bell(two_boxes: Shop) -> None:
    """With a run under way a scanned tag leads to its box; the clock of the run goes on."""
    knives = box(two_boxes, PARCEL).knives
    start_run(two_boxes, by("MB"), "plain", knives, 0, 900)
    app = await scanned(two_boxes, DayScreen)

    assert app.answer == COUNTER
    (run,) = picture_of(two_boxes).runs
    assert run.paused_at is None


async def test_in_find_it_finds_its_box(two_boxes: Shop) -> None:
    """The box of the tag is the answer."""
    assert (await scanned(two_boxes, FindScreen)).answer == COUNTER


async def test_loose_it_is_the_knife(two_boxes: Shop) -> None:
    """A loose knife that still has its tag is that knife and no other."""
    answer = (await scanned(two_boxes, LooseScreen)).answer
    assert isinstance(answer, Candidate)
    assert isinstance(answer.knife, Knife)
    assert answer.knife.tag == "101-2"


async def test_in_a_close_out_it_ticks_and_never_counts(two_boxes: Shop) -> None:
    """At the blind count a tag is no count; at the ticking it ticks its knife."""
    move_knives(two_boxes, by(), box(two_boxes, COUNTER).knives, Column.READY)
    closing.begin_close_out(two_boxes, by(), box(two_boxes, COUNTER).box)
    box_id = box(two_boxes, COUNTER).box.id

    await scanned(two_boxes, lambda desk: CloseOutScreen(desk, box_id))
    close = box(two_boxes, COUNTER).close_out
    assert close is not None
    assert close.counted is None

    closing.count(two_boxes, by(), close, 1)
    await scanned(two_boxes, lambda desk: CloseOutScreen(desk, box_id))
    ticking = box(two_boxes, COUNTER).close_out
    assert ticking is not None
    assert ticking.ticked == frozenset({box(two_boxes, COUNTER).knives[1].id})


async def test_before_a_tray_moves_it_says_which_knife_stays(two_boxes: Shop) -> None:
    """The scanner's own Enter moves nothing yet; the next one moves the rest."""

    def tray(desk: Desk) -> AnyScreen:
        return TrayDialog(desk, trays_by(box(desk.shop, COUNTER), 1))

    app = await scanned(two_boxes, tray)
    assert not app.left
    assert {knife.column for knife in box(two_boxes, COUNTER).knives} == {Column.RECEIVED}

    app = await scanned(two_boxes, tray, then=("enter",))
    assert app.left
    assert [knife.column for knife in box(two_boxes, COUNTER).knives] == [Column.ON_BENCH, Column.RECEIVED]


async def test_in_the_dialogs_it_names_its_box(two_boxes: Shop) -> None:
    """A found knife goes into the box of the tag, and so does one that is moved."""
    note_found(two_boxes, by(), kind="chef", place="wash sink")
    (found,) = picture_of(two_boxes).found
    await scanned(two_boxes, lambda desk: SettleFoundDialog(desk, found), "enter", then=(*"theirs", "enter"))
    assert len(box(two_boxes, COUNTER).knives) == 3

    moved = box(two_boxes, PARCEL).knives[0]
    await scanned(two_boxes, lambda desk: MoveToBoxDialog(desk, moved), then=(*"wrong tray", "enter"))
    assert len(box(two_boxes, COUNTER).knives) == 4


async def test_typing_a_sheet_back_it_goes_to_its_line(two_boxes: Shop) -> None:
    """A scanned tag leads to its line and stores nothing; what is typed then is about it."""
    await scanned(two_boxes, TypeBackScreen, then=("plus", "enter"))
    columns = [knife.column for knife in box(two_boxes, COUNTER).knives]
    assert columns == [Column.RECEIVED, Column.READY]


async def test_a_knife_with_its_tag_is_no_found_one(two_boxes: Shop) -> None:
    """Scanned where a found knife is noted, it is said whose it is; nothing is noted, what was typed stays."""
    app = await scanned(two_boxes, NoteFoundDialog, then=(*"sink", "enter"))

    assert not app.left
    assert not picture_of(two_boxes).found


async def test_all_signs_at_once_land_whole(two_boxes: Shop) -> None:
    """As fast as a reader sends them, Enter with them: on the board the cursor goes there; a form takes the text."""
    before = state(two_boxes)
    desk = Desk(two_boxes, "MB", lambda: NOW)
    board = BoardScreen(desk)
    app = Host(desk, lambda: board)

    def scan() -> None:
        for sign in "101-2\r":
            app.post_message(Key({"-": "minus", "\r": "enter"}.get(sign, sign), sign))

    def tag_here() -> str:
        knife = board.knife_here()
        return "" if knife is None else knife.tag

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        scan()
        await until(pilot, lambda: tag_here() == "101-2")

        receive = ReceiveScreen(desk)
        await app.push_screen(receive)
        await pilot.pause()
        scan()
        await until(pilot, lambda: receive.focused is not receive.picker.typed)
        assert receive.picker.typed.value == "101-2"
    assert state(two_boxes) == before
