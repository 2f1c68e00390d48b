"""What was wrong? From a knife or a box to what is to be corrected."""

from collections.abc import Callable

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice
from queueboard.board.forms.form import Dialog
from queueboard.board.screens.customers import GiveBoxDialog, MergeDialog
from queueboard.board.screens.dialogs.correct import CorrectBoxDialog, CorrectCustomerDialog, CorrectKnifeDialog
from queueboard.board.screens.dialogs.lost import StrikeDialog
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife

Opens = Callable[[], Dialog]


class CorrectDialog(Dialog):
    """A typed mistake: whose line is it in? A digit opens that form."""

    hint = "a digit takes its line · Enter the one shown · - or Esc leaves"

    def __init__(self, desk: Desk, about: Knife | Box | Customer) -> None:
        super().__init__(desk)
        self.about = about
        self.what: Choice[Opens] = Choice(self.answers(), across=False)

    def answers(self) -> list[tuple[str, Opens]]:
        """The forms that can be opened from here, the nearest first."""
        if isinstance(self.about, Customer):
            return self._for_customer(self.about)
        box_id = self.about.box_id if isinstance(self.about, Knife) else self.about.id
        box = self.box_now(box_id)
        answers: list[tuple[str, Opens]] = [
            (
                f"box {box.box.number}: number, counts, how it came and goes",
                lambda: CorrectBoxDialog(self.desk, box.box),
            ),
            ("the box is somebody else's", lambda: GiveBoxDialog(self.desk, box_id)),
            *self._for_customer(box.customer),
        ]
        if isinstance(self.about, Knife):
            knife, tag = self.about, self.about.tag
            line = (f"knife {tag}: kind, length, edge, mark, wish", lambda: CorrectKnifeDialog(self.desk, knife))
            gone = (f"{tag} was never there, typed by mistake", lambda: StrikeDialog(self.desk, knife))
            return [line, *answers, gone]
        return answers

    def _for_customer(self, customer: Customer) -> list[tuple[str, Opens]]:
        return [
            ("the customer's name, phone, town, address", lambda: CorrectCustomerDialog(self.desk, customer)),
            ("the customer is entered twice", lambda: MergeDialog(self.desk, customer)),
        ]

    def heading(self) -> str:
        return "What was typed wrong?"

    def fields(self) -> ComposeResult:
        yield self.what

    def go(self) -> None:
        self.app.push_screen(self.what.value(), self._leave_too)

    def _leave_too(self, corrected: bool | None) -> None:
        """Leave with the form that was opened, when it corrected something."""
        if corrected:
            self.dismiss(True)
