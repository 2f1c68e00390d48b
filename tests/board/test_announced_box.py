"""What becomes of an announced box: it arrives, comes otherwise, does not come, or is opened and promised anew."""

from datetime import date

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.boxes import BoxesScreen
from queueboard.board.screens.dialogs.correct import CorrectBoxDialog
from queueboard.board.screens.late import LateScreen
from queueboard.shop import announcing, undoing
from queueboard.shop.opening import Shop
from queueboard.values.box import Box
from queueboard.words import WaitingFor
from tests.board.answering import answered, refused
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, FakeDesk, Host
from tests.board.typing import fill
from tests.busy_morning import busy_morning
from tests.shop.place import NOW, box, by, counter, picture
from tests.shop.undo_announcing import announced

NUMBER = 100


def menu(desk: Desk) -> dialogs.AnnouncedDialog:
    """The question that o asks of an announced box."""
    made = dialogs.dialog_for("open", desk, box_of(desk))
    assert isinstance(made, dialogs.AnnouncedDialog)
    return made


def box_of(desk: Desk) -> Box:
    """The announced box as the desk sees it."""
    found = desk.picture.box(NUMBER)
    assert found is not None
    return found.box


async def test_plus_on_the_board_takes_it_in_the_door(shop: Shop) -> None:
    """Its number and +: it is here, not opened; one key takes that back."""
    announced(shop)
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert "EXPECTED Thu" in dump(app)
        await pilot.press("1", "0", "0", "plus")
        await pilot.pause()

        assert "100 is here, not opened." in dump(app)
        assert "EXPECTED" not in dump(app)

    assert not box(shop, NUMBER).box.announced
    undoing.undo(shop, by("MB"), undoing.steps(shop, "MB")[0].group_id, "")
    assert box(shop, NUMBER).box.announced


async def test_the_table_of_all_boxes_counts_it_apart(shop: Shop) -> None:
    """What is not in the door is not counted among what is; its day stands whole at 80 columns."""
    announced(shop)
    counter(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: BoxesScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()

        assert "All open boxes · 1 box, 1 expected ·" in dump(app)
        assert "EXPECTED Thu" in dump(app)

        await app.push_screen(CorrectBoxDialog(desk, box_of(desk)))
        await pilot.pause()
        assert "not here yet" in dump(app)


async def test_it_stands_last_and_the_cursor_begins_at_work(shop: Shop) -> None:
    """A box that is here stands above it, so that the first + of the day is about a knife."""
    announced(shop)
    counter(shop)
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        shown = dump(app)

        assert shown.index("101 Ms Verrin") < shown.index("100 Oake")
        await pilot.press("1", "0", "0", "asterisk")
        await pilot.pause()
        assert "100 is not here yet." in dump(app)

    assert box(shop, NUMBER).box.announced


async def test_plus_on_its_own_screen(shop: Shop) -> None:
    """The box's screen says what is expected, and + takes it in the door."""
    made = announced(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: BoxScreen(desk, made.box.id))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert_screen(app, "box-announced-80")
        await pilot.press("plus")
        await pilot.pause()

    assert not box(shop, NUMBER).box.announced


async def test_it_is_here_and_opened_later(shop: Shop) -> None:
    """The second answer of o."""
    announced(shop)

    assert await answered(shop, menu, "<2>")

    assert (box(shop, NUMBER).box.announced, box(shop, NUMBER).box.opened) == (False, False)


async def test_it_comes_otherwise(shop: Shop) -> None:
    """The third: another count, another day; a day that is over is asked back, and what was typed stays."""
    announced(shop)

    said = await refused(shop, menu, "<3>", "8", "2026-11-08")
    assert "2026-11-08 is over" in said
    assert await answered(shop, menu, "<3>", "8", "+8")

    own = box(shop, NUMBER).box
    assert (own.expected_knives, own.expected_on) == (8, date(2026, 11, 17))


async def test_it_does_not_come(shop: Shop) -> None:
    """The fourth needs a reason; then it is off the board."""
    announced(shop)

    assert "Say why box 100 does not come" in await refused(shop, menu, "<4>", "")
    assert await answered(shop, menu, "<4>", "sold the knives")

    assert picture(shop).box(NUMBER) is None


async def test_what_was_told_holds(shop: Shop) -> None:
    """Opened straight from the post: the date told stands there with a yes, and Enter lets it hold."""
    announced(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: menu(desk))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "<1>", "3", "", "3 chef 8", "", "")
        shown = " ".join(dump(app).split())
        assert "told: ships by Wed 18 Nov, told to Oake" in shown
        assert "earliest: ships by Mon 9 Nov" in shown
        assert "Wed 18 Nov: yes" in shown
        assert_screen(app, "dialog-open-told")
        await fill(pilot, "<enter>")
        assert app.left

    now = box(shop, NUMBER)
    assert (now.box.announced, now.box.opened, now.box.counted) == (False, True, 3)
    assert [told.day for told in now.promises] == [date(2026, 11, 18)]


async def test_another_date_is_told_with_whom_and_why(shop: Shop) -> None:
    """240 knives instead of six: what was told is a no, F3 takes the honest day, and the first date stays."""
    announced(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: menu(desk))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "<1>", "240", "6", "240 chef 8", "", "")
        shown = " ".join(dump(app).split())
        assert "Wed 18 Nov: no" in shown
        await fill(pilot, "<f3>", "<enter>", "<enter>", "<enter>", "Oake", "")
        assert "A second date needs who was told and why" in " ".join(dump(app).replace("│", " ").split())
        await fill(pilot, "far more knives")
        assert app.left

    now = box(shop, NUMBER)
    assert (now.box.counted, now.box.waiting_for) == (240, WaitingFor.COUNT)
    assert len(now.promises) == 2
    assert now.promises[1].day > date(2026, 11, 18)
    assert (now.promises[1].told_to, now.promises[1].reason) == ("Oake", "far more knives")


async def test_two_windows(shop: Shop) -> None:
    """Called off meanwhile, it cannot arrive; the sentence says so and nothing is stored."""
    made = announced(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: menu(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        announcing.call_off(shop, by("K"), made.box, "sold")
        await pilot.press("2")
        await pilot.pause()

        assert "meanwhile; nothing was stored" in " ".join(dump(app).replace("│", " ").split())


async def test_the_late_list_ends_with_what_has_not_come() -> None:
    """Its heading counts it apart, and the last line says since when, and what was told."""
    desk = FakeDesk(busy_morning())
    app = Host(desk, lambda: LateScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        shown = dump(app)

        assert "1 NOT COME" in shown
        assert "NOT COME · box 432 · Sorrel Hane" in shown
        assert "expected Tue 24 Nov and not come, 6 knives · in hand by Fri 4 Dec" in shown
