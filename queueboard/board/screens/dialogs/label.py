"""The return label of a box: whose it is, whether it is here, when it dies."""

from datetime import date

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.screens.dialogs.promise import DAY_HINT
from queueboard.phrases.typed import parse_day
from queueboard.shop.labelling import label_bought, set_label
from queueboard.values.box import ReturnLabel
from queueboard.values.new import NewLabel
from queueboard.words import LabelOwner, LabelState


class LabelDialog(Dialog):
    """Typed from the label itself; a label to buy that is now here counts as bought."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        label = self.label_now()
        self.whose = Choice([(owner.value, owner) for owner in LabelOwner])
        self.where = Choice([("to buy", LabelState.TO_BUY), ("here", LabelState.HERE)], at=1)
        self.carrier = Field(label.carrier if label else "", hint="as printed on it")
        self.expires = Field(
            label.expires_on.isoformat() if label and label.expires_on else "", hint=f"as printed: {DAY_HINT}"
        )
        self.name_on = Field(label.name_on if label else "", hint="the name printed on it")
        if label is not None:
            self.whose.take(label.owner)

    def label_now(self) -> ReturnLabel | None:
        """The label still to be used, if there is one."""
        label = self.box_now(self.box_id).label
        return label if label is not None and label.state is not LabelState.USED else None

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        return f"Return label of box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        label = self.label_now()
        if label is not None:
            yield Static(Content(f"now: {label.owner.value} label, {label.state.value}"))
        yield Row(("whose", self.whose))
        yield Row(("where", self.where))
        yield Row(("carrier", self.carrier))
        yield Row(("last day", self.expires))
        yield Row(("name on it", self.name_on))

    def go(self) -> None:
        expires_on = self.read_or(self.expires, self.day_of, None)
        label = self.label_now()
        if label is not None and self.is_bought_now(label):
            self.done(self.attempt(label_bought, label, expires_on, self.carrier.value))
            return
        new = NewLabel(
            owner=self.whose.value,
            state=self.where.value,
            carrier=self.carrier.value,
            expires_on=expires_on,
            name_on=self.name_on.value,
        )
        self.done(self.attempt(set_label, self.box_now(self.box_id).box, new))

    def is_bought_now(self, label: ReturnLabel) -> bool:
        """True when a label to buy is here now and nothing else about it was changed."""
        bought = label.state is LabelState.TO_BUY and self.where.value is LabelState.HERE
        return bought and label.owner is self.whose.value and not self.name_on.touched

    def day_of(self, text: str) -> date | None:
        """The day typed, counted from today on the shop's calendar."""
        return parse_day(text, self.desk.picture.now.date())
