"""People's texts made to break a screen, on every screen that is opened over the board.

Markup and sequences are on the screens kept as text, see test_every_screen.py.
"""

from pathlib import Path

import pytest

from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.every_screen import hostile_boxes, over_home, screens_over
from tests.board.host import SMALL
from tests.shop.place import another, started

FAMILY = "\U0001f469\u200d\U0001f469\u200d\U0001f467\u200d\U0001f466"
HOSTILE = {"a bracket before families": "[" + FAMILY * 20, "300 wide signs": "\u5203" * 300}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
async def test_every_screen_shows_it_literally(tmp_path: Path, text: str) -> None:
    """As name, note and thing it stays in its place: nothing fails, no line is too wide, no sequence comes through."""

    def hostile(path: Path) -> Shop:
        shop = another(started, path)
        hostile_boxes(shop, text)
        return shop

    hostile.__name__ = f"all called {text[:8]}"
    app = over_home(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        async for screen in screens_over(hostile, tmp_path, pilot):
            name = screen.desk.picture.boxes[0].customer.name
            screen.say(f"Said of {name}.", trouble=True)
            screen.notify(name, markup=False)
            await pilot.pause()
            dump(app)

            assert app.failure is None, type(screen)
