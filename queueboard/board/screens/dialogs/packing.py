"""How far a ready box is packed, and what binds its turn."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Tick
from queueboard.board.forms.form import Dialog
from queueboard.phrases.cautions import PACKING_SHORT
from queueboard.shop.moving import pack_box
from queueboard.shop.promising import set_flags
from queueboard.words import Packing


class PackingDialog(Dialog):
    """How far is it? A digit answers at once."""

    hint = "a digit takes its line · Enter the one shown · - or Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        answers: list[tuple[str, Packing | None]] = [(step.value, step) for step in Packing]
        answers.append(("not packed", None))
        now = self.opened.box.packing
        at = 0 if now is None else min(list(Packing).index(now) + 1, len(Packing) - 1)
        self.far = Choice(answers, at=at, across=False)

    def heading(self) -> str:
        box = self.opened
        return f"Box {box.box.number}, {box.customer.name}: {box.ready_count} of {len(box.on_hand)} ready, is"

    def fields(self) -> ComposeResult:
        yield self.far
        yield Static(Content(PACKING_SHORT), classes="caution")

    def go(self) -> None:
        self.done(self.attempt(pack_box, self.opened.box, self.far.value))

    def anew(self) -> Dialog:
        return PackingDialog(self.desk, self.opened.box.id)


class FlagsDialog(Dialog):
    """Rush, this next, never slip: what binds the box's turn; and whether it came back with a complaint."""

    hint = "+ yes · - no · Enter on, at the end it is stored · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        box = self.opened.box
        self.rush = Tick("rush", value=box.rush)
        self.this_next = Tick("this next: before everything that is not on the bench", value=box.this_next)
        self.never_slip = Tick("never slip this one: its date is not given up for another's", value=box.never_slip)
        self.complaint = Tick("came back with a complaint: the gauge is asked for its knives", value=box.complaint)

    def heading(self) -> str:
        box = self.opened
        return f"Box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        yield self.rush
        yield self.this_next
        yield self.never_slip
        yield self.complaint

    def go(self) -> None:
        self.done(
            self.attempt(
                set_flags,
                self.opened.box,
                rush=self.rush.value,
                this_next=self.this_next.value,
                never_slip=self.never_slip.value,
                complaint=self.complaint.value,
            )
        )

    def anew(self) -> Dialog:
        return FlagsDialog(self.desk, self.opened.box.id)
