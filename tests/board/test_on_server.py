"""The board of a shop on a server: other windows are seen, and a server that is away takes nothing that was typed."""

import pytest
from textual.widgets import Input

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.records.pointing import point
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.words import Column
from tests import engines, lending
from tests.board.answering import COUNTER
from tests.board.dump import dump
from tests.board.host import LARGE, Host, until
from tests.shop.place import NOW, box, by
from tests.wire import Wire

pytestmark = pytest.mark.server

AWAY = "The shop's server does not answer."
BACK = "The shop's server answers again."


async def test_what_another_window_does_shows_by_itself(two_boxes: Shop) -> None:
    """Nobody presses a key here: the app looks four times a second, and shows where the knives are now."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    window = open_shop(two_boxes.path)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        assert "on a server" in dump(app)
        before = dump(app)
        move_knives(window, by("K"), box(window, COUNTER).knives, Column.READY)
        close_shop(window)

        await until(pilot, lambda: dump(app) != before, turns=500)
        shown = app.desk.picture.box(COUNTER)
        assert shown is not None
        assert {knife.column for knife in shown.knives} == {Column.READY}


@pytest.mark.parametrize("without_a_word", [False, True])
async def test_what_was_typed_outlives_the_connection(two_boxes: Shop, *, without_a_word: bool) -> None:
    """While the server is away that is said, the words stay in their field, and Enter stores them once it is back.

    A connection that is cut says so; one on which nothing passes any more does not.
    """
    with Wire() as wire:
        window = _by_wire(two_boxes, wire)
        desk = Desk(window, "MB", lambda: NOW)
        about = box(window, COUNTER).box
        app = Host(desk, lambda: dialogs.NoteDialog(desk, about))
        async with app.run_test(size=LARGE, notifications=True) as pilot:
            await pilot.pause()
            field = app.screen.query_one(Input)
            field.value = "[b]typed before it went[/]"
            with wire.silent() if without_a_word else lending.away(window.path):
                app.look_around()
                await until(pilot, lambda: AWAY in " ".join(dump(app).split()))
                await pilot.press("enter")
                await pilot.pause()

                assert AWAY in " ".join(dump(app).split())
                assert field.value == "[b]typed before it went[/]"
                assert not app.left
            _wait_for_it_no_longer(window)
            app.look_around()
            await until(pilot, lambda: BACK in " ".join(dump(app).split()))
            await pilot.press("enter")
            await until(pilot, lambda: app.left)
        close_shop(window)

    assert box(two_boxes, COUNTER).box.note == "[b]typed before it went[/]"
    assert two_boxes.database.one("SELECT count(*) FROM history WHERE operation = 'note_box'") == 1


def _by_wire(shop: Shop, wire: Wire) -> Shop:
    """The same shop, reached by a wire."""
    path = shop.path.with_name("wired.qb")
    point(path, wire.address(engines.named(shop.path)))
    return open_shop(path)


def _wait_for_it_no_longer(shop: Shop) -> None:
    """End the pause in which a server that was away is left alone, and the try to reach it that goes on."""
    trying = shop.database.trying  # type: ignore[attr-defined]  # only a shop on a server has one
    assert trying is None or trying.over_within(30)
    shop.database.left_alone_until = 0.0  # type: ignore[attr-defined]  # as above
