"""The return label of a box: whose it is, whether it is here, when it dies, and whether it says what is on file."""

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.label_part import LabelPart, address_of
from queueboard.clean import cell_text
from queueboard.phrases.comparing import compared_words, differs_words
from queueboard.shop.comparing_names import compare_label
from queueboard.shop.labelling import label_bought, set_label
from queueboard.values.box import ReturnLabel
from queueboard.values.compared import Compared
from queueboard.values.new import NewLabel
from queueboard.words import LabelState


class LabelDialog(Dialog):
    """Typed from the label itself; a label to buy that is here now counts as bought."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        label = self.unused()
        self.label = LabelPart(desk, label)
        self.note_name = Field("" if label is None else label.note_name, hint="where the note has one")
        self.note_address = Field(
            "" if label is None else label.note_address, hint="where the note has one", check=address_of
        )
        self.note = Vertical(
            Row(("name on note", self.note_name)), Row(("its address", self.note_address)), classes="auto"
        )
        self.said = Static("")
        if label is not None and label.state is LabelState.TO_BUY:
            self.label.standing.take((label.owner, LabelState.HERE))

    DEFAULT_CSS = "LabelDialog .auto { height: auto; } LabelDialog Static { height: auto; }"

    def unused(self) -> ReturnLabel | None:
        """The label still to be used, if there is one."""
        label = self.opened.label
        return label if label is not None and label.state is not LabelState.USED else None

    def heading(self) -> str:
        box = self.opened
        label = self.unused()
        now = f"; now: {label.owner.value}, {label.state.value}" if label is not None else ""
        return f"Return label of box {box.box.number}{now}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        yield self.label
        yield self.note
        yield self.said

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        """What is on file, and what differs from it, as far as it is typed."""
        here = self.label.standing.value[1] is LabelState.HERE
        self.note.display = self.said.display = here
        self.said.update(Content(cell_text("\n".join(compared_words(self.compared(), self.opened)))))

    def compared(self) -> Compared:
        """What is typed against what is on file."""
        return compare_label(
            self.opened.customer,
            (self.label.name_on.value, self.label.address_on.value),
            (self.note_name.value, self.note_address.value),
        )

    def go(self) -> None:
        new = self.label.read(self, note_name=self.note_name.value, note_address=self.note_address.value)
        found, label = self.compared(), self.unused()
        if new.state is LabelState.HERE and found.differences:
            self.insist(found, f"{differs_words(found)} The same key once more takes it all the same.")
        if label is not None and _bought(label, new):
            self.done(self.attempt(label_bought, label, new))
        else:
            self.done(self.attempt(set_label, self.opened.box, new))

    def anew(self) -> Dialog:
        return LabelDialog(self.desk, self.opened.box.id)


def _bought(before: ReturnLabel, new: NewLabel) -> bool:
    """True when a label to buy is here now and is still of the same owner."""
    return before.owner is new.owner and before.state is LabelState.TO_BUY and new.state is LabelState.HERE
