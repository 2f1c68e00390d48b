"""The screen with what was said and seen, and what a board keeps of a new morning."""

from datetime import timedelta

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.said import SaidScreen
from queueboard.shop.first_look import say_first_look
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.saying import is_said
from queueboard.words import Column
from tests.board.answering import COUNTER
from tests.board.dump import assert_screen
from tests.board.host import LARGE, SMALL, Host, until
from tests.shop.place import NOW, box, by, picture


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_the_tables_read_at_both_sizes(
    size: tuple[int, int], two_boxes: Shop, request: pytest.FixtureRequest
) -> None:
    """Chances, dates and minutes of a shop in which one box was ready in time and one was not."""
    say_first_look(two_boxes, by(), picture(two_boxes))
    move_knives(two_boxes, by(minutes=60), box(two_boxes, COUNTER).knives, Column.READY)
    desk = Desk(two_boxes, "MB", lambda: NOW + timedelta(days=9))
    app = Host(desk, lambda: SaidScreen(desk))

    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"said-{request.node.callspec.id}")


async def test_z_leads_there_and_back(two_boxes: Shop) -> None:
    """From the board and back to it."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("z")
        await until(pilot, lambda: isinstance(app.screen, SaidScreen))
        await pilot.press("z")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))


async def test_a_board_open_over_night_keeps_the_morning(two_boxes: Shop) -> None:
    """The first look of a new day keeps what the plan says; a look on the same day keeps nothing."""
    now = [NOW]
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: now[0]))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        now[0] = NOW + timedelta(minutes=2)
        app.look_around()
        assert not is_said(two_boxes, NOW.date())

        now[0] = NOW + timedelta(hours=23)
        app.look_around()
        await pilot.pause()

    assert is_said(two_boxes, now[0].date())
