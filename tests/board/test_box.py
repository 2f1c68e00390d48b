"""The screen of one box over a real shop file: what it shows, and that its keys reach the knife under the cursor."""

from dataclasses import replace
from functools import partial

import pytest

from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.box_history import BoxHistoryScreen
from queueboard.board.screens.box_money import BoxMoney
from queueboard.board.screens.box_shelf import BoxShelf
from queueboard.board.screens.dialogs.opening import FOR_BOX, FOR_EITHER, FOR_KNIFE
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import decline_knife, note_knife
from queueboard.shop.opening import Shop
from queueboard.shop.promising import promise
from queueboard.shop.waiting import knives_wait
from queueboard.values.new import NewPromise
from queueboard.words import Column, DeclineReason, PromiseKind, WaitingFor
from tests.board.answering import PARCEL
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, FakeDesk, Host, notices
from tests.pictures import HOSTILE_NAMES, TODAY, box_picture, customer, knife, picture
from tests.shop.place import NOW, box, by


def host(shop: Shop, number: int = PARCEL) -> Host:
    """An app that shows a box."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: BoxScreen(desk, box(shop, number).box.id))


async def test_plus_and_minus_move_the_knife_under_the_cursor(two_boxes: Shop) -> None:
    """A knife goes a column on and back; the cursor stays on it."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down", "plus", "plus", "minus")
        assert [k.column for k in box(two_boxes, PARCEL).knives] == [Column.RECEIVED, Column.ON_BENCH, Column.RECEIVED]

        await pilot.press("g")
        assert box(two_boxes, PARCEL).knives[1].column is Column.READY


async def test_nothing_moves_over_the_ends(two_boxes: Shop) -> None:
    """A received knife cannot go back; a sentence says so and nothing is stored."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        before = app.desk.picture.last_line
        await pilot.press("minus")

        assert app.desk.look().last_line == before


@pytest.mark.parametrize(
    ("key", "title"),
    [
        ("w", "100-1 chef waits for"),
        ("n", "Note on 100-1 chef"),
        ("dollar_sign", "Price of 100-1 chef"),
        ("p", "A second promise for box 100"),
    ],
)
async def test_keys_open_dialogs_for_what_is_under_the_cursor(two_boxes: Shop, key: str, title: str) -> None:
    """A letter opens its dialog, with the tag or box in its heading."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(key)
        await pilot.pause()

        assert isinstance(app.screen, Dialog)
        assert title in dump(app)


async def test_on_the_first_row_a_dialog_is_about_the_box(two_boxes: Shop) -> None:
    """The first row stands for the box; what needs a knife says so."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("up", "x")
        await pilot.pause()
        assert isinstance(app.screen, BoxScreen)

        await pilot.press("n")
        await pilot.pause()
        assert "Note on box 100, R. Tallis" in dump(app)


def test_every_dialog_key_has_its_dialog() -> None:
    """Each short name that a key of the screen asks for is known, once."""
    asked = {
        str(binding.action).split("'")[1]
        for binding in (*BoxScreen.BINDINGS, *BoxMoney.BINDINGS, *BoxShelf.BINDINGS)
        if not isinstance(binding, tuple) and binding.action.startswith("ask(")
    }

    assert asked == {*FOR_BOX, *FOR_EITHER, *FOR_KNIFE}
    assert len(asked) == len(FOR_BOX) + len(FOR_EITHER) + len(FOR_KNIFE)


async def test_history_of_the_box(two_boxes: Shop) -> None:
    """What was done to the box stands in words, newest first."""
    move_knives(two_boxes, by("K"), box(two_boxes, PARCEL).knives[:1], Column.ON_BENCH)
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("h")
        await pilot.pause()
        shown = dump(app)

        assert isinstance(app.screen, BoxHistoryScreen)
        assert shown.index("K: 100-1 moved to on bench") < shown.index("J: box 100 received")


async def test_a_box_that_leaves_meanwhile(two_boxes: Shop) -> None:
    """When another window closes the box the screen says so and its keys do nothing."""
    shown = box_picture(417)
    desk = FakeDesk(picture(shown))
    app = Host(desk, lambda: BoxScreen(desk, 417))
    async with app.run_test(size=SMALL) as pilot:
        desk.next_picture = replace(picture(), last_line=2)
        desk.look()
        assert isinstance(app.screen, BoxScreen)
        app.screen.show(desk.picture)
        await pilot.press("plus", "w")

        assert "This box has left the board" in dump(app)
        assert desk.done == []


async def test_hostile_texts_are_shown_literally() -> None:
    """Names, marks and wishes that look like markup are shown as they were typed."""
    for name in (name for name in HOSTILE_NAMES if name.isascii() and len(name) < 40):
        shown = box_picture(417, customer_=customer(name), knives_=(knife("417-1", mark=name, wish=name),), promises=())
        desk = FakeDesk(picture(shown))
        app = Host(desk, partial(BoxScreen, desk, 417))
        async with app.run_test(size=LARGE) as pilot:
            await pilot.pause()

            assert f"417 {name}" in dump(app)
            assert f"{name} · {name.upper()}" in dump(app)


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["small", "large"])
async def test_everything_of_one_box(two_boxes: Shop, size: tuple[int, int]) -> None:
    """Declined, waiting, noted, promised twice: all of it stands on one screen, at both sizes."""
    knives = box(two_boxes, PARCEL).knives
    decline_knife(two_boxes, by(), knives[0], DeclineReason.CRACKED, "at the heel")
    knives_wait(two_boxes, by(), knives[1:2], WaitingFor.BELTS)
    note_knife(two_boxes, by(), knives[2], "blue tape")
    promise(
        two_boxes,
        by(),
        box(two_boxes, PARCEL).box,
        NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="R. Tallis", reason="belts came late"),
    )
    app = host(two_boxes)
    async with app.run_test(size=size) as pilot:
        await pilot.press("down", "down")
        await pilot.pause()

        assert_screen(app, f"box-{size[0]}")


async def test_the_proof_card_is_written_as_text_and_as_a_page(two_boxes: Shop) -> None:
    """P writes both beside the shop's file, for the owner only, and says where; where it cannot it says why."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("P")
        await pilot.pause()
        papers = two_boxes.path.parent / "papers"
        names = sorted(path.name for path in papers.iterdir())
        assert names == [f"card-{PARCEL}.html", f"card-{PARCEL}.txt"]
        assert all(path.stat().st_mode & 0o077 == 0 for path in papers.iterdir())
        for path in papers.iterdir():
            path.unlink()
        papers.rmdir()
        papers.write_text("in the way")
        await pilot.press("P")
        await pilot.pause()

        assert any("could not be written" in said for said in notices(app))
