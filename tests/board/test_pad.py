"""The numeric pad alone: the four daily jobs on the invented shop, with no other key."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from textual.pilot import Pilot

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.summary import SummaryScreen
from queueboard.shop.opening import close_shop
from queueboard.words import Column
from tests.board.dump import dump
from tests.board.host import LARGE, SMALL
from tests.shop.place import demo_shop

MORNING = datetime(2026, 6, 10, 12, 30, tzinfo=UTC)
PAD = {"+": "plus", "-": "minus", "*": "asterisk", "/": "slash", ".": "full_stop", "\r": "enter"} | {
    digit: digit for digit in "0123456789"
}


async def pressed(pilot: Pilot[int], keys: str) -> str:
    """Press keys of the pad, none else; the words of the screen."""
    await pilot.press(*(PAD[key] for key in keys))
    await pilot.pause()
    return " ".join(dump(pilot.app).split())


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
async def test_the_four_daily_jobs_need_no_other_keys(tmp_path: Path, size: tuple[int, int]) -> None:
    """The day's work begins, knives move, what is late is seen, and a box goes, by digits, Enter, + - * / and point."""
    shop = demo_shop(tmp_path / "demo.qb", MORNING)
    desk = Desk(shop, "MB", lambda: MORNING)
    app = QueueboardApp(desk)

    def column(tag: str) -> Column | None:
        knife = desk.picture.knife(tag)
        return None if knife is None else knife.column

    async with app.run_test(size=size) as pilot:
        await pilot.pause()

        # The day's work: from the list to the run of box 430, begun with its clock, and back in one key.
        assert "Day list" in await pressed(pilot, ".")
        assert "UNDER WAY cleaver" in await pressed(pilot, "430+")
        assert column("430-1") is Column.ON_BENCH
        await pressed(pilot, ".")
        assert isinstance(app.screen, BoardScreen)

        # Knives: one on, one straight to ready, one back, and a box but for one of its knives.
        await pressed(pilot, "431-3+423-1*431-3\r-")
        assert (column("431-3"), column("423-1")) == (Column.RECEIVED, Column.READY)
        await pressed(pilot, "431+3\r")
        assert [column(f"431-{knife}") for knife in (1, 3, 4)] == [Column.ON_BENCH, Column.RECEIVED, Column.ON_BENCH]

        # Late: the line on top counts them, / shows them alone, and by how much stands on the box.
        late = await pressed(pilot, "/")
        assert "LATE 2" in late
        assert "shows only" in late
        assert "402 Piet" not in late
        assert "LATE by 17 h" in await pressed(pilot, "405.")
        await pressed(pilot, ".")
        assert isinstance(app.screen, BoardScreen)

        # Close-out: counted, names compared, fetched by the customer, paid in cash, gone.
        assert "Count what lies in front of you" in await pressed(pilot, "402/")
        await pressed(pilot, "3\r+\r1\r+")
        assert isinstance(app.screen, SummaryScreen), dump(app)
        await pressed(pilot, "\r")
        assert isinstance(app.screen, BoardScreen)
        assert desk.picture.box(402) is None
    close_shop(shop)
