"""The week ahead: what is booked of what is there, what is due, closures by name, and the ways there and back."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.week import WeekScreen
from queueboard.shop.opening import Shop, close_shop
from queueboard.values.plan import Overload
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, FakeDesk, Host, until
from tests.shop.place import NOW, counter, parcel, picture, small_shop


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A shop with work for more than a day."""
    made = small_shop(tmp_path)
    for _ in range(4):
        counter(made, knives=6)
    parcel(made, knives=9)
    yield made
    close_shop(made)


def host(shop: Shop, *, closed: str = "the fair") -> Host:
    """The week over the shop's picture, with Thursday closed and far too much promised before Tuesday's end."""
    seen = picture(shop)
    seen = replace(
        seen,
        closed_days=((date(2026, 11, 12), closed),),
        plan=replace(seen.plan, overloads=(Overload(before=NOW.replace(day=10), minutes=90),)),
    )
    desk = FakeDesk(seen)
    return Host(desk, lambda: WeekScreen(desk))


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_the_week_reads_at_both_sizes(size: tuple[int, int], shop: Shop, request: pytest.FixtureRequest) -> None:
    """The whole screen is as it was last looked at; all of it is in sight at 80x24."""
    app = host(shop)

    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"list-week-{request.node.callspec.id}")


async def test_the_name_of_a_closure_is_literal(shop: Shop) -> None:
    """What looks like markup in the name of a closure stands there as it was typed."""
    app = host(shop, closed="[red]fair[/] [@click=app.quit]x[/]")

    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        assert "CLOSED · [red]fair[/] [@click=app.quit]x[/]" in dump(app)


async def test_h_leads_from_the_board_to_the_week_and_from_the_day_list_too(shop: Shop) -> None:
    """The point leads back to where one was."""
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("h")
        await until(pilot, lambda: isinstance(app.screen, WeekScreen))
        await pilot.press("full_stop")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("d")
        await until(pilot, lambda: isinstance(app.screen, DayScreen))
        await pilot.press("h")
        await until(pilot, lambda: isinstance(app.screen, WeekScreen))
        await pilot.press("full_stop")
        await until(pilot, lambda: isinstance(app.screen, DayScreen))
