"""Every word that really stands on a screen can be read, in each theme and on terminals of few colours.

Contrast ratio and relative luminance after WCAG 2.2 (see test_themes.py). The colours of 256 and of 16 are those that
Rich, which writes to the terminal, comes down to; its palette of 16 is the usual VGA one. A terminal may show its own.
"""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from rich.color import Color, ColorSystem
from rich.segment import Segment
from textual.app import App, ComposeResult
from textual.pilot import Pilot
from textual.theme import Theme
from textual.widgets import OptionList, Static

from queueboard.board.app import QueueboardApp
from queueboard.board.themes import EIGHT_BIT, SIXTEEN, THEMES, themes_for
from queueboard.board.widgets.head import ColumnHead
from tests.board.host import LARGE, SMALL, FakeDesk, Home, Host
from tests.board.test_themes import READABLE, contrast
from tests.busy_morning import busy_morning

SHOWN = {ColorSystem.TRUECOLOR: THEMES, ColorSystem.EIGHT_BIT: EIGHT_BIT, ColorSystem.STANDARD: SIXTEEN}
"""Which themes are worn where."""

everywhere = pytest.mark.parametrize("system", SHOWN, ids=lambda system: system.name)


def words(app: App[int]) -> Iterator[Segment]:
    """What is drawn with letters, figures or signs; lines and blocks that only part things are no text."""
    for strip in app.screen._compositor.render_strips():
        for segment in strip:
            if any(not sign.isspace() and not "\u2500" <= sign <= "\u259f" for sign in segment.text):
                yield segment


def pairs(app: App[int], system: ColorSystem) -> dict[tuple[str, str], str]:
    """Text and ground as drawn in a system of colours, with the words they were first seen on."""
    seen: dict[tuple[str, str], str] = {}
    for segment in words(app):
        style = segment.style
        assert style is not None
        assert style.color is not None
        assert style.bgcolor is not None
        text, ground = (style.bgcolor, style.color) if style.reverse else (style.color, style.bgcolor)
        drawn = (text.downgrade(system).get_truecolor().hex, ground.downgrade(system).get_truecolor().hex)
        seen.setdefault(drawn, segment.text.strip())
    return seen


async def too_weak(pilot: Pilot[int], system: ColorSystem) -> list[str]:
    """The pairs that cannot be read, in the themes worn there one after the other."""
    app, weak = pilot.app, list[str]()
    for shown in SHOWN[system]:
        theme = replace(shown, name=f"{shown.name} {system.name}")  # what is drawn in one may not stand for another
        app.register_theme(theme)
        app.theme = theme.name
        # No terminal wears two themes of one name, whose ground is the same.
        for options in app.screen.query(OptionList):
            options._clear_caches()
        for head in app.screen.query(ColumnHead):
            head._drawn.clear()
        await pilot.pause()
        for (text, ground), on in pairs(app, system).items():
            if contrast(text, ground) < READABLE:
                weak.append(f"{theme.name} {text} on {ground} {contrast(text, ground):.2f}: {on[:40]}")
    return weak


def test_a_terminal_of_fewer_colours_gets_its_own() -> None:
    """By what Rich says of the terminal; names and order are the same, so that key and choice are too."""
    assert (themes_for("standard"), themes_for("256"), themes_for("truecolor"), themes_for(None)) == (
        *(SIXTEEN, EIGHT_BIT, THEMES),
        THEMES,
    )
    for few in (SIXTEEN, EIGHT_BIT):
        assert [theme.name for theme in few] == [theme.name for theme in THEMES]


@pytest.mark.parametrize("theme", EIGHT_BIT, ids=lambda theme: theme.name)
def test_what_is_shown_over_ssh_stays_quiet(theme: Theme) -> None:
    """In 256 colours all grounds are greys, and the line under the cursor is read at 7 to 1 or more."""
    cursor = theme.variables["cursor-ground"]
    for ground in (theme.background, theme.surface, theme.panel, theme.variables["heading-ground"]):
        drawn = Color.parse(ground or "").downgrade(ColorSystem.EIGHT_BIT).get_truecolor()
        assert drawn.red == drawn.green == drawn.blue
    shown = Color.parse(cursor).downgrade(ColorSystem.EIGHT_BIT).get_truecolor().hex
    assert contrast(theme.variables["cursor-text"], shown) >= 7


@everywhere
def test_accent_and_lateness_stay_what_they_are(system: ColorSystem) -> None:
    """The accent is no grey anywhere and no olive over ssh; with high contrast what is late has 7 to 1 as well."""
    for theme in SHOWN[system]:
        accent = Color.parse(theme.accent or "").downgrade(system).get_truecolor()
        assert len({accent.red, accent.green, accent.blue}) > 1
        assert accent.red > accent.green > accent.blue or system is ColorSystem.STANDARD
    high = SHOWN[system][-1]
    late = Color.parse(high.error or "").downgrade(system).get_truecolor().hex
    assert contrast(late, high.background or "") >= 7


@everywhere
@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_the_busy_board_can_be_read(size: tuple[int, int], system: ColorSystem) -> None:
    """Late, due, quiet, marked and under the cursor: each word of a busy morning has its contrast in every theme."""
    app = QueueboardApp(FakeDesk(busy_morning()))
    async with app.run_test(size=size) as pilot:
        await pilot.press("down", "asterisk")
        assert not await too_weak(pilot, system)


async def unreadable(pilot: Pilot[int]) -> list[str]:
    """What cannot be read on the screen on top, hints and fields too, in any theme, in however few colours."""
    return [f"{found} ({system.name})" for system in SHOWN for found in await too_weak(pilot, system)]


class Faint(Home):
    """One word that can be read, and one that can hardly be."""

    def compose(self) -> ComposeResult:
        yield Static("clear")
        (faint := Static("faint")).styles.color = "#808080"
        faint.styles.background = "#707070"
        yield faint


async def test_what_cannot_be_read_is_seen() -> None:
    """In each of the nine themes the faint word is told, with its contrast, and nothing else."""
    desk = FakeDesk(busy_morning())
    async with Host(desk, lambda: Faint(desk)).run_test(size=SMALL) as pilot:
        found = await unreadable(pilot)

    assert len(found) == sum(map(len, SHOWN.values()))
    assert all(": faint (" in told for told in found)
