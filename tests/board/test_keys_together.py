"""Keys that arrive in one piece, as over a slow line or from a reader of printed tags."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from textual.events import Key

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.widgets.tag_entry import TagEntry
from queueboard.shop.opening import close_shop
from tests.shop.place import demo_shop

MORNING = datetime(2026, 6, 10, 12, 30, tzinfo=UTC)
NAMES = {"-": "minus", "+": "plus", "*": "asterisk"}


@pytest.mark.parametrize(("together", "typed"), [("417", "417"), ("423-1", "423-1"), ("9", "9")])
async def test_keys_that_arrive_together_make_one_tag(tmp_path: Path, together: str, typed: str) -> None:
    """A tag whose signs come all at once is typed whole and moves nothing under the cursor."""
    shop = demo_shop(tmp_path / "demo.qb", MORNING)
    app = QueueboardApp(Desk(shop, "MB", lambda: MORNING))
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.pause()
        before = app.desk.picture.last_line

        for sign in together:
            app.post_message(Key(NAMES.get(sign, sign), sign))
        await pilot.pause()

        assert app.screen.query_one(TagEntry).typed == typed
        assert app.desk.look().last_line == before
    close_shop(shop)


async def test_a_key_behind_a_tag_is_about_the_tag(tmp_path: Path) -> None:
    """412-5 and the star in one piece put that knife into ready, not the one under the cursor."""
    shop = demo_shop(tmp_path / "demo.qb", MORNING)
    app = QueueboardApp(Desk(shop, "MB", lambda: MORNING))
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.pause()

        for sign in "412-5*":
            app.post_message(Key(NAMES.get(sign, sign), sign))
        await pilot.pause()

        moved = app.desk.look().knife("412-5")
        assert moved is not None
        assert moved.column.value == "ready"
    close_shop(shop)
