"""The bases of the board's figures: the smallest apps that paint, answer a key, and take a typed character.

`python -m tests.bench.speed_bare still|typing` runs one on a terminal.
"""

import sys

from textual.app import App, ComposeResult
from textual.widgets import Input, Static


class StillApp(App[None]):
    """One line that says how often m was pressed."""

    BINDINGS = [("m", "more", "more")]
    pressed = 0

    def compose(self) -> ComposeResult:
        yield Static("pressed 0 times", id="status")

    def action_more(self) -> None:
        """Change the line."""
        self.pressed += 1
        self.query_one("#status", Static).update(f"pressed {self.pressed} times")


class TypingApp(App[None]):
    """One input."""

    def compose(self) -> ComposeResult:
        yield Input(placeholder="nothing typed")


if __name__ == "__main__":
    (TypingApp if sys.argv[1:] == ["typing"] else StillApp)().run()
