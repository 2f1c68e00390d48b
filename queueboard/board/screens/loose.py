"""A knife lies loose: what can be seen of it is typed, and the knives it could be stand below, the likeliest first."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.phrases import helping
from queueboard.phrases.loose import candidate_place, candidate_words, candidates_words, seen_words
from queueboard.shop.loose import Candidate, fitting, read_seen
from queueboard.shop.picture import Picture

MOST = 60
"""As many are shown; who has more than that in mind types one word more."""


class LooseScreen(ShopScreen[Candidate]):
    """Type kind, length and mark in any order; Enter leaves with the marked knife."""

    DEFAULT_CSS = """
    LooseScreen > #answer { margin: 1; width: 1fr; }
    LooseScreen > #understood { height: auto; max-height: 2; padding: 0 1; }
    LooseScreen > #knives { height: 1fr; }
    LooseScreen #candidates { height: auto; padding: 0 1; text-wrap: nowrap; text-overflow: ellipsis; }
    LooseScreen > #keys { dock: bottom; }
    """
    HELP = helping.LOOSE
    BINDING_GROUP_TITLE = "A loose knife"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "back to the board", id="loose.leave"),
        Binding("down,tab", "step(1)", "next knife", id="loose.next", priority=True),
        Binding("up,shift+tab", "step(-1)", "knife before", id="loose.before", priority=True),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.candidates: tuple[Candidate, ...] = ()
        self.place = 0

    def compose(self) -> ComposeResult:
        """The question, the answer line, what was understood, the knives, the keys."""
        yield Static("A loose knife: kind, length, mark, in any order; or its tag", id="heading", markup=False)
        yield AnswerLine(id="answer")
        yield Static(id="understood", markup=False)
        with VerticalScroll(id="knives", can_focus=False):
            yield Static(id="candidates", markup=False)
        yield Static("Enter to its box · * or ↓ next · / or ↑ before · F1 keys · . back", id="keys", markup=False)

    def on_mount(self) -> None:
        """Wait for the first letters."""
        line = self.query_one(AnswerLine)
        line.always = frozenset("*/")
        line.quick = frozenset(".,")
        line.focus()
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Look again for what was typed; the mark stays on its knife."""
        if not self.query("#answer"):
            return
        was = self.marked()
        try:
            seen = read_seen(self.query_one(AnswerLine).value, picture.settings)
        except TypedError as error:
            self.candidates, said = (), str(error)
        else:
            found = fitting(picture, seen)
            self.candidates = found[:MOST]
            said = f"{seen_words(seen)}: {candidates_words(len(found))}"
        same = [n for n, one in enumerate(self.candidates) if was is not None and one.knife.id == was.knife.id]
        self.place = same[0] if same else 0
        self.query_one("#understood", Static).update(Content(cell_text(said)))
        self._paint()

    def marked(self) -> Candidate | None:
        """The knife that Enter goes to."""
        return self.candidates[self.place] if self.place < len(self.candidates) else None

    def _paint(self) -> None:
        picture, lines = self.desk.picture, list[Content]()
        for place, one in enumerate(self.candidates):
            sign = "▸ " if place == self.place else "  "
            what = cell_text(candidate_words(one, picture.settings))
            lines.append(
                Content.assemble((f"{sign}{what}\n", "bold"), f"    {cell_text(candidate_place(one, picture.now))}\n")
            )
        self.query_one("#candidates", Static).update(Content.assemble(*lines))
        self.query_one("#knives").scroll_to(y=max(0, 2 * self.place - 4), animate=False)

    def on_input_changed(self, event: Input.Changed) -> None:
        """Every letter looks again; the likeliest is marked anew."""
        self.place, self.candidates = 0, ()
        self.show(self.desk.picture)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Leave with the marked knife."""
        marked = self.marked()
        if marked is not None:
            self.dismiss(marked)

    def on_answer_line_quick(self, event: AnswerLine.Quick) -> None:
        """The keys of the numeric pad."""
        if event.character in ".,":
            self.dismiss(None)
        else:
            self.action_step(1 if event.character == "*" else -1)

    def action_step(self, by: int) -> None:
        """Mark the next knife, round and round."""
        if self.candidates:
            self.place = (self.place + by) % len(self.candidates)
            self._paint()

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it above the knives."""
        self.query_one("#understood", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(None)
