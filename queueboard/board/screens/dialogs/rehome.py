"""A knife that lies in the wrong box: into which it goes, and why."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.errors import TypedError
from queueboard.phrases.knives import knife_name
from queueboard.phrases.typed import parse_tag
from queueboard.shop.picture import BoxPicture
from queueboard.shop.rehoming import found_among, move_to_box
from queueboard.values.knife import Knife


class MoveToBoxDialog(Dialog):
    """The number of the other box and the reason; of a knife that is looked for, in whose tray it was found."""

    hint = "Enter on, at the end it is moved · Esc leaves"

    def __init__(self, desk: Desk, knife: Knife) -> None:
        super().__init__(desk)
        self.knife = knife
        self.number = Field(hint="number of the other box", check=self.other_box)
        self.why = Field(hint="why; a knife never goes silently from one box to another")

    def heading(self) -> str:
        knife = f"{self.knife.tag} {knife_name(self.knife, self.desk.picture.settings)}"
        if self.knife.looking_for:
            return f"{knife} was found in another box's tray, and is back with its own"
        return f"{knife} goes into another box, with a new tag"

    def fields(self) -> ComposeResult:
        yield Row(("tray of box" if self.knife.looking_for else "into box", self.number))
        yield Row(("why", self.why))

    def other_box(self, text: str) -> BoxPicture:
        """The open box with the number typed; TypedError when there is none."""
        number = parse_tag(text).box
        box = self.desk.picture.box(number)
        if box is None:
            raise TypedError(f"There is no open box {number}. Type the number of the box.")
        return box

    def go(self) -> None:
        other = self.read(self.number, self.other_box).box
        if self.knife.looking_for:
            self.done(self.attempt(found_among, self.knife, other, self.why.value))
            return
        moved = self.attempt(move_to_box, self.knife, other, self.why.value)
        if moved is not None:
            self.app.notify(f"{self.knife.tag} is {moved[0]} now: write the new tag.", markup=False)
        self.done(moved)

    def anew(self) -> Dialog:
        return MoveToBoxDialog(self.desk, self.knife_now(self.knife))
