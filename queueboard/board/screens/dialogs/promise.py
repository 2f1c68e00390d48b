"""A date told to the customer; a later date is a second promise beside the first."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.parts import PromisePart
from queueboard.phrases.dates import done_by_words, told_words
from queueboard.shop.promising import promise


class PromiseDialog(Dialog):
    """What was told, to whom, and for a second promise why."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = box = self.box_now(box_id)
        self.second = box.promise is not None
        self.promised = PromisePart(desk, box.box.goes_by, box.promise)
        self.told = Field(box.customer.name if self.second else "", hint="who was told")
        self.why = Field(hint="why it is another date; the first one stays in the history")

    def heading(self) -> str:
        box = self.opened
        what = "A second promise" if self.second else "A promise"
        return f"{what} for box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        box, now = self.opened, self.desk.picture.now
        for told in box.promises:
            yield Static(Content(told_words(told, now, box.box.goes_by)))
        yield Static(Content(f"the day list: {done_by_words(box.forecast, now)}"))
        yield self.promised
        yield Row(("told to", self.told))
        if self.second:
            yield Row(("why", self.why))

    def on_mount(self) -> None:
        self.promised.day.focus()

    def go(self) -> None:
        new = self.promised.read(self, told_to=self.told.value, reason=self.why.value if self.second else "")
        self.done(self.attempt(promise, self.opened.box, new))

    def anew(self) -> Dialog:
        return PromiseDialog(self.desk, self.opened.box.id)
