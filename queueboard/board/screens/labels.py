"""Return labels to buy or to use, by the last day on which using them still works, worst first."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.dialogs.label import LabelDialog
from queueboard.clean import cell_text
from queueboard.phrases.boxes import due_words
from queueboard.phrases.labels import label_due_words, label_wants
from queueboard.shop.picture import Picture
from queueboard.values.label import LabelDue
from queueboard.words import LabelWord


class LabelsScreen(BoxListScreen):
    """What the labels demand; one key asks for the label that was bought."""

    BINDING_GROUP_TITLE = "On the labels"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,l,b", "label", "this label is bought, or its last day", id="labels.label"),
    ]
    KEYS = "Enter to this box · + it is bought, its last day · digits: a box · . back"

    def heading(self, picture: Picture) -> Content:
        """How many labels want something done, as the day line counts them; loudly how many come too late."""
        too_late = sum(due.word is LabelWord.TOO_LATE for due in picture.labels_due)
        loud = f" · {too_late} CANNOT BE USED IN TIME: call today" if too_late else ""
        to_do = picture.day_line.labels_due
        return Content.assemble(
            f"Return labels · {to_do} to do, {len(picture.labels_due) - to_do} good", (loud, "bold")
        )

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each label due, worst first; a sentence when there is none."""
        if not picture.labels_due:
            nothing = "No return label is due.\nA label is typed at the box: go to it and press l."
            return (Line(id="nothing", text=Content(nothing)),)
        return tuple(_line(due, picture) for due in picture.labels_due)

    def action_label(self) -> None:
        """Ask for the label itself: bought now, its last day, its carrier."""
        line = self.current()
        if line is None or line.number is None:
            self.say("Put the cursor on a label.", trouble=True)
            return
        box = self.desk.picture.box(line.number)
        if box is not None:
            self.app.push_screen(LabelDialog(self.desk, box.box.id))


def _line(due: LabelDue, picture: Picture) -> Line:
    box = picture.box_by_id(due.box_id)
    loud = "!! " if due.word is LabelWord.TOO_LATE else ""
    return Line(
        id=str(due.box_id),
        number=box.box.number,
        text=Content.assemble(
            (f"{loud}{label_due_words(due, picture.now.date())}", "bold"),
            f" · box {box.box.number} · {cell_text(box.customer.name)}\n",
            f"    {label_wants(due, picture)} · {due_words(box, picture.now)}\n",
        ),
    )
