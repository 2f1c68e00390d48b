"""A window is made larger and smaller at any moment: on every screen the cursor and what is typed stay, in sight."""

from pathlib import Path

from textual.geometry import Region
from textual.widget import Widget
from textual.widgets import DataTable, Input, OptionList

from queueboard.board.app import QueueboardApp
from queueboard.board.forms.fields import Choice
from queueboard.board.screens.too_small import TooSmallScreen
from tests.board.dump import dump
from tests.board.every_screen import desks, opened, over_home
from tests.board.host import LARGE, SMALL, until

TINY = (59, 19)
HALF = "half a word"


def cursor(app: QueueboardApp) -> tuple[object, ...]:
    """The screen, what has the focus in it, what is typed there, which line is under the cursor."""
    focused = app.screen.focused
    match focused:
        case Input():
            return app.screen, focused, focused.value, focused.cursor_position
        case OptionList():
            return app.screen, focused, focused.highlighted
        case DataTable():
            return app.screen, focused, focused.cursor_coordinate
        case Choice():
            return app.screen, focused, focused.at
    return app.screen, focused


def lost(app: QueueboardApp) -> str:
    """What of the line with the cursor is out of sight; empty when none of it is."""
    focused = app.screen.focused
    if not isinstance(focused, Input):
        return ""
    seen = focused.region.intersection(Region(0, 0, *app.size))
    for above in focused.ancestors:
        if isinstance(above, Widget) and above is not app.screen:
            seen = seen.intersection(above.region)
    return "" if seen.height else f"{focused!r} is out of sight"


async def test_a_resized_window_keeps_the_cursor_on_every_screen(tmp_path: Path) -> None:
    """Small, too small and back, large, too small and back: the same screen, focus, line and half a word, in sight."""
    app, now, wrong = over_home(tmp_path), SMALL, []
    async with app.run_test(size=SMALL) as pilot:
        async for kind, make, desk in desks(tmp_path, pilot):
            await opened(make(desk), pilot)
            if isinstance(app.screen.focused, Input):
                app.screen.focused.insert_text_at_cursor(HALF)
                await pilot.pause()
            before, now = cursor(app), LARGE if now == SMALL else SMALL
            for size in (now, TINY, now):
                await pilot.resize_terminal(*size)
                await until(pilot, lambda size=size: isinstance(app.screen, TooSmallScreen) == (size == TINY))  # type: ignore[misc]  # bound at once
                if size == TINY:
                    assert "too small" in dump(app)
            if cursor(app) != before or lost(app):
                wrong.append(f"{kind.__name__}: {before} became {cursor(app)} {lost(app)}")
    assert not wrong, "\n".join(wrong)
