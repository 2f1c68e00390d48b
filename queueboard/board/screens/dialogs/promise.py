"""A date told to the customer; a later date is a second promise beside the first."""

from datetime import date

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.phrases.dates import told_words
from queueboard.phrases.typed import parse_day, parse_time
from queueboard.shop.promising import promise
from queueboard.values.new import NewPromise
from queueboard.words import PromiseKind

DAY_HINT = "2026-11-27, 27.11, fri, today, +3"


class PromiseDialog(Dialog):
    """What was told, to whom, and for a second promise why."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        box = self.box_now(box_id)
        self.second = box.promise is not None
        self.kind = Choice([(kind.value, kind) for kind in PromiseKind])
        if box.promise is not None:
            self.kind.first = list(PromiseKind).index(box.promise.kind)
            self.kind.take(box.promise.kind)
        self.day = Field(hint=DAY_HINT)
        self.time = Field(hint="16:00")
        self.told = Field(box.customer.name if self.second else "", hint="who was told")
        self.why = Field(hint="why it is another date")
        self.time_row = Row(("time", self.time))

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        what = "A second promise" if self.second else "A promise"
        return f"{what} for box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        picture = self.desk.picture
        box = self.box_now(self.box_id)
        for told in box.promises:
            yield Static(Content(told_words(told, picture.now, box.box.goes_by)))
        yield Row(("kind", self.kind))
        yield Row(("day", self.day))
        yield self.time_row
        yield Row(("told to", self.told))
        if self.second:
            yield Row(("why", self.why))

    def on_mount(self) -> None:
        self.changed()
        self.day.focus()

    def changed(self) -> None:
        self.time_row.display = self.kind.value is PromiseKind.BY_TIME

    def go(self) -> None:
        new = NewPromise(
            kind=self.kind.value,
            day=self.read(self.day, self.day_of),
            at=self.read(self.time, parse_time) if self.kind.value is PromiseKind.BY_TIME else None,
            told_to=self.told.value,
            reason=self.why.value if self.second else "",
        )
        self.done(self.attempt(promise, self.box_now(self.box_id).box, new))

    def day_of(self, text: str) -> date:
        """The day typed, counted from today on the shop's calendar."""
        return parse_day(text, self.desk.picture.now.date())
