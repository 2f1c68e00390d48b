"""Put a knife or a box on waiting, with what it waits for; or say that it goes on."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice
from queueboard.board.forms.form import Dialog
from queueboard.shop.waiting import box_waits, knives_wait
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import WaitingFor


class WaitingDialog(Dialog):
    """What does it wait for? A digit answers at once."""

    hint = "a digit takes its line · Enter the one shown · - or Esc leaves"

    def __init__(self, desk: Desk, about: Knife | Box) -> None:
        super().__init__(desk)
        self.about = about
        answers: list[tuple[str, WaitingFor | None]] = [(reason.value, reason) for reason in WaitingFor]
        if about.waiting_for is not None:
            answers.append(("nothing any more: it goes on", None))
        self.what: Choice[WaitingFor | None] = Choice(
            answers, at=len(answers) - 1 if about.waiting_for is not None else 0, across=False
        )

    def heading(self) -> str:
        if isinstance(self.about, Knife):
            return f"{self.about.tag} {self.about.kind} waits for"
        return f"The whole box {self.about.number}, {self.box_now(self.about.id).customer.name}, waits for"

    def fields(self) -> ComposeResult:
        yield self.what

    def go(self) -> None:
        if isinstance(self.about, Knife):
            self.done(self.attempt(knives_wait, (self.about,), self.what.value))
        else:
            self.done(self.attempt(box_waits, self.about, self.what.value))

    def anew(self) -> Dialog:
        return WaitingDialog(self.desk, self.now(self.about))
