"""Where much lies at the bench, what a key has done is shown before the plan, which is marked as being worked out."""

import pytest

from queueboard.board import desk as desks
from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.top import DayTop
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.words import Column
from tests.board.host import LARGE, until
from tests.shop.place import NOW, counter


async def test_a_moved_knife_stands_in_its_column_before_its_plan(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """The top says that the work is being worked out until the keys are quiet; then it is what a fresh look says."""
    monkeypatch.setattr(desks, "MANY", 0)
    counter(shop, knives=3)
    desk = Desk(shop, "MB", lambda: NOW)
    app = QueueboardApp(desk)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("down", "plus")
        bench = next(view for view in app.screen.query(ColumnView) if view.column is Column.ON_BENCH)
        top = app.screen.query_one(DayTop)

        assert sum(row.knife is not None for row in bench.rows) == 1
        assert not desk.seen.plan_follows or "work working out" in str(top.render())

        await until(pilot, lambda: not desk.seen.plan_follows, turns=1000)
        assert desk.seen == look(shop, NOW)
        assert "working out" not in str(top.render())


def test_who_asks_for_the_plan_gets_it(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """A screen that opens right behind a key reads desk.picture, which has its plan; what was seen before has not."""
    monkeypatch.setattr(desks, "MANY", 0)
    desk = Desk(shop, "MB", lambda: NOW)
    counter(shop)
    glanced = desk.glance()

    assert glanced.plan_follows
    assert glanced.plan.runs == ()
    assert desk.picture == look(shop, NOW)
    assert desk.seen is desk.picture
