"""The close-out of one box: the whole screen, one step at a time, each answer stored before the next step shows."""

import re
from typing import ClassVar

from rich.text import Text
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.widgets import Digits, Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.board.screens.close_answers import ANSWERS, GoOnTypingError
from queueboard.board.screens.close_faces import Face, Stand, face
from queueboard.board.screens.summary import SummaryScreen
from queueboard.errors import TypedError
from queueboard.shop import closing
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.words import CloseStep

LARGE = re.compile(r"[0-9]{1,4}(-[0-9]{0,3})?")
"""What is echoed large: a number or a tag."""


class CloseOutScreen(ShopScreen[None]):
    """Leads one box out of the shop. Leaving it at any step keeps what was stored; it goes on from there."""

    CSS_PATH = "close_out.tcss"
    BINDING_GROUP_TITLE = "In a close-out"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "leave, what is stored stays", id="close.leave"),
        Binding("up,pageup", "scroll(-1)", "scroll up", id="close.up", show=False),
        Binding("down,pagedown", "scroll(1)", "scroll down", id="close.down", show=False),
    ]

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        self.step: CloseStep | None = None
        self.gone = False

    def compose(self) -> ComposeResult:
        """The box, the question, what may be known, the answer, the keys."""
        yield Static(id="heading", markup=False)
        yield Static(id="question", markup=False)
        yield Static(id="trouble", markup=False)
        with VerticalScroll(id="body", can_focus=False):
            yield Horizontal(Static(classes="name", markup=False), Static(classes="name", markup=False), id="names")
            yield Static(id="lines", markup=False)
        with Horizontal(id="foot"):
            yield AnswerLine(id="answer")
            yield Digits(id="echo")
        yield Static(id="keys", markup=False)

    def on_mount(self) -> None:
        """Begin the close-out, or go on with the one that was left."""
        line = self.query_one(AnswerLine)
        line.quick = frozenset(".,")
        line.focus()
        box = self.box()
        if box is not None and box.close_out is None:
            self.attempt(closing.begin_close_out, box.box)
        else:
            self.show(self.desk.picture)

    def box(self) -> BoxPicture | None:
        """The box as the newest picture has it; None once it is gone."""
        return next((b for b in self.desk.picture.boxes if b.box.id == self.box_id), None)

    def stand(self) -> Stand | None:
        """Where the close-out stands; None when there is none."""
        box = self.box()
        if box is None or box.close_out is None or box.close_check is None:
            return None
        return Stand(picture=self.desk.picture, box=box, close=box.close_out, check=box.close_check)

    def show(self, picture: Picture) -> None:
        """Show the step that is due."""
        stand = self.stand()
        if self.gone or not self.children:
            return
        if stand is None:
            if self.step is not None:
                self.say("This close-out was ended in another window.", trouble=True)
            self.query_one("#keys", Static).update(". or escape back to the board")
            return
        self._say_what_changed(stand)
        self._paint(stand, face(stand))

    def _say_what_changed(self, stand: Stand) -> None:
        """A new step begins with a clean line for sentences; the trouble of its own step always shows."""
        if stand.check.step is not self.step or stand.check.trouble:
            self.query_one("#trouble", Static).update(stand.check.trouble)
        if stand.check.step is not self.step:
            self.query_one("#body").scroll_home(animate=False)
        self.step = stand.check.step

    def _paint(self, stand: Stand, shown: Face) -> None:
        self.query_one("#heading", Static).update(
            Text.assemble("Close-out · box ", (str(stand.box.box.number), "bold"), " · ", stand.box.customer.name)
        )
        self.query_one("#question", Static).update(shown.question)
        self.query_one("#lines", Static).update("\n".join(shown.body))
        self.query_one("#keys", Static).update(shown.keys)
        self.query_one(AnswerLine).quick = shown.quick | {".", ","}
        self.query_one("#names").display = bool(shown.names)
        for panel, (caption, name) in zip(self.query(".name").results(Static), shown.names, strict=False):
            panel.update(Text.assemble((caption, "dim"), "\n\n", (name, "bold")))

    def on_input_changed(self, event: Input.Changed) -> None:
        """Echo digits large."""
        self.query_one("#echo", Digits).update(event.value if LARGE.fullmatch(event.value) else "")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Take the answer; what was typed stays when it cannot be taken."""
        self.answer(event.value.strip())

    def on_answer_line_quick(self, event: AnswerLine.Quick) -> None:
        """A single key on the empty line."""
        if event.character in ".,":
            self.action_leave()
        elif event.character == "/":
            self._count_anew()
        else:
            self.answer(event.character)

    def answer(self, typed: str) -> None:
        """Hand an answer to the step that is due."""
        stand = self.stand()
        if stand is None:
            return
        if stand.check.step is CloseStep.GO:
            self._send_off(stand)
            return
        line = self.query_one(AnswerLine)
        last_line = self.desk.picture.last_line
        try:
            ANSWERS[stand.check.step](self, stand, typed)
        except GoOnTypingError as error:
            self.say(str(error), trouble=True)
            line.value = f"{typed} "
            line.action_end()
            return
        except TypedError as error:
            self.say(str(error), trouble=True)
        if self.desk.picture.last_line != last_line:
            line.clear()
        else:
            line.select_all()  # it stays to be mended, and the next key may as well replace it

    def _count_anew(self) -> None:
        """Drop what was counted and ticked, and begin with the blind count."""
        stand = self.stand()
        if stand is None or self.attempt(closing.leave_close_out, stand.close) is None:
            return
        box = self.box()
        if box is not None:
            self.attempt(closing.begin_close_out, box.box)

    def _send_off(self, stand: Stand) -> None:
        self.gone = True
        sent = self.attempt(closing.send_off, stand.close)
        if sent is None:
            self.gone = False
            self.show(self.desk.picture)
            return
        self.app.push_screen(SummaryScreen(self.desk, sent[0]), self._back)

    def _back(self, _: None) -> None:
        """The summary was read."""
        self.dismiss(None)

    def action_scroll(self, by: int) -> None:
        """Scroll what is known, when it is longer than the screen."""
        self.query_one("#body").scroll_relative(y=by * 5, animate=False)

    def action_leave(self) -> None:
        """Back to the board; what is stored stays, and the close-out goes on from there."""
        self.dismiss(None)

    def say(self, sentence: str, *, trouble: bool = False) -> None:
        """Say it where the eyes are, under the question; it stays until the next step."""
        self.query_one("#trouble", Static).update(sentence)
