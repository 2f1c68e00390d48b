"""People's texts made to break a screen, on every screen that is opened over the board."""

from pathlib import Path

import pytest

from queueboard.board.desk import Desk
from queueboard.shop.noting import note_box, note_knife
from queueboard.shop.opening import Shop, close_shop
from tests.board.dump import dump
from tests.board.host import SMALL, Home, Host
from tests.board.test_bursts import SCREENS
from tests.shop.place import NOW, box, by, counter, parcel, shop_of, small_shop

SIGNS = "[red]x[/] [/] [@click=app.quit]x[/] \x1b[31mred\x1b[0m\x1b]0;title\x07 \u05d0\u05d1 \u202eleft\u202c"
FAMILY = "\U0001f469\u200d\U0001f469\u200d\U0001f467\u200d\U0001f466"
HOSTILE = {
    "markup and sequences": SIGNS,
    "a bracket alone": "[",
    "families": FAMILY * 20,
    "300 wide signs": "\u5203" * 300,
}


def hostile_shop(folder: Path, text: str) -> Shop:
    """Two boxes that carry the text wherever a person can write."""
    shop = small_shop(folder)
    parcel(shop, name=text, things=(text[:40],))
    counter(shop, name=text)
    note_box(shop, by(), box(shop, 101).box, text)
    note_knife(shop, by(), box(shop, 101).knives[0], text)
    return shop


def over_home(desk: Desk) -> Host:
    """An app to open screens in."""
    return Host(desk, lambda: Home(desk))


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
async def test_every_screen_shows_it_literally(tmp_path: Path, text: str) -> None:
    """As name, note and thing it stays in its place: nothing fails, no line is too wide, no sequence comes through."""
    first = hostile_shop(tmp_path, text)
    app = over_home(Desk(first, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        for kind, make in SCREENS.items():
            # Some screens do something to their shop before they open: each has its own.
            shop = shop_of(first.path.read_bytes(), tmp_path / f"{kind.__name__}.qb")
            screen = make(desk := Desk(shop, "MB", lambda: NOW))
            name = desk.picture.boxes[0].customer.name
            await app.push_screen(screen)
            screen.say(f"Said of {name}.", trouble=True)
            screen.notify(name, markup=False)
            await pilot.pause()
            shown = dump(app)

            assert app.failure is None, kind
            assert not {"\x1b", "\u202e"} & set(shown), kind
            await app.pop_screen()
            close_shop(shop)
    close_shop(first)
