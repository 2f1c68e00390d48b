"""How a step of a close-out is drawn: the question, what to be told, what may be known, the names side by side."""

from rich.text import Text
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.widgets import Static

from queueboard.board.screens.close_faces import Face


class StepView(Vertical):
    """One step, large; it knows nothing of what comes before or after."""

    def compose(self) -> ComposeResult:
        """Question, sentence, and what may be longer than the screen."""
        yield Static(id="question", markup=False)
        yield Static(id="trouble", markup=False)
        with VerticalScroll(id="body", can_focus=False):
            yield Horizontal(Static(classes="name", markup=False), Static(classes="name", markup=False), id="names")
            yield Static(id="lines", markup=False)

    def paint(self, face: Face) -> None:
        """Show what a step shows."""
        self.query_one("#question", Static).update(face.question)
        self.query_one("#lines", Static).update("\n".join(face.body))
        self.query_one("#names").display = bool(face.names)
        for panel, (caption, name) in zip(self.query(".name").results(Static), face.names, strict=False):
            panel.update(Text.assemble((caption, "dim"), "\n\n", (name, "bold")))

    def say(self, sentence: str) -> None:
        """Show a sentence under the question."""
        self.query_one("#trouble", Static).update(sentence)

    def to_top(self) -> None:
        """Show the beginning of what may be known."""
        self.query_one("#body").scroll_home(animate=False)

    def scroll_on(self, lines: int) -> None:
        """Show what is further down, or up."""
        self.query_one("#body").scroll_relative(y=lines, animate=False)
