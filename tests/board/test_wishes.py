"""What a customer wished stands in capitals at the bench, and where a knife is said OK."""

from dataclasses import replace

from queueboard.board.app import QueueboardApp
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.tray import TrayDialog
from queueboard.board.trays import trays_to_ready
from queueboard.clean import cell_text
from queueboard.phrases.bench import wished_words
from queueboard.phrases.day import run_knife_words
from queueboard.shop.picture import BoxPicture
from queueboard.words import ON_BOARD, Column
from tests.board.dump import dump
from tests.board.host import LARGE, SMALL, FakeDesk, Host
from tests.pictures import HOSTILE_NAMES, box_picture, knife, knives, picture, plan, run

R, B, T, OK = ON_BOARD
WISH, LOUD = "keep the patina [red]x[/]", "KEEP THE PATINA [RED]X[/]"


def wished(*columns: Column) -> BoxPicture:
    """Box 417 with knives in these columns; the first one has a wish."""
    first, *others = knives(417, *columns)
    return box_picture(417, knives_=(replace(first, wish=WISH), *others))


async def test_under_the_cursor_on_the_board() -> None:
    """The knife's own lines on the board say the wish loudly."""
    app = QueueboardApp(FakeDesk(picture(wished(R, R))))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("down")
        await pilot.pause()

        assert f"WISH: {LOUD}" in dump(app)


async def test_on_the_day_list() -> None:
    """The knife's line in its run says it."""
    seen = picture(wished(R, R), plan_=plan(run(417001, 417002)))
    desk = FakeDesk(seen)
    app = Host(desk, lambda: DayScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        assert f"WISH: {LOUD}" in dump(app)


async def test_before_a_tray_is_said_ok() -> None:
    """The question names the wishes of those that would go; one that stays is not among them."""
    desk = FakeDesk(picture(wished(T, T)))
    app = Host(desk, lambda: TrayDialog(desk, trays_to_ready(desk.picture.boxes[0])))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert f"WISH 417-1: {LOUD}" in dump(app)
        await pilot.press("1")
        assert "WISH" not in dump(app)


async def test_behind_a_knife_said_ok() -> None:
    """The sentence about a knife that goes to ready ends with its wish; on the way to the bench it says none."""
    app = QueueboardApp(FakeDesk(picture(wished(R, R))))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("down", "g")
        await pilot.pause()
        assert f"417-1 moved to ready.   u takes it back   WISH 417-1: {LOUD}" in dump(app)

    assert wished_words(wished(R).knives, B) == ""


def test_every_wish_is_said_literally() -> None:
    """Whatever was typed as a wish is said, in capitals where its letters have them; without one nothing is."""
    seen = picture()
    for wish in HOSTILE_NAMES:
        assert wish.upper() in run_knife_words(knife(wish=wish), seen)
        assert cell_text(wish.upper()) in cell_text(wished_words([knife(wish=wish)], Column.READY))
    assert "WISH" not in run_knife_words(knife(), seen)
