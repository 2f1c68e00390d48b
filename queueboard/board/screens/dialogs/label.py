"""The return label of a box: whose it is, whether it is here, when it dies."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.parts import LabelPart
from queueboard.shop.labelling import label_bought, set_label
from queueboard.values.box import ReturnLabel
from queueboard.values.new import NewLabel
from queueboard.words import LabelState


class LabelDialog(Dialog):
    """Typed from the label itself; a label to buy that is here now counts as bought."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        label = self.unused()
        self.label = LabelPart(desk, label)
        if label is not None and label.state is LabelState.TO_BUY:
            self.label.standing.take((label.owner, LabelState.HERE))

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

    def go(self) -> None:
        new, label = self.label.read(self), self.unused()
        if label is not None and _bought(label, new):
            self.done(self.attempt(label_bought, label, new.expires_on, new.carrier))
        else:
            self.done(self.attempt(set_label, self.opened.box, new))

    def anew(self) -> Dialog:
        return LabelDialog(self.desk, self.opened.box.id)


def _bought(before: ReturnLabel, new: NewLabel) -> bool:
    """True when a label to buy is here now and is otherwise the same."""
    same = (before.owner, before.name_on) == (new.owner, new.name_on)
    return same and before.state is LabelState.TO_BUY and new.state is LabelState.HERE
