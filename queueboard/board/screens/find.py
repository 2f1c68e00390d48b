"""Finding a box by surname, tag, town or the last four of the phone; matches side by side, one sentence to read out."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.clean import cell_text
from queueboard.phrases.announced import expected_words
from queueboard.phrases.boxes import counts_words, due_words, ready_words, waits_words
from queueboard.phrases.dates import many
from queueboard.phrases.money import owed_words
from queueboard.phrases.phone import phone_sentence
from queueboard.shop.finding import find
from queueboard.shop.picture import BoxPicture, Picture

CARD_WIDTH = 26
"""Cells that one match needs; as many stand side by side as fit."""


class FindScreen(ShopScreen[int | None]):
    """Type, and the boxes that fit stand side by side; Enter leaves with the number of the marked one."""

    CSS_PATH = "lists.tcss"
    BINDING_GROUP_TITLE = "Finding"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "back to the board", id="find.leave"),
        Binding("down,tab", "step(1)", "next match", id="find.next", priority=True),
        Binding("up,shift+tab", "step(-1)", "match before", id="find.before", priority=True),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.matches: tuple[BoxPicture, ...] = ()
        self.place = 0

    def compose(self) -> ComposeResult:
        """The question, the answer line, the matches, the sentence, the keys."""
        yield Static("Find: surname, tag, town or the last four of the phone", id="heading", markup=False)
        yield AnswerLine(id="answer")
        yield Static(id="found", markup=False)
        yield Horizontal(id="cards")
        with VerticalScroll(id="aloud", can_focus=False):
            yield Static(id="sentence", markup=False)
        yield Static("Enter to this box · * or ↓ next · / or ↑ before · . or escape back", id="keys", markup=False)

    def on_mount(self) -> None:
        """Wait for the first letters."""
        line = self.query_one(AnswerLine)
        line.always = frozenset("*/")
        line.quick = frozenset(".,")
        line.focus()
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Look again for what was typed; the mark stays on its box."""
        was = self.marked()
        typed = self.query_one(AnswerLine).value.strip()
        self.matches = find(picture, typed) if typed else ()
        same = [n for n, box in enumerate(self.matches) if was is not None and box.box.id == was.box.id]
        self.place = same[0] if same else 0
        self._paint(typed)

    def marked(self) -> BoxPicture | None:
        """The match that Enter goes to."""
        return self.matches[self.place] if self.place < len(self.matches) else None

    def _paint(self, typed: str) -> None:
        picture, marked = self.desk.picture, self.marked()
        if marked is not None:
            found = f"{many(len(self.matches), 'box')} · {self.place + 1} of {len(self.matches)} is marked"
        elif typed:
            found = "No open box fits. Type less, or another way: tag, town, last four of the phone."
        else:
            found = f"{many(len(picture.boxes), 'box')} open."
        self.query_one("#found", Static).update(found)
        self.query_one("#sentence", Static).update(phone_sentence(marked, picture) if marked is not None else "")
        fit = max(1, self.app.size.width // CARD_WIDTH)
        first = max(0, min(self.place - fit // 2, len(self.matches) - fit))
        cards = self.query_one("#cards")
        with self.app.batch_update():
            cards.remove_children()
            for box in self.matches[first : first + fit]:
                cards.mount(Static(Content.assemble(card(box, picture, marked=box is marked)), classes="card"))

    def on_resize(self) -> None:
        """More or fewer stand side by side."""
        if self.children:
            self._paint(self.query_one(AnswerLine).value.strip())

    def on_input_changed(self, event: Input.Changed) -> None:
        """Every letter looks again."""
        self.show(self.desk.picture)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Leave with the marked box."""
        marked = self.marked()
        if marked is not None:
            self.dismiss(marked.box.number)

    def on_answer_line_quick(self, event: AnswerLine.Quick) -> None:
        """The keys of the numeric pad."""
        if event.character in ".,":
            self.dismiss(None)
        else:
            self.action_step(1 if event.character == "*" else -1)

    def action_step(self, by: int) -> None:
        """Mark the next match, round and round."""
        if self.matches:
            self.place = (self.place + by) % len(self.matches)
            self._paint(self.query_one(AnswerLine).value.strip())

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(None)


def card(box: BoxPicture, picture: Picture, *, marked: bool) -> Content:
    """One match, a line each; the mark is a sign, not only a colour."""
    phone = "".join(sign for sign in box.customer.phone if sign.isdigit())
    waits = waits_words(box, picture.now)
    lines = (
        cell_text(box.customer.name)[:60],
        cell_text(box.customer.town)[:60],
        f"phone ends in {phone[-4:]}" if phone else "no phone",
        ready_words(box),
        expected_words(box, picture.now.date()) if box.box.announced else counts_words(box),
        due_words(box, picture.now),
        owed_words(box.owed_cents, picture.settings),
        f"WAIT {waits}" if waits else "",
    )
    sign = "▸ " if marked else "  "
    return Content.assemble((f"{sign}{box.box.number}", "bold"), *(f"\n{line}" for line in lines if line))
