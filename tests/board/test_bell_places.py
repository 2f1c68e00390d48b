"""The bell: one key from anywhere, and one back to the very place."""

import pytest
from textual.app import ComposeResult
from textual.events import Key
from textual.pilot import Pilot
from textual.widgets import Static
from textual.widgets.input import Selection

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.initials import InitialsScreen
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.walk_in import WalkInScreen
from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.host import LARGE, SMALL, Home, Host, until
from tests.board.ringing import board, top
from tests.board.typing import fill
from tests.shop.place import NOW, picture


async def test_everything_half_typed_is_there_again(two_boxes: Shop) -> None:
    """In the middle of a word of a form: value, cursor, marked letters, lines taken and sentence stay as they were."""
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("r")
        await fill(pilot, "tallis", "<2>", "<2>", "4", "5", "3 chef 8, horn", "bread")
        form = app.screen
        assert isinstance(form, ReceiveScreen)
        form.things.focus()
        await pilot.pause()
        await pilot.press("s", "h", "e", "a", "t", "h", "left", "left", "shift+left")
        await pilot.pause()
        before, selection = dump(app), form.things.selection
        assert selection == Selection(4, 3)

        await pilot.press("f4")
        top(app)
        await fill(pilot, "verrin")
        await pilot.press("f4")
        await until(pilot, lambda: app.screen is form)
        app.clear_notifications()
        await pilot.pause()

        assert form.focused is form.things
        assert (form.things.value, form.things.selection) == ("sheath", selection)
        assert dump(app) == before
        await pilot.press("f4")
        assert top(app).picker.picked is not None


PLACES: dict[str, tuple[str, ...]] = {
    "BoardScreen": (),
    "DayScreen": ("d",),
    "BoxesScreen": ("t",),
    "LabelsScreen": ("l", "1"),
    "BenchScreen": ("k",),
    "WeekScreen": ("h",),
    "SaidScreen": ("z",),
    "LateScreen": ("j",),
    "FindScreen": ("f", "x"),
    "HelpScreen": ("question_mark",),
    "BoxScreen": ("enter",),
    "PaymentDialog": ("enter", "y", "7"),
    "PromiseDialog": ("enter", "p", "f", "r"),
    "EdgeScreen": ("enter", "E", "2"),
    "BoxHistoryScreen": ("enter", "h"),
    "CloseOutScreen": ("c", "3"),
    "TrayDialog": ("plus", "2"),
    "UndoScreen": ("u",),
    "AnnounceScreen": ("R", "x", "y"),
}
"""Every kind of screen, with the keys that lead from the board to it and half-way into what is typed there."""


@pytest.mark.parametrize("place", PLACES)
async def test_the_bell_rings_on_every_screen_and_leads_back(place: str, two_boxes: Shop) -> None:
    """Whatever screen, dialog or field is open, F4 opens the walk-in, and F4 again shows the very same lines."""
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press(*PLACES[place])
        await pilot.pause()
        here, before, focused = app.screen, dump(app), app.screen.focused
        assert type(here).__name__ == place
        await pilot.press("f4")
        top(app)
        await pilot.press("f4")
        await until(pilot, lambda: app.screen is here)
        await pilot.pause()

        assert (dump(app), app.screen.focused) == (before, focused)
    assert len(picture(two_boxes).boxes) == 2


async def lost_by_the_bell(pilot: Pilot[int]) -> list[str]:
    """What is not as it was once the screen on top was left for a walk-in; the two it does not leave lose none."""
    app, here = pilot.app, pilot.app.screen
    if isinstance(here, WalkInScreen | InitialsScreen):
        return []
    before, focused = dump(app), app.focused
    await pilot.press("f4")
    if not isinstance(app.screen, WalkInScreen):
        return ["the bell does not ring"]
    await pilot.press("f4")
    await pilot.pause()
    if app.screen is not here:
        return [f"the bell leads back to {app.screen}"]
    return [] if (dump(app), app.focused) == (before, focused) else [f"it was\n{before}\nand is\n{dump(app)}"]


class Forgetful(Home):
    """Does not know what it was as soon as another screen lies over it."""

    def compose(self) -> ComposeResult:
        yield Static("here")

    def on_screen_suspend(self) -> None:
        self.query_one(Static).update("where?")


class Deaf(Home):
    """Keeps every key."""

    def take_first(self, key: Key) -> bool:
        return True


@pytest.mark.parametrize(("kind", "told"), [(Home, []), (Forgetful, ["it was"]), (Deaf, ["the bell"])])
async def test_what_the_bell_loses_is_seen(kind: type[Home], told: list[str], shop: Shop) -> None:
    """A screen that comes back otherwise is told, and one that is not left; one that stays as it was is not."""
    desk = Desk(shop, "MB", lambda: NOW)
    async with Host(desk, lambda: kind(desk)).run_test(size=SMALL) as pilot:
        assert [found[: len(told[0])] for found in await lost_by_the_bell(pilot)] == told


async def test_a_number_half_typed_stays(two_boxes: Shop) -> None:
    """On the board a tag that was begun is still begun; a 0 within it is a figure, not the bell."""
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("1", "0")
        before = dump(app)
        await pilot.press("f4", "f4")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.pause()

        assert dump(app) == before


@pytest.mark.parametrize("place", ["BoardScreen", "DayScreen", "WeekScreen", "BoxScreen"])
async def test_on_the_numeric_pad_0_is_the_bell(place: str, two_boxes: Shop) -> None:
    """No number begins with 0, so where one would begin it rings, and the place below stays open."""
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*PLACES[place])
        await pilot.pause()
        await pilot.press("0")
        top(app)
        await pilot.press("f4")
        await until(pilot, lambda: type(app.screen).__name__ == place)
