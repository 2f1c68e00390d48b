"""Undo over a real shop file: in words, the newest first, as far back as wanted; with a reason where one is needed."""

from datetime import date

import pytest
from textual.widgets import Input, OptionList

from queueboard.board.desk import Desk
from queueboard.board.screens.undo import UndoScreen
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.promising import promise
from queueboard.shop.undoing import steps, undo
from queueboard.values.new import NewPromise
from queueboard.words import Column, PromiseKind
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, Host
from tests.shop.place import NOW, box, by, picture, state


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
        assert "Done again: " in dump(app)
        assert "again: undone" not in dump(app)


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


async def test_the_line_for_the_reason_is_shown_only_while_it_gets_the_letters(two_boxes: Shop) -> None:
    """Before Enter and after Tab no line is shown that letters would not go into; what was typed is kept in it."""
    told = box(two_boxes, 101).box
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 12), told_to="Ms Verrin", reason="belts late")
    promise(two_boxes, by(), told, later)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        line = app.screen.query_one(Input)
        assert not line.display

        await pilot.press("enter", "r", "minus")
        assert (line.display, line.has_focus, line.value) == (True, True, "r-")
        assert "Enter undo · Tab another step" in dump(app)

        await pilot.press("tab")
        await pilot.pause()
        assert not line.display
        assert "Enter undo · ↑ ↓ another step" in dump(app)
        stored = state(two_boxes)
        await pilot.press("enter")
        assert state(two_boxes) == stored
        assert (line.display, line.has_focus, line.value) == (True, True, "r-")

        await pilot.press("enter")
        assert state(two_boxes) != stored
        assert not line.display


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


def undone_elsewhere(shop: Shop, place: int) -> None:
    """Another window with the same initials undoes the step at this place of the list."""
    undo(shop, by(), steps(shop, "J")[place].group_id, "told by mistake")


async def test_the_chosen_step_stays_chosen_when_another_window_acts(two_boxes: Shop) -> None:
    """The cursor stays on the step, not on its place: Enter undoes what stood under it, not the newest."""
    for number in (1, 2, 3):
        move(two_boxes, number, Column.ON_BENCH)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down")
        move(two_boxes, 3, Column.TESTING)
        app.look_around()
        await pilot.press("enter")

        assert columns(two_boxes) == [Column.ON_BENCH, Column.RECEIVED, Column.TESTING]


async def test_a_typed_reason_stays_when_another_window_acts(two_boxes: Shop) -> None:
    """The letters typed so far stay in the line, the next ones go on behind them, and the date is taken back."""
    told = box(two_boxes, 101)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 12), told_to="Ms Verrin", reason="belts late")
    promise(two_boxes, by(), told.box, later)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter", "w", "h")
        move(two_boxes, 1, Column.ON_BENCH)
        app.look_around()
        await pilot.press("o")
        assert app.screen.query_one(Input).value == "who"

        await pilot.press("enter")
        assert len(box(two_boxes, 101).promises) == len(told.promises)
        assert columns(two_boxes)[0] is Column.ON_BENCH


@pytest.mark.parametrize("seen", [True, False])
async def test_a_chosen_step_that_is_gone_is_said_and_nothing_is_undone(two_boxes: Shop, seen: bool) -> None:
    """When another window undid the chosen step, Enter undoes nothing, whether this one has noticed already or not."""
    for number in (1, 2, 3):
        move(two_boxes, number, Column.ON_BENCH)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down")
        undone_elsewhere(two_boxes, 1)
        left = columns(two_boxes)
        if seen:
            app.look_around()
            await pilot.pause()
            assert "100-2 moved to on bench was undone meanwhile" in dump(app)
        await pilot.press("enter", "enter")
        assert columns(two_boxes) == left
        assert "No step is chosen." in dump(app)

        await pilot.press("down", "enter")
        assert columns(two_boxes) == [Column.ON_BENCH, Column.RECEIVED, Column.RECEIVED]


async def test_letters_of_a_reason_never_become_keys(two_boxes: Shop) -> None:
    """When the step goes while its reason is typed, the line stays: an r goes on with the reason, not another step."""
    move(two_boxes, 1, Column.ON_BENCH)
    undone_elsewhere(two_boxes, 0)
    told = box(two_boxes, 101).box
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 12), told_to="Ms Verrin", reason="belts late")
    promise(two_boxes, by(), told, later)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter", "o")
        undone_elsewhere(two_boxes, 0)
        stored = state(two_boxes)
        app.look_around()
        await pilot.press("r", "q", "enter")

        assert app.screen.query_one(Input).value == "orq"
        assert state(two_boxes) == stored
        assert "No step is chosen." in dump(app)


async def test_undoing_goes_on_where_the_cursor_was(two_boxes: Shop) -> None:
    """After a step further down is undone the cursor stands on the next older one, and star brings it back there."""
    for number in (1, 2, 3):
        move(two_boxes, number, Column.ON_BENCH)
    app = opened(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down", "enter", "enter")
        assert columns(two_boxes) == [Column.RECEIVED, Column.RECEIVED, Column.ON_BENCH]

        await pilot.press("asterisk", "enter")
        assert columns(two_boxes) == [Column.RECEIVED, Column.RECEIVED, Column.ON_BENCH]
