"""The very first drawing of the board: what lies in the shop stands in it already, and the plan follows."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from textual.geometry import Region
from textual.screen import Screen
from textual.strip import Strip

from queueboard.board import desk as desks
from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.top import DayTop
from queueboard.shop.looking import at_first_sight, look
from queueboard.shop.opening import Shop, close_shop
from queueboard.words import Lateness
from tests.board.host import LARGE, until
from tests.quick_screens import refresh_now
from tests.shop.place import NOW, counter, demo_shop, parcel


async def test_the_first_drawing_has_the_knives(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """No column is drawn for a width that it was not laid out for: without knives it is drawn in vain."""
    parcel(shop)
    drawn: list[tuple[int, str]] = []
    drawing = ColumnView.render_lines

    def remembered(self: ColumnView, crop: Region) -> list[Strip]:
        strips = drawing(self, crop)
        if self.rows and not crop.y:
            drawn.append((self.size.width, strips[0].text))
        return strips

    monkeypatch.setattr(ColumnView, "render_lines", remembered)
    monkeypatch.setattr(Screen, "_compositor_refresh", refresh_now)  # as it is on a terminal: drawn at each layout
    async with QueueboardApp(Desk(shop, "MB", lambda: NOW)).run_test(size=LARGE) as pilot:
        await pilot.resize_terminal(100, 40)
        await until(pilot, lambda: bool(drawn) and drawn[-1][0] < drawn[0][0])

    assert [text.strip() for _, text in drawn] == ["▸100 R. Tallis"] * len(drawn)


async def test_the_plan_follows_the_first_drawing(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """With much at the bench the top first says that the work is being worked out, then what a look says."""
    monkeypatch.setattr(desks, "MANY", 0)
    counter(shop, knives=3)
    desk = Desk(shop, "MB", lambda: NOW)
    assert desk.seen.plan_follows
    assert desk.seen.plan.runs == ()

    async with (app := QueueboardApp(desk)).run_test(size=LARGE) as pilot:
        top = app.screen.query_one(DayTop)
        assert not desk.seen.plan_follows or "work working out" in str(top.render())

        await until(pilot, lambda: not desk.seen.plan_follows, turns=1000)
        assert desk.seen == look(shop, NOW)


@pytest.mark.parametrize("days", [0, 3, 20])
def test_what_needs_no_plan_is_right_at_first_sight(tmp_path: Path, days: int) -> None:
    """All but the plan's own part is as a look has it: what came and is due, what is late already, the bench's day."""
    now = NOW + timedelta(days=days)
    shop = demo_shop(tmp_path / "demo.qb", NOW)

    seen, whole = at_first_sight(shop, now, 0), look(shop, now)
    close_shop(shop)

    assert seen.plan_follows
    assert not whole.plan_follows
    assert [box.box.id for box in seen.boxes] == [box.box.id for box in whole.boxes]
    for first, planned in zip(seen.boxes, whole.boxes, strict=True):
        of_the_plan = {name: getattr(planned, name) for name in ("forecast", "honest_day", "label_due")}
        assert replace(first, **of_the_plan) == planned
        assert (first.forecast.lateness is Lateness.LATE) == (planned.forecast.lateness is Lateness.LATE)
    assert seen.day_line.bench_minutes_left == whole.day_line.bench_minutes_left
    assert (seen.day_line.late, seen.day_line.leaves_today) == (whole.day_line.late, whole.day_line.leaves_today)


def test_little_at_the_bench_is_planned_at_first_sight(shop: Shop) -> None:
    """Below so many knives nobody has to wait for the plan."""
    counter(shop, knives=3)

    assert at_first_sight(shop, NOW, 4) == look(shop, NOW)
    assert at_first_sight(shop, NOW, 3).plan_follows
