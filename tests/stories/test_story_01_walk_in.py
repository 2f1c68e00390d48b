"""Story 1, the walk-in: Ms Verrin at the counter on Tuesday 10 November, four knives, told for 16:00 the same day.

The story is invented. What a chip adds is the business of the price list; here the box costs what was asked.
"""

import re
from collections.abc import Iterator
from datetime import UTC, date, datetime, time
from pathlib import Path

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.papers.day_sheet import day_sheet
from queueboard.papers.slips import handle_tags
from queueboard.phrases.money import amount
from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.receiving import receive_box
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewCustomer
from queueboard.words import CameBy, GoesBy, PromiseKind
from tests.board.dump import dump
from tests.board.host import LARGE
from tests.shop.place import chef, small_shop

TUESDAY = datetime(2026, 11, 10, 14, 20, tzinfo=UTC)
"""09:20 on the shop's wall."""

NAME = "Ms Verrin"
KEYS = (
    *("f4", *NAME, "enter", "enter"),
    *("4", "enter"),
    *("chef 20,chef 20 chip 2mm,paring,bread", "enter"),
    *("enter", "enter"),
)
"""From the board to the board: the bell, the name without a phone, the count, the knives, yes, back."""

MOST_KEYS = 45


def pressed(keys: tuple[str, ...]) -> list[str]:
    """Single keys, a text letter by letter."""
    names = {" ": "space", ",": "comma"}
    return [
        names.get(sign, sign) for key in keys for sign in ([key] if key in {"enter", "f4"} or len(key) == 1 else key)
    ]


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A shop that measures in centimetres and has given out 213."""
    made = small_shop(tmp_path)
    take_settings(
        made,
        Actor(initials="J", now=TUESDAY),
        seed_text("settings.toml").replace('length_unit = "in"', 'length_unit = "cm"'),
    )
    before = NewBox(
        new_customer=NewCustomer(name="Bo Oake"),
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=1,
        knives=(chef(),),
        number=213,
    )
    receive_box(made, Actor(initials="J", now=TUESDAY), before)
    yield made
    close_shop(made)


def test_the_keys_are_few() -> None:
    """The whole walk-in, the bell itself and the way back included, takes at most 45 keys beyond the name."""
    assert len(pressed(KEYS)) - len(NAME) <= MOST_KEYS


async def test_a_walk_in_told_for_the_same_day(shop: Shop) -> None:
    """214 is told for 16:00 with 31 minutes of work; it stands on the day's list, its tags have no price."""
    app = QueueboardApp(Desk(shop, "MB", lambda: TUESDAY))
    async with app.run_test(size=LARGE) as pilot:
        keys = pressed(KEYS)
        await pilot.press(*keys[:-2])
        await pilot.pause()
        asked = re.search(r"([0-9]+\.[0-9]{2}) USD, today 16:00\?", dump(app))
        assert asked is not None
        assert "4 of 4 typed · 31 min" in dump(app)
        await pilot.press("enter")
        assert isinstance(app.screen, ReceivedScreen)
        assert "4, four knives" in dump(app)
        await pilot.press("enter")
        assert isinstance(app.screen, BoardScreen)

    seen = look(shop, TUESDAY)
    box = seen.box(214)
    assert box is not None
    assert (box.customer.name, box.box.came_by, box.box.goes_by, box.box.counted) == (
        NAME,
        CameBy.COUNTER,
        GoesBy.PICK_UP,
        4,
    )
    assert amount(box.price_cents) == asked[1]
    assert box.promise is not None
    assert (box.promise.kind, box.promise.day, box.promise.at, box.promise.told_to) == (
        PromiseKind.BY_TIME,
        date(2026, 11, 10),
        time(16),
        NAME,
    )
    assert any("214 by 16:00, " in line and NAME in line for line in day_sheet(seen).splitlines())
    tags = handle_tags(box, seen)
    assert [tags.count(f"214-{number}\n") for number in range(1, 5)] == [1, 1, 1, 1]
    assert "due TUESDAY, 10 Nov" in tags
    assert "USD" not in tags
