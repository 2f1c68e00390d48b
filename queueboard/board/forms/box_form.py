"""What taking in a box and announcing one share: whose it is, how it goes back, what is told, its label and note."""

from collections.abc import Iterable
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widget import Widget
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, FormScroll, Row, Taken, Tick
from queueboard.board.forms.kept_form import KeptForm
from queueboard.board.forms.label_part import LabelPart
from queueboard.board.forms.parts import PromisePart
from queueboard.board.forms.picker import CustomerPicker
from queueboard.board.forms.promise_line import PromiseLine
from queueboard.errors import TypedError
from queueboard.intake.small import read_number
from queueboard.phrases.announced import here_already_words
from queueboard.shop.picture import Picture
from queueboard.shop.receiving import customers, next_number
from queueboard.shop.wishing import Wish
from queueboard.values.new import NewLabel, NewPromise
from queueboard.words import GoesBy


class BoxForm(KeptForm[int]):
    """One form from the surname to the last Enter; leaves with the box's number, or None when nothing was stored."""

    CSS_PATH = "../screens/receive.tcss"
    BINDING_GROUP_TITLE = "Receive or announce"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f2", "go", "take it in, or note it, now", id="receive.store"),
        Binding("f3", "take_day", "promise the earliest day", id="receive.day"),
        Binding("escape,q", "leave", "leave", id="receive.leave"),
    ]
    AUTO_FOCUS = "CustomerPicker Field"
    opening_words: str
    """What stands before the box's number."""
    hint: str
    hint_with_day: str
    """The same where a day can be taken."""

    def __init__(self, desk: Desk, goes_by: GoesBy) -> None:
        super().__init__(desk)
        ways = list(GoesBy)
        self.number = Field(str(next_number(desk.shop)), check=read_number)
        self.picker = CustomerPicker(customers(desk.shop))
        self.goes_by = Choice([(way.value, way) for way in ways], at=ways.index(goes_by))
        self.promised = PromisePart(desk, goes_by, hint_more="; empty: none is told")
        self.carrier_days = Field(str(desk.picture.settings.parcels.carrier_days), check=read_number)
        self.label = LabelPart(desk)
        self.note = Field(hint="where it stands, anything to remember")
        self.rush = Tick("rush")
        self.when = PromiseLine(desk)
        self.parcel = (Row(("carrier days", self.carrier_days), id="carrier"), self.label)

    def how_it_comes(self) -> Iterable[Widget]:
        """What is asked before the way back."""
        raise NotImplementedError

    def what_is_in_it(self) -> Iterable[Widget]:
        """What is asked behind the way back."""
        return ()

    def compose(self) -> ComposeResult:
        yield Row((self.opening_words, self.number), id="top")
        with FormScroll(id="form"):
            yield self.picker
            yield from self.how_it_comes()
            yield Row(("goes back by", self.goes_by))
            yield from self.what_is_in_it()
            yield self.promised
            yield from self.parcel
            yield Row(("note, shelf", self.note), ("", self.rush))
        yield self.when
        yield from (Static("", id="sentence"), Static(Content(self.hint), id="hint"))

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        """Ask only what this box needs."""
        for sent in self.parcel:
            sent.display = self.goes_by.value is GoesBy.PARCEL
        self.promised.goes_back(self.goes_by.value)
        self.ask_when()

    def ask_when(self) -> None:
        """Say beneath the form when this box could be ready, and which key promises that."""
        if self.when.ask(self.wish()):
            offered = self.when.advice is not None and self.when.advice.offer is not None
            self.query_one("#hint", Static).update(Content(self.hint_with_day if offered else self.hint))

    def wish(self) -> Wish | None:
        """The box as far as it is typed; None while nothing of it can be promised."""
        told = self.promised.so_far()
        try:
            carrier_days = self.read_carrier_days()
        except TypedError:
            return None
        return Wish(
            knives=(),
            goes_by=self.goes_by.value,
            carrier_days=carrier_days,
            kind=self.promised.kind.value,
            day=None if told is None else told.day,
            at=None if told is None else told.at,
        )

    def read_carrier_days(self) -> int:
        """The carrier's days of a parcel; 0 for a pick-up."""
        return read_number(self.carrier_days.value) if self.goes_by.value is GoesBy.PARCEL else 0

    def read_promise(self) -> NewPromise | None:
        """The date typed; None without one."""
        return self.when.with_sum(self.promised.read(self)) if self.promised.day.value.strip() else None

    def read_label(self) -> NewLabel | None:
        """The label of a parcel."""
        return self.label.read(self) if self.goes_by.value is GoesBy.PARCEL else None

    def action_take_day(self) -> None:
        """Put the earliest day that can be told into the promise; the cursor stays where it is."""
        if self.when.advice is not None and self.when.advice.day_to_tell is not None:
            self.promised.take_day(self.when.advice.day_to_tell)

    def show(self, picture: Picture) -> None:
        """Another window has written, or a minute has gone by: the day may be another one."""
        self.ask_when()

    @on(Taken)
    def greet(self, event: Taken) -> None:
        """Say what else of this customer is here, and what is expected."""
        if event.widget is not self.picker.typed:
            return
        customer = self.picker.picked
        theirs = [b for b in self.desk.picture.boxes if customer is not None and b.customer.id == customer.id]
        self.say(here_already_words(theirs))
