"""A date told to the customer; a later date is a second promise beside the first."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.parts import PromisePart
from queueboard.board.forms.promise_line import PromiseLine
from queueboard.phrases.dates import told_words
from queueboard.phrases.late import ASK_FIRST
from queueboard.phrases.promising import planned_words
from queueboard.shop.promising import promise
from queueboard.shop.wishing import wish_again
from queueboard.words import Lateness

WHY = "why it is another date; the first one stays in the history"
LATE_WHY = "such as: the bench is full; the first one stays in the history"
WILL_NOT_HOLD = (Lateness.LATE, Lateness.WILL_BE_LATE)


class PromiseDialog(Dialog):
    """What was told, to whom, and for a second promise why; beside it what can honestly be told."""

    DEFAULT_CSS = "PromiseDialog PromiseLine { max-height: 10; }"
    BINDING_GROUP_TITLE = "Telling a date"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("f3", "take_day", "promise the earliest day", id="promise.day")]
    hint = "Enter on, at the end it is stored · F3 the earliest day · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = box = self.box_now(box_id)
        self.second = box.promise is not None
        self.promised = PromisePart(desk, box.box.goes_by, box.promise)
        self.told = Field(box.customer.name if self.second else "", hint="who was told")
        self.why = Field(hint=LATE_WHY if box.forecast.lateness in WILL_NOT_HOLD else WHY)
        self.when = PromiseLine(desk)

    def heading(self) -> str:
        box = self.opened
        what = "A second promise" if self.second else "A promise"
        return f"{what} for box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        box, now = self.opened, self.desk.picture.now
        for told in box.promises:
            yield Static(Content(told_words(told, now, box.box.goes_by)))
        yield Static(Content(planned_words(box, now)))
        if box.put_off:
            yield Static(Content(ASK_FIRST))
        yield self.promised
        yield Row(("told to", self.told))
        if self.second:
            yield Row(("why", self.why))
        yield self.when

    def on_mount(self) -> None:
        self.promised.day.focus()
        self.changed()

    def changed(self) -> None:
        """Say what can be told, and answer the day typed."""
        self.when.ask(wish_again(self.opened, self.promised.so_far(), self.promised.kind.value))

    def action_take_day(self) -> None:
        """Put the day that can honestly be told into its field."""
        advice = self.when.advice
        told = None if advice is None else advice.day_to_tell
        honest = self.opened.honest_day if told is None else told
        if honest is not None:
            self.promised.take_day(honest)

    def go(self) -> None:
        new = self.promised.read(self, told_to=self.told.value, reason=self.why.value if self.second else "")
        self.when.before_a_no(self)
        self.done(self.attempt(promise, self.opened.box, self.when.with_sum(new)))

    def anew(self) -> Dialog:
        return PromiseDialog(self.desk, self.opened.box.id)
