"""A box that will come by mail, from the call to its knives on the board, over a real shop file."""

from datetime import date

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.announce import AnnounceScreen
from queueboard.shop.opening import Shop
from queueboard.words import CameBy, GoesBy, LabelState, PromiseKind
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, picture
from tests.shop.undo_announcing import announced


def host(shop: Shop) -> Host:
    """An app that shows the form."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: AnnounceScreen(desk))


async def test_a_call_about_six_knives(shop: Shop) -> None:
    """Surname, six knives, Thursday: the earliest day stands below, F3 takes it, and the box is expected."""
    app = host(shop)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake", "555 0160", "Dunmere", "6", "thu")
        assert "earliest, if it comes by Thu 12 Nov: in hand by Wed 18 Nov" in dump(app)
        await fill(pilot, "<enter>", "<enter>", "<f3>", "<f2>")

        assert (app.left, app.answer) == (True, 100)

    stored = box(shop, 100)
    assert stored.box.announced
    assert (stored.box.expected_knives, stored.box.expected_on) == (6, date(2026, 11, 12))
    assert (stored.box.came_by, stored.box.goes_by, stored.box.carrier_days) == (CameBy.MAIL, GoesBy.PARCEL, 3)
    assert [(p.kind, p.day) for p in stored.promises] == [(PromiseKind.DAY, date(2026, 11, 18))]
    assert stored.label is not None
    assert stored.label.state is LabelState.TO_BUY
    assert stored.on_hand == ()


async def test_nobody_has_to_say_anything(shop: Shop) -> None:
    """A name alone is enough; no day is offered then."""
    app = host(shop)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake", "", "")
        assert "earliest" not in dump(app)
        await fill(pilot, "<f2>")
        assert app.left

    assert (box(shop, 100).box.expected_knives, box(shop, 100).box.expected_on) == (None, None)


@pytest.mark.parametrize(
    ("knives", "day", "says"),
    [
        ("none", "thu", "“none” is no count"),
        ("6", "2026-11-08", "2026-11-08 is over"),
        ("6", "31.2", "There is no 31.2"),
    ],
)
async def test_what_cannot_be_is_said_and_stays(shop: Shop, knives: str, day: str, says: str) -> None:
    """A count or a day that cannot be has its sentence; nothing typed is lost and nothing is stored."""
    app = host(shop)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake", "", "")
        screen = app.screen
        assert isinstance(screen, AnnounceScreen)
        screen.expected.knives.value, screen.expected.day.value = knives, day
        await fill(pilot, "<f2>")

        assert says in " ".join(dump(app).split())
        assert (screen.expected.knives.value, screen.expected.day.value) == (knives, day)

    assert picture(shop).boxes == ()


async def test_whoever_is_expected_is_said_to_be(shop: Shop) -> None:
    """Choosing a customer names the box that was announced before, so that it is not noted twice."""
    announced(shop)
    app = host(shop)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "oake")
        assert "Expected, + on it when it is here: 100." in dump(app)


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["small", "large"])
async def test_the_form_half_filled(shop: Shop, size: tuple[int, int]) -> None:
    """The form fits both sizes, with what can be told below it."""
    app = host(shop)
    async with app.run_test(size=size) as pilot:
        await fill(pilot, "Bren Oake", "555 0160", "Dunmere", "6", "thu")

        assert_screen(app, f"announce-{size[0]}")
