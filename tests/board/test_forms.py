"""The parts of forms alone: choices, ticks, and what is kept of a form."""

import shutil
from datetime import timedelta
from pathlib import Path

import pytest
from textual import events
from textual.app import App, ComposeResult
from textual.widgets import OptionList

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Taken, Tick
from queueboard.board.forms.kept import Kept
from queueboard.board.forms.parts import day_hint
from queueboard.board.forms.picker import matching
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.themes import DARK
from queueboard.phrases.typed import parse_day
from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.host import SMALL, Host, notices
from tests.board.typing import fill
from tests.pictures import HOSTILE_NAMES, customer
from tests.shop.place import NOW

GARBAGE = ["", "{", "null", '{"a": 1}', "[1, 2]", "\ufeff"]


class Asks(App[int]):
    """Three answers and a tick."""

    def __init__(self) -> None:
        super().__init__()
        self.register_theme(DARK)
        self.theme = DARK.name
        self.choice = Choice([("left", 1), ("[/] middle", 2), ("right", 3)])
        self.tick = Tick("[red]sure[/]")
        self.taken = 0

    def compose(self) -> ComposeResult:
        yield self.choice
        yield self.tick

    def on_taken(self, event: Taken) -> None:
        self.taken += 1


async def test_digits_and_arrows_choose() -> None:
    """Arrows move the mark round the ends, a digit takes its answer at once, one without an answer does nothing."""
    app = Asks()
    async with app.run_test() as pilot:
        await pilot.press("left")
        assert (app.choice.value, app.taken) == (3, 0)

        await pilot.press("2", "9", "0")
        assert (app.choice.value, app.taken) == (2, 1)


async def test_plus_and_minus_tick() -> None:
    """Plus ticks, minus takes the tick away, space turns it; answers are shown literally."""
    app = Asks()
    async with app.run_test() as pilot:
        app.tick.focus()
        await pilot.press("plus", "plus")
        assert app.tick.value

        await pilot.press("minus", "space")
        assert "[/] middle" in dump(app)
        assert "(x) [red]sure[/]" in dump(app)


def test_customers_are_matched_by_name_town_and_phone() -> None:
    """Every word typed must fit; accents and case do not matter; names that begin with it come first."""
    known = (
        customer("Ingrid Tällis", id=1, town="Dunmere", phone="555 0142"),
        customer("Anders Bertallis", id=2, town="Osterby", phone="555 0177"),
        customer("Tal Finch", id=3, town="Osterby", phone="555 0142"),
    )

    assert [c.id for c in matching(known, "tal")] == [1, 3, 2]
    assert [c.id for c in matching(known, "TAL oster")] == [3, 2]
    assert [c.id for c in matching(known, "0142")] == [1, 3]
    assert matching(known, "42") == ()
    assert matching(known, "  ") == ()


def test_hostile_names_are_found_by_themselves() -> None:
    """Whatever a name is made of, typing it finds it."""
    for name in HOSTILE_NAMES:
        assert [c.name for c in matching((customer(name),), name)] == [name]


def test_what_was_kept_comes_back(two_boxes: Shop) -> None:
    """Texts are kept as they are, readable by the owner only, until they are let go."""
    kept = Kept(Desk(two_boxes, "M/B", lambda: NOW), "receiving")
    kept.write(["[/]", "", "a\nb"])

    assert kept.read() == ["[/]", "", "a\nb"]
    assert kept.path.stat().st_mode & 0o077 == 0
    assert kept.path.name == f"{two_boxes.path.stem}-receiving-MB.json"

    kept.forget()
    assert kept.read() == []


@pytest.mark.parametrize("text", GARBAGE)
async def test_what_cannot_be_read_is_left_aside(two_boxes: Shop, text: str) -> None:
    """A damaged or foreign file of kept parts is no reason not to open an empty form."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    kept = Kept(desk, "receiving")
    kept.write([])
    kept.path.write_text(text, encoding="utf-8")
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()

        assert isinstance(app.screen, ReceiveScreen)
        assert not app.screen.touched


def put_in_the_way(folder: Path) -> None:
    """A file where a folder should be."""
    folder.write_text("in the way", encoding="utf-8")


async def test_a_disk_that_keeps_nothing_is_said(two_boxes: Shop) -> None:
    """When what is typed cannot be kept, a sentence says so and the form goes on."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    put_in_the_way(two_boxes.path.parent / "typed")
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL, notifications=True) as pilot:
        await pilot.press("b", "o", "enter", "enter", "enter", "enter")
        await pilot.pause()

        assert " ".join(dump(app).split()).count("against a power cut") == 1
        assert isinstance(app.screen, ReceiveScreen)
        assert app.screen.picker.new_name == "bo"


async def test_a_disk_that_keeps_nothing_is_said_once(two_boxes: Shop) -> None:
    """One notice stands however often Enter is pressed; once the disk has taken something, its next fault is new."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    folder = two_boxes.path.parent / "typed"
    put_in_the_way(folder)
    app = Host(desk, lambda: ReceiveScreen(desk))

    def told() -> int:
        return sum("cannot be kept" in one for one in notices(app))

    async with app.run_test(size=SMALL, notifications=True) as pilot:
        await fill(pilot, "bo", "555 0177", "Dunmere", "<1>", "<1>", "1", "", "chef 8")
        assert told() == 1
        app.clear_notifications()
        await fill(pilot, "chef 9")
        assert told() == 0

        folder.unlink()
        await fill(pilot, "chef 8")
        shutil.rmtree(folder)
        put_in_the_way(folder)
        await fill(pilot, "chef 9")
        assert told() == 1


async def test_only_plain_figures_choose_an_answer() -> None:
    """A figure of another kind chooses nothing and breaks nothing."""
    app = Asks()
    async with app.run_test(size=SMALL) as pilot:
        for figure in ("²", "٣", "３"):
            app.choice.post_message(events.Key("figure", figure))
        await pilot.pause()
        assert app.taken == 0
        await pilot.press("3")
        assert app.choice.value == 3


async def test_a_pasted_direction_mark_turns_no_line(two_boxes: Shop) -> None:
    """The field and its offer of a new customer hold what would be stored: no mark that turns letters round."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        assert isinstance(app.screen, ReceiveScreen)
        app.screen.picker.typed.post_message(events.Paste("Ab\u202eCd"))
        await pilot.pause()
        await pilot.press("e")
        await pilot.pause()
        shown = dump(app)

        assert app.screen.picker.typed.value == "AbCde"
        assert "new customer “AbCde”" in shown
        assert "\u202e" not in shown


class Types(App[int]):
    """One field."""

    def compose(self) -> ComposeResult:
        yield Field("dull")


async def test_lines_pasted_into_one_line_all_stand_in_it() -> None:
    """What was on several lines elsewhere is joined with spaces; nothing of it is dropped in silence."""
    app = Types()
    async with app.run_test(size=SMALL) as pilot:
        field = app.query_one(Field)
        field.post_message(events.Paste("leave the points\n  thin at the tip\r\n"))
        await pilot.pause()

        assert field.value == "leave the points thin at the tip"


async def test_signs_that_command_a_terminal_are_no_part_of_a_paste() -> None:
    """Colours, bells and other controls that come along with pasted text are left out; the text stays in its field."""
    app = Types()
    async with app.run_test(size=SMALL) as pilot:
        field = app.query_one(Field)
        field.post_message(events.Paste("sharp \x1b[31mtip\x1b[0m\x07, \x1bplease\x9b2J"))
        await pilot.pause()

        assert field.value == "sharp tip, please"


async def test_arrows_lead_out_of_the_phone_and_back_to_the_customer(two_boxes: Shop) -> None:
    """↑ from a new customer's phone goes to the name, as the foot says, and a letter typed then lands there."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, "Bren Oake")
        assert isinstance(app.screen, ReceiveScreen)
        picker = app.screen.picker
        assert app.screen.focused is picker.phone
        await pilot.press("up")
        assert app.screen.focused is picker.typed
        await pilot.press("down")
        assert app.screen.focused is picker.phone

        await pilot.press("up", "x")
        assert (picker.typed.value, picker.phone.value) == ("x", "")


async def test_arrows_choose_among_the_customers_that_fit(two_boxes: Shop) -> None:
    """While customers are offered ↓ and ↑ stay in the field and move the mark."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        assert isinstance(app.screen, ReceiveScreen)
        picker = app.screen.picker
        await pilot.press("t", "a", "l", "down")
        assert app.screen.focused is picker.typed
        assert picker.query_one(OptionList).highlighted == 1
        await pilot.press("up")
        assert picker.query_one(OptionList).highlighted == 0


@pytest.mark.parametrize("later", range(7))
def test_every_day_in_the_hint_can_be_typed(two_boxes: Shop, later: int) -> None:
    """What a form gives as an example is taken as it stands, on each day of a week: none is gone or asked back."""
    now = NOW + timedelta(days=later)
    hint = day_hint(Desk(two_boxes, "MB", lambda: now))

    days = {parse_day(typed, now.date()) for typed in hint.split(", ")[:3]}
    assert days == {now.date() + timedelta(days=1)}
