"""What stands on the screen as plain text, and its comparison with a text kept in tests/screens."""

import os
from pathlib import Path

from textual.app import App

SCREENS = Path(__file__).parents[1] / "screens"
UPDATE = "UPDATE_SCREENS"
"""Set this in the environment to write the kept texts anew; then read the difference before you keep it."""


def dump(app: App[int]) -> str:
    """The whole screen, each line without the blanks at its end; modal screens are drawn over what they cover."""
    width, height = app.size
    strips = app.screen._compositor.render_strips()
    lines = [strip.text.rstrip() for strip in strips[:height]]
    assert all(strip.cell_length <= width for strip in strips), "a line is wider than the screen"
    return "\n".join(lines) + "\n"


def assert_screen(app: App[int], name: str) -> None:
    """The screen is what tests/screens/NAME.txt holds."""
    now = dump(app)
    path = SCREENS / f"{name}.txt"
    if os.environ.get(UPDATE):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(now, encoding="utf-8")
    assert path.exists(), f"no screen is kept as {path}; look at it, then set {UPDATE}=1 to keep it:\n{now}"
    assert now == path.read_text(encoding="utf-8"), f"the screen differs from {path}; {UPDATE}=1 keeps this one:\n{now}"
