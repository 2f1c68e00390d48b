"""Nothing is told by colour alone: whatever a colour sets apart also has a word or a sign.

What the walk through every screen (test_every_screen.py) asks of each of them is here too, with its controls.
"""

import re
from collections.abc import Iterator

from rich.color import Color
from textual.app import App, ComposeResult
from textual.content import Content
from textual.widget import Widget
from textual.widgets import DataTable, OptionList, Static

from queueboard.board.app import QueueboardApp
from queueboard.board.widgets.column_lines import CURSOR, MARK, SAME
from queueboard.edges.drift import Limits, Mark, Signal
from queueboard.phrases.chart import LOUD, POINT, chart_lines
from tests.board.dump import dump
from tests.board.host import LARGE, FakeDesk, Home, Host
from tests.busy_morning import busy_morning
from tests.pictures import picture

TELLS = re.compile(r"[!?▸▹*]|\b[A-Z]{2,}\b")
"""A sign, or a word in capitals."""
TO_CHOOSE_FROM = "OptionList, DataTable, Choice, ColumnView"


def coloured(app: App[int], variable: str) -> Iterator[str]:
    """What is drawn in a colour of the theme, piece by piece."""
    colour = Color.parse(app.get_css_variables()[variable])
    for strip in app.screen._compositor.render_strips():
        for segment in strip:
            if segment.style is not None and segment.style.color == colour and segment.text.strip():
                yield segment.text


def told_by_colour_alone(app: App[int]) -> list[str]:
    """What stands in the colour of trouble without a word or sign for it, and lists whose cursor has no sign."""
    loud = " ".join(coloured(app, "text-error"))
    alone = [loud] if loud and not TELLS.search(loud) else []
    lines = dump(app).splitlines()
    for widget in app.screen.query(TO_CHOOSE_FROM):
        rows = lines[widget.region.y : widget.region.bottom]
        if has_cursor(widget) and any(row.strip() for row in rows) and not any(CURSOR in row for row in rows):
            alone.append(f"{type(widget).__name__} has no {CURSOR}")
    return alone


def has_cursor(widget: Widget) -> bool:
    """Whether somebody can choose a line of it now."""
    if isinstance(widget, OptionList):
        return widget.display and widget.highlighted is not None
    return widget.display and (not isinstance(widget, DataTable) or widget.row_count > 0)


async def test_the_board_tells_each_state_in_words_too() -> None:
    """Each word in colour of a busy morning is one that tells by itself, and cursor, marks and the box have signs."""
    app = QueueboardApp(FakeDesk(busy_morning()))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("down", "asterisk")
        text = dump(app)

        assert not told_by_colour_alone(app)
        assert all(TELLS.search(part) for part in coloured(app, "text-error"))
        for sign in ("LATE", "WILL BE LATE", "TODAY", "TO FETCH", "WAIT", "REDO", "RUSH", CURSOR, SAME, MARK):
            assert sign in text, sign


def test_a_reading_out_of_its_limits_has_a_sign_of_its_own() -> None:
    """On the chart it is another sign than the readings within, and the limits are drawn."""
    limits = Limits(middle=200, low=150, high=250, most_range=80)
    inside = "\n".join(chart_lines([200, 210], limits))
    beyond = "\n".join(chart_lines([200, 400], limits, [Mark(1, Signal.BEYOND)]))

    assert LOUD != POINT
    assert LOUD not in inside
    assert LOUD in beyond


class Wordless(Home):
    """Red without a word for it, and a list without a sign for its cursor."""

    def compose(self) -> ComposeResult:
        yield Static(Content.styled("by and by", "$text-error"))
        yield OptionList("first", "second")


async def test_what_is_told_by_colour_alone_would_be_found() -> None:
    """The control: a sentence that is only red, and a cursor that is only a ground, are both found."""
    desk = FakeDesk(picture())
    app = Host(desk, lambda: Wordless(desk))
    async with app.run_test() as pilot:
        app.screen.query_one(OptionList).highlighted = 0
        await pilot.pause()

        assert told_by_colour_alone(app) == ["by and by", f"OptionList has no {CURSOR}"]
