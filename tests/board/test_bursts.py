"""Keys that arrive in one burst on every screen: each acts once, where it belongs, and none of them fails."""

import asyncio
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from textual.await_complete import AwaitComplete
from textual.events import Key
from textual.pilot import Pilot
from textual.screen import Screen

from queueboard.board.base import ShopModal, ShopScreen, show_everywhere
from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog, Form
from queueboard.board.screens.box_list import BoxListScreen
from queueboard.board.screens.box_money import BoxMoney
from queueboard.board.screens.box_papers import BoxPapers
from queueboard.board.screens.box_shelf import BoxShelf
from queueboard.board.screens.day_cursor import RunCursor
from queueboard.board.screens.day_runs import DayRuns
from queueboard.board.screens.dialogs.call_back import CallBackAsked
from queueboard.board.screens.dialogs.numbers import Telling
from queueboard.board.screens.edge_view import EdgeView
from queueboard.board.screens.numbers import OwnNumbersScreen
from queueboard.shop.opening import Shop
from queueboard.shop.undoing import steps
from tests.board.all_screens import SCREENS
from tests.board.every_screen import desk_of, desks, over_home
from tests.board.host import SMALL, AnyScreen, Home, Host
from tests.shop.place import NOW, two_boxes

BURSTS = (("enter", "enter"), ("escape", "escape"), ("enter", "escape"), ("plus", "plus"), ("q", "u", "q"), ("1", "1"))
AT_ONCE = 8
"""Screens that stand one over the other when a board closes."""
SIGNS = {"plus": "+", "enter": "\r"}


def _kinds(of: type[AnyScreen]) -> Iterator[type[AnyScreen]]:
    for kind in of.__subclasses__():
        yield kind
        yield from _kinds(kind)


def test_every_screen_is_tried() -> None:
    """A screen that is added is tried with bursts too."""
    shared = {
        ShopModal,
        Form,
        Dialog,
        BoxListScreen,
        RunCursor,
        DayRuns,
        EdgeView,
        BoxPapers,
        BoxMoney,
        BoxShelf,
        CallBackAsked,
    }
    shared |= {OwnNumbersScreen, Telling}
    ours = {kind for kind in _kinds(ShopScreen) if kind.__module__.startswith("queueboard.board.screens")}
    at_home = {kind for kind in ours if kind.__module__.rpartition(".")[2].startswith("board")}

    assert ours - shared - at_home == set(SCREENS)


async def one_turn() -> None:
    """Let everything that is ready go on by one step."""
    turn = asyncio.get_running_loop().create_future()
    turn.get_loop().call_soon(turn.set_result, None)
    await turn


@pytest.mark.parametrize("burst", BURSTS, ids="-".join)
async def test_a_burst_of_keys_right_behind_the_one_that_opened_it(tmp_path: Path, burst: tuple[str, ...]) -> None:
    """Keys that come before a screen stands fail nowhere, store nothing twice and leave what lies below."""
    app, wrong = over_home(tmp_path), []
    async with app.run_test(size=SMALL) as pilot:
        async for kind, make, desk in desks(tmp_path, pilot):
            screen = make(desk)
            before, below = len(steps(desk.shop, "MB")), list(app.screen_stack)
            app.push_screen(screen)
            for key in burst:
                app.post_message(Key(key, SIGNS.get(key, key if len(key) == 1 else None)))
            await pilot.pause()
            await pilot.pause()

            assert app.failure is None, kind.__name__
            assert app.screen_stack[: len(below)] == below, kind.__name__
            done = len(steps(desk.shop, "MB")) - before
            if done > 1 and isinstance(screen, Dialog):
                wrong.append(f"{kind.__name__} stored {done} times")
    assert not wrong


async def taken_along(pilot: Pilot[int]) -> list[str]:
    """What leaves besides, when the screen on top is left twice at once."""
    app, (below, screen) = pilot.app, pilot.app.screen_stack[-2:]
    screen.dismiss(None)
    screen.dismiss(None)
    await pilot.pause()
    return [] if app.screen is below else [f"{app.screen} is on top in place of {below}"]


class Rude(Home):
    """Leaves as Textual would let it: whatever lies on top goes."""

    def dismiss(self, result: None = None) -> AwaitComplete:
        return Screen.dismiss(self, result)


@pytest.mark.parametrize(("kind", "taken"), [(Home, 0), (Rude, 1)])
async def test_what_leaves_besides_is_seen(kind: type[Home], taken: int, shop: Shop) -> None:
    """A screen that takes the one below along is told, one that leaves alone is not."""
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL) as pilot:
        await app.push_screen(kind(desk))
        assert len(await taken_along(pilot)) == taken


async def test_what_is_shown_goes_past_a_screen_that_still_opens(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another window's picture, or an action that ends, while a screen is put together: neither finds it lacking."""
    monkeypatch.setattr(Desk, "is_stale", lambda _: True)  # another window writes all the time
    app = over_home(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        async for kind, make, desk in desks(tmp_path, pilot):
            screen = make(desk)
            app.push_screen(screen)
            while not screen.is_mounted:
                app.look_around()
                show_everywhere(app)
                await one_turn()
            app.look_around()
            await pilot.pause()

            assert app.failure is None, kind.__name__


@pytest.mark.parametrize("first", range(0, len(SCREENS), AT_ONCE))
async def test_a_board_that_closes_looks_no_more(tmp_path: Path, first: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """While a board is taken apart, part by part, no new picture is shown on what is left of its screens."""
    app, looking = over_home(tmp_path), None
    monkeypatch.setattr(app.desk, "is_stale", lambda: True)

    async def look_on() -> None:
        while app.screen_stack:
            app.look_around()
            await one_turn()

    with ExitStack() as shops:
        async with app.run_test(size=SMALL) as pilot:
            for kind, make in list(SCREENS.items())[first : first + AT_ONCE]:
                desk = shops.enter_context(desk_of(two_boxes, tmp_path / f"{kind.__name__}.qb"))
                await app.push_screen(make(desk))
            await pilot.pause()
            assert len(app.screen_stack) > 2
            looking = asyncio.create_task(look_on())

        await looking
    assert app.failure is None
