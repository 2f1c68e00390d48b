"""Undo over a real shop file: in words, the newest first, as far back as wanted; with a reason where one is needed."""

from datetime import date

from textual.widgets import OptionList

from queueboard.board.desk import Desk
from queueboard.board.screens.undo import UndoScreen
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.promising import promise
from queueboard.values.new import NewPromise
from queueboard.words import Column, PromiseKind
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, Host
from tests.shop.place import NOW, by, picture


def opened(shop: Shop, initials: str = "J") -> Host:
    """The undo screen over a shop."""
    desk = Desk(shop, initials, lambda: NOW)
    return Host(desk, lambda: UndoScreen(desk))


def columns(shop: Shop) -> list[Column]:
    """Where the three knives of box 100 stand."""
    box = picture(shop).box(100)
    assert box is not None
    return [knife.column for knife in box.knives]


def move(shop: Shop, number: int, to: Column) -> None:
    """Move one knife of box 100."""
    box = picture(shop).box(100)
    assert box is not None
    move_knives(shop, by(), (box.knives[number - 1],), to)


async def test_enter_undoes_the_newest_and_again_goes_further_back(two_boxes: Shop) -> None:
    """Two moves are taken back by two presses, the later one first, each told before it is done."""
    move(two_boxes, 1, Column.ON_BENCH)
    move(two_boxes, 2, Column.TESTING)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert_screen(app, "undo-80")

        await pilot.press("enter")
        assert columns(two_boxes) == [Column.ON_BENCH, Column.RECEIVED, Column.RECEIVED]
        assert "Undone: 100-2 moved to testing." in dump(app)

        await pilot.press("enter")
        assert columns(two_boxes) == [Column.RECEIVED] * 3


async def test_what_was_undone_can_be_done_again(two_boxes: Shop) -> None:
    """* does the step again that was undone last."""
    move(two_boxes, 1, Column.READY)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter", "asterisk")

        assert columns(two_boxes)[0] is Column.READY
        assert "Done again" in dump(app)


async def test_a_told_date_is_taken_back_only_with_a_reason(two_boxes: Shop) -> None:
    """Enter asks why; with the reason typed the next Enter takes the date back."""
    box = picture(two_boxes).box(101)
    assert box is not None
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 12), told_to="Ms Verrin", reason="belts late")
    promise(two_boxes, by(), box.box, later)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter")
        assert "type why" in dump(app)
        await pilot.press("w", "h", "o", "enter")

        again = picture(two_boxes).box(101)
        assert again is not None
        assert len(again.promises) == len(box.promises)


async def test_a_step_that_somebody_changed_since_is_refused_and_an_earlier_one_can_be_chosen(two_boxes: Shop) -> None:
    """The sentence says who changed it; the arrow goes to another step, and that one is undone."""
    move(two_boxes, 2, Column.ON_BENCH)
    move(two_boxes, 1, Column.ON_BENCH)
    box = picture(two_boxes).box(100)
    assert box is not None
    move_knives(two_boxes, by("K"), (box.knives[0],), Column.TESTING)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter")
        assert "K has changed it since" in dump(app)

        await pilot.press("down", "enter")
        assert columns(two_boxes)[:2] == [Column.TESTING, Column.RECEIVED]


async def test_nobody_undoes_what_another_did(two_boxes: Shop) -> None:
    """Somebody who has done nothing sees no steps, and Enter does nothing."""
    app = opened(two_boxes, initials="ZZ")
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter")

        assert app.screen.query_one(OptionList).option_count == 0
        assert "ZZ has done nothing that can be undone." in dump(app)
