"""A box that is only announced: it is here, comes otherwise, or does not come."""

from collections.abc import Callable

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.parts import ExpectedPart
from queueboard.board.screens.dialogs.knives import OpenBoxDialog
from queueboard.phrases.announced import expected_words, told_date_words
from queueboard.shop.announcing import arrived, call_off, expect_box


class AnnouncedDialog(Dialog):
    """What became of it? A digit answers at once, or opens its own question."""

    hint = "a digit takes its line · Enter the one shown · - or Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        self.what: Choice[Callable[[], None]] = Choice(
            [
                ("it is here: open and count it now", lambda: self.ask(OpenBoxDialog(self.desk, box_id))),
                ("it is here, and is opened later", self.arrive),
                ("it comes on another day, or with another count", lambda: self.ask(ExpectDialog(self.desk, box_id))),
                ("it does not come", lambda: self.ask(CallOffDialog(self.desk, box_id))),
            ],
            across=False,
        )

    def heading(self) -> str:
        return f"Box {self.opened.box.number}, {self.opened.customer.name}"

    def fields(self) -> ComposeResult:
        today = self.desk.picture.now.date()
        yield Static(Content(f"{expected_words(self.opened, today)}; {told_date_words(self.opened, today)}"))
        yield self.what

    def go(self) -> None:
        self.what.value()

    def arrive(self) -> None:
        """It stands in the door, unopened."""
        self.done(self.attempt(arrived, self.opened.box))

    def ask(self, question: Dialog) -> None:
        """Ask one question more; this one leaves with it when it was answered."""
        self.app.push_screen(question, self._leave_too)

    def _leave_too(self, answered: bool | None) -> None:
        if answered:
            self.dismiss(True)

    def anew(self) -> Dialog:
        return AnnouncedDialog(self.desk, self.opened.box.id)


class ExpectDialog(Dialog):
    """How many knives it should hold, and when it should come, said anew."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        self.expected = ExpectedPart(desk, self.opened.box)

    def heading(self) -> str:
        return f"What is expected of box {self.opened.box.number}, {self.opened.customer.name}?"

    def fields(self) -> ComposeResult:
        yield self.expected

    def go(self) -> None:
        expected = self.expected.read(self)
        self.done(self.attempt(expect_box, self.opened.box, expected.knives, expected.comes_on))

    def anew(self) -> Dialog:
        return ExpectDialog(self.desk, self.opened.box.id)


class CallOffDialog(Dialog):
    """Why it does not come; it leaves the board."""

    hint = "Enter takes it off the board · Esc leaves it expected"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        self.why = Field(hint="such as: they need them at home")

    def heading(self) -> str:
        return f"Why does box {self.opened.box.number}, {self.opened.customer.name}, not come?"

    def fields(self) -> ComposeResult:
        yield Row(("why", self.why))

    def go(self) -> None:
        self.done(self.attempt(call_off, self.opened.box, self.why.value))

    def anew(self) -> Dialog:
        return CallOffDialog(self.desk, self.opened.box.id)
