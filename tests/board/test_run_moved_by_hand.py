"""Knives of a run under way moved by the board's own keys: the board says what became of the run's clock."""

from datetime import timedelta
from pathlib import Path

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.records.runs import open_runs
from queueboard.shop.opening import close_shop
from queueboard.shop.running import start_run
from tests.board.dump import dump
from tests.board.host import LARGE
from tests.shop.place import NOW, by, counter, small_shop


@pytest.mark.parametrize(
    ("key", "minutes", "said"),
    [
        ("plus", 12, "after 12 min: its time counts."),
        ("plus", 2, "after 2 min, under a fifth of its 14 min: nothing is learned from its time."),
        ("minus", 12, "after 12 min: its time counts for nothing."),
    ],
)
async def test_the_last_knife_moved_says_that_the_run_is_over(
    tmp_path: Path, key: str, minutes: int, said: str
) -> None:
    """The first knife leaves the run going on and nothing is said of it; the last one ends its clock, and that is."""
    shop = small_shop(tmp_path)
    start_run(shop, by(), "plain", counter(shop, knives=2).knives, 90)
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW + timedelta(minutes=minutes)))

    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("down", key)
        await pilot.pause()
        assert len(open_runs(shop.database)) == 1
        assert "run of plain" not in dump(app)
        await pilot.press(*"100-2", key) if key == "plus" else await pilot.press("right", "down", key)
        await pilot.pause()

        assert not open_runs(shop.database)
        seen = " ".join(dump(app).replace("│", " ").split())
        assert f"The run of plain is over with that, {said}" in seen
        assert "u takes it back The run" in " ".join(seen.split())
    close_shop(shop)
