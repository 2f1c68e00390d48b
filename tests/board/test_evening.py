"""The screen of the day's end: reading it, counting, the dust tray's two looks, closing, undo, another day."""

from datetime import datetime, timedelta

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.evening import EveningScreen
from queueboard.shop.evening_seen import Evening
from queueboard.shop.evening_seen import evening as seen_on
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.words import Column
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, until
from tests.board.typing import fill
from tests.papers.test_evening import EVENING, TODAY, full_day
from tests.pictures import HOSTILE_NAMES
from tests.shop.place import NOW, by, counter, picture


class Clock:
    """A clock that a test sets."""

    def __init__(self, minutes: float) -> None:
        self.minutes = minutes

    def __call__(self) -> datetime:
        return NOW + timedelta(minutes=self.minutes)


def today(shop: Shop) -> Evening:
    """The day as the file has it."""
    return seen_on(shop, picture(shop, minutes=EVENING), TODAY)


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_the_screen_reads_at_both_sizes(
    size: tuple[int, int], shop: Shop, request: pytest.FixtureRequest
) -> None:
    """Money and dust tray on top, then what is open, moved and done."""
    full_day(shop)
    desk = Desk(shop, "MB", Clock(EVENING + 12))
    app = Host(desk, lambda: EveningScreen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"evening-{request.node.callspec.id}")


async def test_a_day_is_closed_from_the_pad(shop: Shop) -> None:
    """Plus counts, plus empties the tray, star closes; the second look waits, and can follow the closing."""
    counter(shop)
    clock = Clock(EVENING)
    desk = Desk(shop, "MB", clock)
    app = Host(desk, lambda: EveningScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("plus")
        await fill(pilot, "0.00")
        assert "counted 0.00 by MB: it agrees" in dump(app)
        await pilot.press("down", "down", "down", "plus")
        assert "look again from 17:50 on, 20 min to go" in " ".join(dump(app).split())
        await pilot.press("plus")
        assert "! Not yet" in dump(app)
        await pilot.press("asterisk")
        await fill(pilot, "call Oake")
        assert "second look at the dust tray is still to come. Enter once more" in " ".join(dump(app).split())
        await fill(pilot, "<enter>")
        assert "closed 17:30 by MB" in dump(app)
        clock.minutes += 20
        await pilot.press("plus")
        assert "looked at again 17:50 by MB" in " ".join(dump(app).split())

    seen = today(shop)
    assert seen.closed is not None
    assert (seen.closed.note, seen.closed.by) == ("call Oake", "MB")


async def test_a_wrong_amount_stays_and_a_counted_till_says_what_is_missing(shop: Shop) -> None:
    """Letters get a sentence and nothing is stored; what is missing is said on the line."""
    full_day(shop)
    desk = Desk(shop, "MB", Clock(EVENING))
    app = Host(desk, lambda: EveningScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("plus")
        await fill(pilot, "about nine")
        assert "“about nine” is no amount" in dump(app)
        await pilot.press("escape")
        assert "counted 8.50 by J: 0.50 MISSING" in " ".join(dump(app).split())


async def test_the_sheet_is_written_and_another_day_is_shown(shop: Shop) -> None:
    """Slash writes the sheet beside the shop file; left shows yesterday, right today, and there is nothing after."""
    full_day(shop)
    desk = Desk(shop, "MB", Clock(EVENING))
    app = Host(desk, lambda: EveningScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("slash")
        assert "Written to " in dump(app)
        await pilot.press("left")
        assert "Sun 8 Nov 2026, not closed yet" in dump(app)
        await pilot.press("d")
        assert "! That day is over" in dump(app)
        await pilot.press("right", "right")
        assert "! That day has not come." in dump(app)

    sheet = shop.path.parent / "papers" / "evening-2026-11-09.txt"
    assert "Ms Verrin" in sheet.read_text(encoding="utf-8")


async def test_hostile_names_are_shown_literally(shop: Shop) -> None:
    """Markup, emoji and three hundred letters stand as typed, each on lines no wider than the screen."""
    for name in HOSTILE_NAMES:
        move_knives(shop, by(), counter(shop, name=name).knives, Column.READY)
    desk = Desk(shop, "MB", Clock(EVENING))
    app = Host(desk, lambda: EveningScreen(desk))
    async with app.run_test(size=(120, 200)) as pilot:
        await pilot.pause()
        assert "[red]x[/]" in dump(app)


async def test_capital_z_leads_there_and_back(two_boxes: Shop) -> None:
    """From the board and back to it."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("Z")
        await until(pilot, lambda: isinstance(app.screen, EveningScreen))
        await pilot.press("Z")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
