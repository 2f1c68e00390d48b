"""The board over hand-built pictures: what stands on it, and that nothing a person did is lost by a new picture."""

from dataclasses import replace
from datetime import timedelta

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.too_small import TooSmallScreen
from queueboard.board.widgets.tag_entry import TagEntry
from queueboard.shop.picture import Picture
from queueboard.values.knife import Knife
from queueboard.words import Column, WaitingFor
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, FakeDesk, laid_out, until
from tests.busy_morning import busy_morning
from tests.pictures import HOSTILE_NAMES, box, box_picture, customer, knives, picture


def opened(pictured: Picture) -> QueueboardApp:
    """The app over a picture."""
    return QueueboardApp(FakeDesk(pictured))


def board(app: QueueboardApp) -> BoardScreen:
    """The board of the app."""
    screen = app.screen_stack[0]
    assert isinstance(screen, BoardScreen)
    return screen


def desk(app: QueueboardApp) -> FakeDesk:
    """The desk of the app."""
    assert isinstance(app.desk, FakeDesk)
    return app.desk


def at(app: QueueboardApp) -> str:
    """The column and the tag or box under the cursor: testing 417-4."""
    row = board(app).column().current()
    what = "nothing" if row is None else row.knife.tag if row.knife is not None else str(row.number)
    return f"{board(app).column().column.value} {what}"


def hostile() -> Picture:
    """A box for every hostile name."""
    boxes = [
        box_picture(box(500 + n, customer_id=n + 1), customer_=customer(name, id=n + 1))
        for n, name in enumerate(HOSTILE_NAMES)
    ]
    return picture(*boxes)


PICTURES = {
    "empty": picture(),
    "one": picture(box_picture(box(417, never_slip=True, waiting_for=WaitingFor.COUNT))),
    "busy": busy_morning(),
    "hostile": hostile(),
}


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
@pytest.mark.parametrize("name", PICTURES)
async def test_the_board_as_it_is_kept(name: str, size: tuple[int, int]) -> None:
    """The board of an empty shop, of one box, of a busy morning and of hostile names is the kept one."""
    app = opened(PICTURES[name])
    async with app.run_test(size=size) as pilot:
        await pilot.pause()

        assert_screen(app, f"board-{name}-{size[0]}")


async def test_without_colour_late_still_differs() -> None:
    """With no colour at all the words LATE and TODAY and the sign of the cursor stand on the board."""
    app = QueueboardApp(FakeDesk(busy_morning()), plain=True)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        shown = dump(app)

        assert all(word in shown for word in ("LATE", "TODAY", "WAIT", "DECLINED", "▸"))


async def test_a_new_picture_leaves_the_cursor_on_its_knife() -> None:
    """Another window takes in a box above: the cursor stays on its knife, in its column."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        found = app.desk.picture.box(420)
        assert found is not None
        board(app).jump(found, found.knives[2])
        morning = busy_morning()
        desk(app).next_picture = replace(
            morning, boxes=(box_picture(399, knives_=knives(399, *[Column.RECEIVED] * 4)), *morning.boxes), last_line=2
        )
        await until(pilot, lambda: "399" in dump(app))

        assert at(app) == "received 420-3"


async def test_a_new_minute_takes_a_new_picture() -> None:
    """Nothing was written, but the clock has gone on: the board looks again, for LATE comes with time alone."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        later = desk(app).picture.now + timedelta(minutes=1)
        desk(app).next_picture = replace(desk(app).picture, now=later)
        await until(pilot, lambda: desk(app).picture.now == later)

        assert f"{later:%H:%M}" in dump(app)


async def test_a_resized_window_keeps_the_cursor() -> None:
    """From large to small and back the cursor stays on its knife, which stays in sight."""
    app = opened(busy_morning())
    async with app.run_test(size=LARGE) as pilot:
        found = app.desk.picture.box(420)
        assert found is not None
        board(app).jump(found, found.knives[3])
        await pilot.resize_terminal(*SMALL)
        await laid_out(pilot, SMALL)

        assert at(app) == "on bench 420-4"
        assert any("▸" in line and "-4" in line for line in dump(app).splitlines())


async def test_a_window_too_small_says_so_and_gives_the_board_back() -> None:
    """Below 60 x 20 one sentence stands there; what was typed is still there when the window has grown."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("4")
        await pilot.resize_terminal(50, 15)
        await until(pilot, lambda: isinstance(app.screen, TooSmallScreen))
        assert "too small" in dump(app)

        await pilot.resize_terminal(*SMALL)
        await until(pilot, lambda: not isinstance(app.screen, TooSmallScreen))
        assert board(app).query_one(TagEntry).typed == "4"


async def test_a_number_is_echoed_large_with_name_and_count() -> None:
    """Typing 417 shows the name and the counts before anything is done; Enter goes there."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("4", "1", "7")
        assert_screen(app, "board-tag-80")
        await pilot.press("enter")

        assert at(app) == "testing 417"
        assert not board(app).query_one(TagEntry).display


async def test_a_number_that_is_not_here_is_said_and_stays() -> None:
    """A wrong number is told in a sentence, and what was typed is still there to be mended."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("9", "9", "enter")
        assert "There is no open box 99" in dump(app)

        await pilot.press("backspace", "escape")
        assert board(app).query_one(TagEntry).typed == ""


async def test_after_a_refused_number_a_digit_begins_a_new_one() -> None:
    """On the numeric pad, without Esc: 99 Enter is refused, then 417 Enter goes to 417."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("9", "9", "enter")
        assert "The next digit begins a new" in dump(app)

        await pilot.press("4", "1", "7")
        assert board(app).query_one(TagEntry).typed == "417"
        await pilot.press("enter")
        assert at(app) == "testing 417"


async def test_a_letter_after_a_number_is_about_that_number() -> None:
    """417 and n opens the note of box 417, with the cursor there."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("4", "1", "7", "n")
        await pilot.pause()

        assert len(app.screen_stack) == 2
        assert "417" in dump(app)
        assert at(app) == "testing 417"


async def test_a_tag_opens_its_box_on_that_knife() -> None:
    """What is typed is what the next key is about: 417-4 and . leads to 417-4, never to the first knife."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*"417-4", "full_stop")
        await pilot.pause()
        assert isinstance(app.screen, BoxScreen)
        about = app.screen.under_cursor()
        assert isinstance(about, Knife)
        assert about.tag == "417-4"


async def test_show_only_says_what_it_shows() -> None:
    """Only the late boxes stand on the board, a line says so, and Esc shows all again."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("slash")
        shown = dump(app)
        assert "shows only 2 of 7 boxes, late, will be late, tight" in shown
        assert "411" in shown
        assert "423" not in shown

        await pilot.press("escape")
        assert "shows only" not in dump(app)


async def test_one_customer_is_the_one_the_person_was_on() -> None:
    """From a box that is neither late, leaving today nor waiting, the questions between do not lose its customer."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL):
        board(app).come_back(426)
        for _ in range(4):
            board(app).action_show_only()
        assert board(app).shown.customer_id == 3

        board(app).action_clear()
        assert at(app) == "received 426"


async def test_a_hidden_box_is_shown_when_it_is_gone_to() -> None:
    """Going to a box that the board does not show just now shows all again."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        board(app).action_show_only()
        board(app).come_back(423)
        await pilot.pause()

        assert at(app) == "on bench 423"


async def test_a_key_that_cannot_work_is_not_offered() -> None:
    """In an empty shop nothing can be moved or closed out; on a heading no knife can be declined."""
    app = opened(picture())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        keys = app.screen.active_bindings
        assert not {"plus", "minus", "g", "c", "enter", "x"} & set(keys)
        assert {"r", "u", "f", "d", "question_mark"} <= set(keys)

    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert "x" not in app.screen.active_bindings
        await pilot.press("down")
        assert "x" in app.screen.active_bindings


async def test_a_digit_on_the_screen_of_a_box_begins_a_tag() -> None:
    """From one box to the next without going back: the digits typed there lead to the board."""
    app = opened(busy_morning())
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter", "4", "1", "7")
        await until(pilot, lambda: app.screen is board(app))

        assert board(app).query_one(TagEntry).typed == "417"
        assert "Maren Tallis" in dump(app)
