"""Finding a box, open or gone, by name, tag, town or the last four of the phone; one sentence to read out."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.copying import copy_text
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.board.screens.find_cards import Cards, Match, card
from queueboard.board.screens.gone import GoneScreen
from queueboard.board.screens.message import MessageScreen
from queueboard.board.screens.paper_out import write_and_say
from queueboard.clean import cell_text
from queueboard.phrases import helping
from queueboard.phrases.dates import many
from queueboard.phrases.finding import apart_words
from queueboard.phrases.phone import answer, gone_answer
from queueboard.shop.finding import find
from queueboard.shop.picture import BoxPicture, Picture

CARD_WIDTH = 26
"""Cells that one match needs; as many stand side by side as fit."""
FEWEST_FOR_GONE = 2
"""From so many signs on boxes that are gone are looked for too."""


class FindScreen(ShopScreen[int | None]):
    """Type, and the boxes that fit stand side by side; Enter leaves with the number of the marked one."""

    CSS_PATH = "lists.tcss"
    HELP = helping.FIND
    BINDING_GROUP_TITLE = "Finding"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "back to the board", id="find.leave"),
        Binding("down,tab", "step(1)", "next match", id="find.next", priority=True),
        Binding("up,shift+tab", "step(-1)", "match before", id="find.before", priority=True),
        Binding("f8", "copy", "hand the sentence to the terminal to copy; + does too", id="find.copy"),
        Binding("f7", "message", "a message to this customer", id="find.message"),
        Binding("f9", "write", "write the sentence to a file", id="find.write"),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.matches: tuple[Match, ...] = ()
        self.place = 0

    def compose(self) -> ComposeResult:
        """The question, the answer line, the matches, the sentence, the keys."""
        yield Static(
            "Find: name, tag, town or the last four of the phone, words in any order", id="heading", markup=False
        )
        yield AnswerLine(id="answer")
        yield Static(id="found", markup=False)
        yield Cards(self._side_by_side())
        with VerticalScroll(id="aloud", can_focus=False):
            yield Static(id="sentence", markup=False)
        yield Static(id="typed", markup=False)
        keys = "Enter to it · + copy · F7 message · F9 file · ↓ next · ↑ before · F1 keys"
        yield Static(keys, id="keys", markup=False)

    def on_mount(self) -> None:
        """Wait for the first letters."""
        line = self.query_one(AnswerLine)
        line.always = frozenset("*/")
        line.quick = frozenset(".,")
        line.behind = frozenset("+")
        line.focus()
        # Not by the message of a change, which comes when the letter alone has been drawn.
        self.watch(line, "value", lambda: self.show(self.desk.picture))

    def show(self, picture: Picture) -> None:
        """Look again for what was typed; the mark stays on its box."""
        was = self.marked()
        typed = self.typed()
        gone = self.desk.gone(typed) if len(typed) >= FEWEST_FOR_GONE else ()
        self.matches = (*find(picture, typed), *gone)
        same = [n for n, box in enumerate(self.matches) if was is not None and box.box.id == was.box.id]
        self.place = same[0] if same else 0
        self._paint(typed)

    def typed(self) -> str:
        """What is looked for."""
        return self.query_one(AnswerLine).value.strip()

    def marked(self) -> Match | None:
        """The match that Enter goes to."""
        return self.matches[self.place] if self.place < len(self.matches) else None

    def sentence(self) -> str:
        """What is read aloud of the marked match; empty for none."""
        marked, picture = self.marked(), self.desk.picture
        if marked is None:
            return ""
        if isinstance(marked, BoxPicture):
            return answer(marked, picture)
        return gone_answer(marked, picture.now, picture.settings)

    def _paint(self, typed: str) -> None:
        picture, marked = self.desk.picture, self.marked()
        if marked is not None:
            apart = apart_words(marked.customer, [one.customer for one in self.matches])
            which = f"{many(len(self.matches), 'box')} · {self.place + 1} of {len(self.matches)} is marked"
            found = " · ".join(filter(None, (which, apart)))
        elif typed:
            found = "No box fits. Type less, or another way: tag, town, last four of the phone."
        else:
            found = f"{many(len(picture.boxes), 'box')} open."
        self.query_one("#found", Static).update(found, layout=False)
        whose = "" if marked is None else f"{marked.box.number} {cell_text(marked.customer.name)}\n"
        self.query_one("#sentence", Static).update(Content.assemble(whose, (cell_text(self.sentence()), "bold")))
        fit = self._side_by_side()
        first = max(0, min(self.place - fit // 2, len(self.matches) - fit))
        shown = [card(box, picture, marked=box is marked) for box in self.matches[first : first + fit]]
        self.query_one(Cards).lay(shown)

    def _side_by_side(self) -> int:
        """How many cards fit."""
        return max(1, self.app.size.width // CARD_WIDTH)

    def on_resize(self) -> None:
        """More or fewer stand side by side."""
        if self.children:
            self._paint(self.typed())

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Leave with the marked box; one that is gone is shown over this, since the board does not have it."""
        marked = self.marked()
        if isinstance(marked, BoxPicture):
            self.dismiss(marked.box.number)
        elif marked is not None:
            self.app.push_screen(GoneScreen(self.desk, marked), self.come_back)

    def come_back(self, number: int | None) -> None:
        """Leave with the call-back that was received for a box that is gone."""
        if number is not None:
            self.dismiss(number)

    def on_answer_line_quick(self, event: AnswerLine.Quick) -> None:
        """The keys of the numeric pad."""
        if event.character in ".,":
            self.dismiss(None)
        elif event.character == "+":
            self.action_copy()
        else:
            self.action_step(1 if event.character == "*" else -1)

    def action_step(self, by: int) -> None:
        """Mark the next match, round and round."""
        if self.matches:
            self.place = (self.place + by) % len(self.matches)
            self._paint(self.typed())

    def action_copy(self) -> None:
        """Hand the sentence to the terminal."""
        if said := self.sentence():
            copy_text(self, said, "F9 writes it to a file")

    def action_write(self) -> None:
        """Write the sentence beside the shop file and say where."""
        marked = self.marked()
        if marked is None:
            return
        write_and_say(self, f"said-{marked.box.number}.txt", f"{self.sentence()}\n", ".")

    def action_message(self) -> None:
        """Show the messages that could be told to the customer of the marked match."""
        marked = self.marked()
        if marked is not None:
            self.app.push_screen(MessageScreen(self.desk, marked.box.id))

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it below, where it covers nothing."""
        self.query_one("#typed", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(None)
