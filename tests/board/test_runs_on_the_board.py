"""Runs whose knives are moved on the board, by their own keys instead of those of the day list."""

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.records.runs import open_runs
from queueboard.shop.opening import Shop
from queueboard.shop.running import start_run
from tests.board.dump import dump
from tests.board.host import SMALL
from tests.shop.place import NOW, by, counter


async def test_moving_the_last_knives_of_a_run_says_that_it_is_over(shop: Shop) -> None:
    """Moved by hand one by one, only the last one ends the run, and says so."""
    knives = counter(shop).knives
    start_run(shop, by("MB"), "plain", knives, 90)
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        for knife in knives:
            assert "run of plain is over" not in dump(app)
            await pilot.press(*(("minus" if sign == "-" else sign) for sign in knife.tag), "plus")
            await pilot.pause()

        assert "The run of plain is over, its clock stands." in " ".join(dump(app).split())
    assert open_runs(shop.database) == ()
