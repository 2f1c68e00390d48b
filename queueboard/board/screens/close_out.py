"""The close-out of one box: the whole screen, one step at a time, each answer stored before the next step shows."""

import re
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.widgets import Digits, Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.board.screens.close_answers import ANSWERS, GoOnTypingError
from queueboard.board.screens.close_faces import Stand, face, stand_of, title_of, with_beside
from queueboard.board.screens.close_view import StepView
from queueboard.board.screens.summary import SummaryScreen
from queueboard.errors import TypedError
from queueboard.phrases import helping
from queueboard.phrases.dates import many
from queueboard.shop import closing
from queueboard.shop.picture import Picture
from queueboard.values.box import CloseOut
from queueboard.words import CloseStep

LARGE = re.compile(r"[0-9]{1,4}(-[0-9]{0,3})?")
"""What is echoed large: a number or a tag."""


class CloseOutScreen(ShopScreen[None]):
    """Leads one box out of the shop. Leaving it at any step keeps what was stored; it goes on from there."""

    CSS_PATH = "close_out.tcss"
    HELP = helping.CLOSE_OUT
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
        self.refusal = ""
        """Why the last answer was not taken."""
        self.answering = False
        """True while an answer given here is being stored."""
        self.asked_anew: CloseOut | None = None
        """The close-out as it stood when / was pressed once."""

    def compose(self) -> ComposeResult:
        """The box, the question, what may be known, the answer, the keys."""
        yield Static(id="heading", markup=False)
        yield StepView(id="step")
        with Horizontal(id="foot"):
            yield Static("answer", id="answer-name", markup=False)
            yield AnswerLine(id="answer")
            yield Digits(id="echo")
        yield Static(id="keys", markup=False)

    def on_mount(self) -> None:
        """Begin the close-out, or go on with the one that was left."""
        line = self.query_one(AnswerLine)
        line.quick = frozenset(".,")
        line.focus()
        self.begin()
        self.show(self.desk.picture)

    def begin(self) -> None:
        """Begin a close-out where none is under way."""
        box = next((b for b in self.desk.picture.boxes if b.box.id == self.box_id), None)
        if box is not None and box.close_out is None:
            self.attempt(closing.begin_close_out, box.box)

    def show(self, picture: Picture) -> None:
        """Show the step that is due."""
        stand = stand_of(self.desk.picture, self.box_id)
        if self.gone:
            return
        self.query_one("#heading", Static).update(title_of(self.desk.picture, self.box_id))
        if stand is None:
            if self.step is not None and not self.answering:
                self.say("This close-out was ended in another window.", trouble=True)
            self.query_one("#keys", Static).update(". or Esc back to the board")
            return
        self._say_what_changed(stand)
        shown = face(with_beside(stand, self.desk))
        self.query_one(StepView).paint(shown)
        self.query_one("#keys", Static).update(shown.keys)
        self.query_one(AnswerLine).quick = shown.quick | {".", ","}

    def _say_what_changed(self, stand: Stand) -> None:
        """A new step begins with a clean line for sentences; the trouble of its own step always shows."""
        new = stand.check.step is not self.step
        if new and self.step is not None and not self.answering:
            # What is half typed was meant for the step before.
            self.query_one(AnswerLine).clear()
            self.refusal = "Another window has gone on with this close-out. Read the question again."
        if new or stand.check.trouble:
            self.query_one(StepView).say(self.refusal or stand.check.trouble)
        if new:
            self.query_one(StepView).to_top()
        self.step = stand.check.step

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
        self.asked_anew, self.refusal = None, ""
        stand = stand_of(self.desk.picture, self.box_id)
        if stand is None:
            return
        if stand.check.step is CloseStep.GO and typed in {"", "+"}:
            self._send_off(stand)
            return
        line, last_line = self.query_one(AnswerLine), self.desk.picture.last_line
        self.answering = True
        try:
            ANSWERS[stand.check.step](self, stand, typed)
        except GoOnTypingError as error:
            self.say(str(error), trouble=True)
            line.value = f"{typed} "
            line.action_end()
            return
        except TypedError as error:
            self.say(str(error), trouble=True)
        finally:
            self.answering = False
        if self.desk.picture.last_line != last_line:
            line.clear()
        else:
            line.select_all()  # it stays to be mended, and the next key may as well replace it

    def _count_anew(self) -> None:
        """Drop what was counted and begin with the blind count; ticks are dropped by a second press only."""
        stand = stand_of(self.desk.picture, self.box_id)
        if stand is not None and stand.close.ticked and self.asked_anew != stand.close:
            self.asked_anew = stand.close
            self.say(f"/ again drops the count and {many(len(stand.close.ticked), 'tick')}; any other answer goes on.")
            return
        self.answering = True
        if stand is not None and self.attempt(closing.leave_close_out, stand.close) is not None:
            self.begin()
        self.answering = False

    def _send_off(self, stand: Stand) -> None:
        self.gone = True
        sent = self.attempt(closing.send_off, stand.close)
        self.gone = sent is not None
        self.show(self.desk.picture)
        if sent is not None:
            self.app.push_screen(SummaryScreen(self.desk, sent[0]), self._summary_read)

    def _summary_read(self, _: None) -> None:
        self.dismiss(None)

    def action_scroll(self, by: int) -> None:
        """Scroll what is known, when it is longer than the screen."""
        self.query_one(StepView).scroll_on(by * 5)

    def action_leave(self) -> None:
        """Back to the board; what is stored stays, and the close-out goes on from there."""
        self.dismiss(None)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it where the eyes are, under the question; it stays until the next step.

        A refusal stays even where another window has gone a step further meanwhile.
        """
        self.refusal = f"! {sentence}" if trouble else ""
        self.query_one(StepView).say(self.refusal or sentence)
