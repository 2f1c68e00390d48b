"""Knives that are in no box: note one that was found, and say what became of one."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.errors import ChangedError, TypedError
from queueboard.intake.lines import read_line
from queueboard.phrases.counts import found_knife_words
from queueboard.phrases.typed import parse_tag
from queueboard.shop.found_knives import found_into_box, note_found, settle_found
from queueboard.shop.picture import BoxPicture
from queueboard.values.found import FoundKnife


class NoteFoundDialog(Dialog):
    """What the knife is, as at receiving, and where it lies."""

    hint = "Enter on, at the end it is noted · Esc leaves"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.line = Field(hint="chef 20cm, red dot")
        self.place = Field(hint="wash sink, magnet rack, shelf F")

    def heading(self) -> str:
        return "A knife was found that is in no box"

    def fields(self) -> ComposeResult:
        yield Row(("knife", self.line))
        yield Row(("lies", self.place))

    def go(self) -> None:
        settings = self.desk.picture.settings
        tagged = self.desk.picture.knife(self.line.value.strip())
        if tagged is not None:
            raise TypedError(
                f"{tagged.tag} has its tag: it belongs to box {tagged.box_number}. L on the board goes there."
            )
        line = self.read(self.line, lambda text: read_line(text, settings))
        if line.count != 1:
            raise TypedError(f"{line.count} knives in one line; note them one by one.")
        knife = line.knife
        self.done(
            self.attempt(
                note_found, kind=knife.kind, length_mm=knife.length_mm, mark=knife.mark, place=self.place.value
            )
        )


class SettleFoundDialog(Dialog):
    """Into a box as a knife that came later, or in words: given to its owner, sent after a box."""

    def __init__(self, desk: Desk, found: FoundKnife) -> None:
        super().__init__(desk)
        self.found = found
        self.what = Choice([("it goes into a box", True), ("given to its owner, or what else became of it", False)])
        self.number = Field(hint="number of the box", check=self.box_typed)
        self.number_row = Row(("box", self.number))
        self.how = Field(hint="why it is theirs; or to whom it was given, and when")

    def heading(self) -> str:
        return f"What became of {found_knife_words(self.found, self.desk.picture.settings)}?"

    def fields(self) -> ComposeResult:
        yield self.what
        yield self.number_row
        yield Row(("how, why", self.how))

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        self.number_row.display = self.what.value

    def box_typed(self, text: str) -> BoxPicture:
        """The open box with the number typed; TypedError when there is none."""
        number = parse_tag(text).box
        box = self.desk.picture.box(number)
        if box is None:
            raise TypedError(f"There is no open box {number}. Type the number of the box.")
        return box

    def go(self) -> None:
        now = next((one for one in self.desk.picture.found if one.id == self.found.id), None)
        if now is None:
            raise ChangedError("That knife is off the list meanwhile; nothing was stored.")
        if not self.what.value:
            self.done(self.attempt(settle_found, now, self.how.value))
            return
        tag = self.attempt(found_into_box, now, self.read(self.number, self.box_typed).box, self.how.value)
        if tag is not None:
            self.app.notify(f"New tag {tag[0]} for the handle.", markup=False)
        self.done(tag)
