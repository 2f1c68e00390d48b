"""A note on a knife or a box."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.shop.noting import note_box, note_knife
from queueboard.values.box import Box
from queueboard.values.knife import Knife


class NoteDialog(Dialog):
    """One line of the shop's own words; empty takes the note away."""

    hint = "Enter writes it · Esc leaves it as it was"

    def __init__(self, desk: Desk, about: Knife | Box) -> None:
        super().__init__(desk)
        self.about = about
        self.note = Field(about.note, typed_over=False)

    def heading(self) -> str:
        if isinstance(self.about, Knife):
            return f"Note on {self.about.tag} {self.about.kind} {self.about.mark}".rstrip()
        return f"Note on box {self.about.number}, {self.box_now(self.about.id).customer.name}"

    def fields(self) -> ComposeResult:
        yield Row(("note", self.note))

    def go(self) -> None:
        if isinstance(self.about, Knife):
            self.done(self.attempt(note_knife, self.about, self.note.value))
        else:
            self.done(self.attempt(note_box, self.about, self.note.value))

    def anew(self) -> Dialog:
        return NoteDialog(self.desk, self.now(self.about))
