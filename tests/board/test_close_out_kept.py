"""The close-out screen left, opened again, or shared by two windows: what was stored stands, nothing is mixed up."""

from pathlib import Path

import pytest

from queueboard.board.screens.answer_line import AnswerLine
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.shop.closing import count, leave_close_out
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.values.box import CloseCheck, CloseOut
from queueboard.words import CloseStep
from tests import pictures as made
from tests.board.closing import host, ready, step, type_in
from tests.board.dump import dump
from tests.board.host import LARGE, SMALL, FakeDesk, Host
from tests.shop.place import by, parcel, picture, small_shop


async def test_another_window_ends_the_close_out(shop: Shop) -> None:
    """A close-out that another window gives up says so here, takes no answer any more, and . leads back."""
    number = ready(shop, parcel(shop, knives=2))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        box = picture(shop).box(number)
        assert box is not None
        assert box.close_out is not None
        leave_close_out(shop, by("K"), box.close_out)
        app.look_around()
        await pilot.pause()
        assert "ended in another window" in dump(app)
        await type_in(pilot, "2")
        assert step(shop, number) is None
        await pilot.press("escape")
        await pilot.pause()
        assert app.left


async def test_another_window_counts_first(shop: Shop) -> None:
    """Half a count typed here is not taken for the next step when another window has counted meanwhile."""
    number = ready(shop, parcel(shop, knives=2, things=("roll",)))
    app = host(shop, number)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("1")
        box = picture(shop).box(number)
        assert box is not None
        assert box.close_out is not None
        count(shop, by("K"), box.close_out, 2)
        app.look_around()
        await pilot.pause()
        assert "Another window has gone on with this close-out." in dump(app)
        assert app.screen.query_one(AnswerLine).value == ""


async def test_leaving_keeps_what_was_stored(shop: Shop) -> None:
    """. leaves in the middle; opened again, it stands at the same step with the same ticks."""
    number = ready(shop, parcel(shop, knives=3))
    app = host(shop, number)
    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "2", "1")
        await pilot.press("full_stop")
        await pilot.pause()
        assert app.left

    again = host(shop, number)
    async with again.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert f"✓ {number}-1" in dump(again)


STEPS: tuple[tuple[str, ...], ...] = (
    (),
    ("2",),
    ("2", "1"),
    ("2", "1", ""),
    ("2", "1", "", "lost"),
    ("2", "1", "", "lost", "1"),
    ("2", "1", "", "lost", "1", ""),
    ("2", "1", "", "lost", "1", "", "+"),
    ("2", "1", "", "lost", "1", "", "+", "+"),
    ("2", "1", "", "lost", "1", "", "+", "+", "4"),
)


@pytest.mark.parametrize("answers", STEPS, ids=len)
async def test_another_opening_stands_where_this_one_stood(tmp_path: Path, answers: tuple[str, ...]) -> None:
    """After each step the shop file alone brings back the very same screen, as after a power cut."""
    shop = small_shop(tmp_path)
    number = ready(shop, parcel(shop, knives=3, things=("roll", "sheath")))
    app = host(shop, number)
    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, *answers)
        stood = dump(app)

        second = open_shop(shop.path)
        again = host(second, number)
        async with again.run_test(size=SMALL) as other:
            await other.pause()
            assert dump(again) == stood
        close_shop(second)
    close_shop(shop)


@pytest.mark.parametrize("name", made.HOSTILE_NAMES)
async def test_the_names_stand_literally(name: str) -> None:
    """A name that looks like markup, an order or a formula stands in its frame as it was typed."""
    box = made.box_picture(
        417,
        customer_=made.customer(name),
        close_out=CloseOut(id=1, version=1, box_id=417, started_at=made.NOW, counted=1),
        close_check=CloseCheck(step=CloseStep.NAMES, going=(417003,)),
    )
    desk = FakeDesk(made.picture(box))
    app = Host(desk, lambda: CloseOutScreen(desk, 417))

    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        assert dump(app).count(name[:12]) >= 2
