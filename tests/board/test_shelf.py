"""The shelf, messages, boxes that are gone and call-backs by their keys, as kept and with hostile names."""

from datetime import timedelta

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.dialogs.call_back import LinkCallBackDialog, TakeBackDialog
from queueboard.board.screens.dialogs.shelf import PlaceDialog
from queueboard.board.screens.find import FindScreen
from queueboard.board.screens.gone import GoneScreen
from queueboard.board.screens.message import MessageScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.board.screens.shelf import ShelfScreen
from queueboard.seedfiles import seed_text
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop import moving, shelving
from queueboard.shop.money import take_payment
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import receive_box
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, notices, until
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, cash, chef, counter, picture
from tests.shop.readings import read
from tests.shop.undo_shelf import gone

LATER = NOW + timedelta(days=70)
_HEAD, _SHELF, _TAIL = seed_text("settings.toml").partition("[shelf]")
CHECKED = _HEAD + _SHELF + _TAIL.replace("# last_checked", "last_checked", 1)


def desk_of(shop: Shop, *, days: int = 70) -> Desk:
    """A desk so many days later."""
    return Desk(shop, "MB", lambda: NOW + timedelta(days=days))


@pytest.fixture
def shelf(shop: Shop) -> Shop:
    """Three boxes that wait to be fetched: one at C4 told once, one paid, one with a hostile name; the law was read."""
    take_settings(shop, by(), CHECKED)
    for place, name in ((" C4", "Ines Morel"), ("", "Bo Oake"), ("[b]top[/]", "[red]x[/] \u05e9")):
        made = counter(shop, name=name)
        moving.move_knives(shop, by(), made.knives, Column.READY)
        shelving.put_on_shelf(shop, by(), box(shop, made.box.number).box, place)
    first, second = picture(shop).boxes[:2]
    shelving.note_notice(shop, by(minutes=7 * 1440), first.box.id, MessageSort.UNCLAIMED, NoticeWay.TEXT, "Please.")
    take_payment(shop, by(), box(shop, second.box.number).box, cash(1800))
    return shop


@pytest.mark.parametrize(("name", "size"), [("shelf-80", SMALL), ("shelf-120", LARGE)])
async def test_the_shelf_reads_as_kept(shelf: Shop, name: str, size: tuple[int, int]) -> None:
    """Not paid and paid apart, days, place and notices; below the shop's own days and the law line."""
    desk = desk_of(shelf)
    app = Host(desk, lambda: ShelfScreen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, name)


async def test_an_empty_shelf_says_so(shop: Shop) -> None:
    """Nothing waits; the keys about a box say that there is none."""
    desk = desk_of(shop)
    app = Host(desk, lambda: ShelfScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        assert "Nothing is ready and waits to be fetched." in dump(app)
        await pilot.press("plus")
        assert "Put the cursor on a box." in dump(app)


async def test_place_money_close_out_and_list_by_their_keys(shelf: Shop) -> None:
    """On the pad alone: * the place, / the close-out; y the money; v the list as a file; a parcel never stands here."""
    desk = desk_of(shelf)
    app = Host(desk, lambda: ShelfScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("asterisk")
        await until(pilot, lambda: isinstance(app.screen, PlaceDialog))
        await fill(pilot, "B2")
        assert "at B2" in dump(app)
        await pilot.press("v")
        assert "Written to" in dump(app)
        await pilot.press("slash")
        await until(pilot, lambda: isinstance(app.screen, CloseOutScreen))
    text = (shelf.path.parent / "papers" / "shelf.txt").read_text(encoding="utf-8")
    assert "18.00 USD to pay, NOTICE 2 DUE, CHECK LOCAL LAW FIRST, at B2: Ines Morel" in text
    assert "last read Monday 2 November" in text
    assert "[red]x[/] \u05e9" in text


@pytest.mark.parametrize(("name", "size"), [("message-80", SMALL), ("message-120", LARGE)])
async def test_the_notice_reads_as_kept(shelf: Shop, name: str, size: tuple[int, int]) -> None:
    """The text, then what is no part of it: the law line, what was told already, that nothing is sent."""
    desk = desk_of(shelf)
    app = Host(desk, lambda: MessageScreen(desk, desk.picture.boxes[0].box.id, MessageSort.UNCLAIMED))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, name)
        await pilot.press("plus")
        assert app.clipboard.startswith("Fernlea Edge, Monday 18 January 2027\nYour two knives")
        assert "law" not in app.clipboard


async def test_a_message_that_would_not_be_true_says_why(shelf: Shop) -> None:
    """Nothing has left: the text is not offered, not copied, and nothing is noted."""
    desk = desk_of(shelf)
    app = Host(desk, lambda: MessageScreen(desk, desk.picture.boxes[0].box.id))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("2")
        assert "Not now: Nothing of box 100 has left yet" in dump(app)
        await pilot.press("plus", "v", "slash")
        await pilot.pause()
        assert isinstance(app.screen, MessageScreen)
        assert not app.clipboard
    assert not (shelf.path.parent / "papers").exists()


@pytest.fixture
def left(shop: Shop) -> Shop:
    """A parcel of three that has left."""
    old = gone(shop)
    read(shop, by(), old.knives[0], {"heel": 165, "middle": 150, "tip": 180}, {"heel": 1180})
    return shop


@pytest.mark.parametrize(("name", "size"), [("gone-80", SMALL), ("gone-120", LARGE)])
async def test_a_box_that_is_gone_reads_as_kept(left: Shop, name: str, size: tuple[int, int]) -> None:
    """When it left and with whom, each knife with what it was read at, and what was done."""
    desk = desk_of(left, days=9)
    app = Host(desk, lambda: GoneScreen(desk, desk.gone("tallis")[0]))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, name)


async def test_not_sharp_from_the_gone_box_to_the_stub(left: Shop) -> None:
    """/ asks which knives and what is wrong; they are a new box, free by the rule, and its papers are shown."""
    desk = desk_of(left, days=9)
    app = Host(desk, lambda: FindScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*"tallis", "enter")
        await until(pilot, lambda: isinstance(app.screen, GoneScreen))
        await pilot.press("slash")
        await until(pilot, lambda: isinstance(app.screen, TakeBackDialog))
        assert_screen(app, "dialog-take-back")
        await fill(pilot, "9")
        assert "No knife 9 left in box 100." in dump(app)
        await fill(pilot, "1.3", "drags on tomato", "<1>")
        await until(pilot, lambda: isinstance(app.screen, ReceivedScreen))
        assert "Call-back of box 100" in dump(app)
        await pilot.press("enter")
        await until(pilot, lambda: app.left)
    number = app.answer
    assert isinstance(number, int)
    made = box(left, number)
    assert (made.price_cents, len(made.knives), made.box.goes_by) == (0, 2, GoesBy.PICK_UP)
    assert made.call_back is not None
    assert made.call_back.why == "drags on tomato"


async def test_beyond_the_days_the_price_is_asked(left: Shop) -> None:
    """Twenty days later the same question has a line more: the price of the list, or free all the same."""
    desk = desk_of(left, days=20)
    app = Host(desk, lambda: TakeBackDialog(desk, desk.gone("tallis")[0]))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "", "drags", "<1>")
        assert "more than the shop's 14 days: say what it costs" in " ".join(dump(app).replace("│", "").split())
        assert not app.left
        await pilot.press("1")
        await until(pilot, lambda: app.left)
    assert picture(left).boxes[0].price_cents > 0


async def test_a_box_on_the_board_is_linked_by_b(left: Shop) -> None:
    """B lists the earlier boxes of this customer and the knives known again; the box then says what it is."""
    old = gone(left)
    new = NewBox(
        customer_id=old.customer.id,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=1,
        knives=(chef(mark="nick 1"),),
    )
    number = receive_box(left, by(), new)
    desk = desk_of(left, days=3)
    app = Host(desk, lambda: BoxScreen(desk, box(left, number).box.id))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("B")
        await until(pilot, lambda: isinstance(app.screen, LinkCallBackDialog))
        assert_screen(app, "dialog-link")
        await fill(pilot, "<1>", "drags")
        await until(pilot, lambda: isinstance(app.screen, BoxScreen))
        shown = dump(app)
        assert "CALL-BACK" in shown
        assert f"call-back of box {old.box.number}, 3 days after it left, free, 1 knife known again: drags" in shown
        await pilot.press("B")
        await pilot.pause()
        assert [note for note in notices(app) if "is linked to box" in note]
        await pilot.press("S")
        await until(pilot, lambda: isinstance(app.screen, PlaceDialog))
        await fill(pilot, "C4")
        assert "stands at C4" in dump(app)
        await pilot.press("N")
        await until(pilot, lambda: isinstance(app.screen, MessageScreen))
