"""The screen of a month: reading it, going to another, writing it out."""

from datetime import timedelta

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.month import MonthScreen
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.words import Column, Settling
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, until
from tests.shop.place import NOW, by, counter
from tests.shop.undo_charging import gone_as

LATER = NOW + timedelta(days=3)


def worked(shop: Shop) -> Desk:
    """A shop in which a box has gone on account and another is ready, three days later."""
    gone_as(shop, Settling.ON_ACCOUNT, name="[red]Oake[/]")
    move_knives(shop, by(minutes=24 * 60), counter(shop).knives, Column.READY)
    return Desk(shop, "MB", lambda: LATER)


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_the_screen_reads_at_both_sizes(
    size: tuple[int, int], shop: Shop, request: pytest.FixtureRequest
) -> None:
    """Figures, money, kinds and days, as far as the screen reaches."""
    desk = worked(shop)
    app = Host(desk, lambda: MonthScreen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"month-{request.node.callspec.id}")


async def test_left_and_right_go_through_the_months(shop: Shop) -> None:
    """Left is the month before, right comes back, and nothing lies beyond this month."""
    desk = worked(shop)
    app = Host(desk, lambda: MonthScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("left")
        assert "October 2026" in dump(app)
        assert "none" in dump(app)
        await pilot.press("plus")
        assert "November 2026, so far" in dump(app)
        await pilot.press("right")
        assert "! No figures reach beyond this month." in dump(app)


async def test_what_belongs_to_the_figures_is_a_key_away(shop: Shop) -> None:
    """What was said, and the charts, lie over the month; leaving them leads back to it."""
    desk = worked(shop)
    app = Host(desk, lambda: MonthScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("z")
        assert "What was said in the last year" in dump(app)
        await pilot.press("escape", "k")
        assert "▸5 chart" in dump(app)
        await pilot.press("escape")
        assert "November 2026, so far" in dump(app)


async def test_what_is_done_meanwhile_is_in_the_figures(shop: Shop) -> None:
    """Another window makes two more knives ready: the figures follow with the picture."""
    desk = worked(shop)
    app = Host(desk, lambda: MonthScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        assert "knives ready              4" in dump(app)
        move_knives(shop, by(minutes=25 * 60), counter(shop).knives, Column.READY)
        app.look_around()
        await pilot.pause()
        assert "knives ready              6" in dump(app)


async def test_slash_writes_it_to_a_file(shop: Shop) -> None:
    """The whole month lies in the folder of papers."""
    desk = worked(shop)
    app = Host(desk, lambda: MonthScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("slash")
        assert "Written to " in dump(app)

    paper = shop.path.parent / "papers" / "month-2026-11.txt"
    assert "owes most  18.00  [red]Oake[/]" in paper.read_text(encoding="utf-8")


async def test_capital_m_leads_there_and_back(two_boxes: Shop) -> None:
    """From the board and back to it."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("M")
        await until(pilot, lambda: isinstance(app.screen, MonthScreen))
        await pilot.press("M")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))


async def test_it_says_what_it_works_out(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """In a file of years the figures take a while: what is worked out stands there first, and goes when it is done."""
    desk = worked(shop)
    app = Host(desk, lambda: MonthScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert "Working out" not in dump(app)

        monkeypatch.setattr(app.screen, "call_after_refresh", lambda *_: True)
        await pilot.press("left")
        assert "Working out October 2026 …" in dump(app)
