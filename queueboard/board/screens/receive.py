"""Take in a box: whose it is, what was counted, its knives line by line, what was told."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Taken, Tick, Turned
from queueboard.board.forms.kept_form import KeptForm
from queueboard.board.forms.knife_lines import KnifeLines
from queueboard.board.forms.parts import LabelPart, PromisePart
from queueboard.board.forms.picker import CustomerPicker
from queueboard.board.forms.promise_line import PromiseLine
from queueboard.board.screens.received import ReceivedScreen
from queueboard.errors import TypedError
from queueboard.intake.small import read_number, read_things
from queueboard.phrases.typed import parse_count
from queueboard.shop.picture import Picture
from queueboard.shop.receiving import customers, next_number, receive_box
from queueboard.shop.wishing import Wish
from queueboard.values.customer import Customer
from queueboard.values.new import NewBox, NewCustomer
from queueboard.words import CameBy, GoesBy

HINT = "Enter on · Shift+Tab back (knives: ↑) · F2 takes the box in now · Esc leaves"
HINT_WITH_DAY = "Enter on · Shift+Tab back (knives: ↑) · F2 take in · F3 take the day · Esc leave"

Arrival = tuple[CameBy, bool]
"""How it came, and whether it is opened now."""

ARRIVALS: tuple[tuple[str, Arrival], ...] = (
    ("counter", (CameBy.COUNTER, True)),
    ("mail", (CameBy.MAIL, True)),
    ("mail, not opened", (CameBy.MAIL, False)),
    ("counter, not opened", (CameBy.COUNTER, False)),
)


class ReceiveScreen(KeptForm[int]):
    """One form from the surname to the last Enter; leaves with the box's number, or None when nothing was stored."""

    CSS_PATH = "receive.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f2", "go", "take it in now", id="receive.store"),
        Binding("f3", "take_day", "promise the earliest day", id="receive.day"),
        Binding("escape,q", "leave", "leave", id="receive.leave"),
    ]
    AUTO_FOCUS = "CustomerPicker Field"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        settings = desk.picture.settings
        self.stored: int | None = None
        self.number = Field(str(next_number(desk.shop)), check=read_number)
        self.picker = CustomerPicker(customers(desk.shop))
        self.came = Choice(ARRIVALS)
        self.goes_by = Choice([(way.value, way) for way in GoesBy])
        self.counted = Field(hint="by hand, before the note", check=parse_count)
        self.note_says = Field(hint="if there is one", check=parse_count)
        self.lines = KnifeLines(settings)
        self.things = Field(hint="sheath, roll: with commas between")
        self.promised = PromisePart(desk, GoesBy.PICK_UP)
        self.carrier_days = Field(str(settings.parcels.carrier_days), check=read_number)
        self.label = LabelPart(desk)
        self.note = Field(hint="where it stands, anything to remember")
        self.rush = Tick("rush")
        self.when = PromiseLine(desk)
        self.counts = Row(("counted", self.counted), ("note says", self.note_says), id="counts")
        self.parcel = (Row(("carrier days", self.carrier_days), id="carrier"), self.label)
        self.inside = (self.counts, self.lines, Row(("comes with", self.things)))

    def kept_as(self) -> str:
        return "receiving"

    def compose(self) -> ComposeResult:
        yield Row(("Receive a box; its number is", self.number), id="top")
        with VerticalScroll(id="form", can_focus=False):
            yield self.picker
            yield Row(("came by", self.came))
            yield Row(("goes back by", self.goes_by))
            yield from self.inside
            yield self.promised
            yield from self.parcel
            yield Row(("note, shelf", self.note), ("", self.rush))
        yield self.when
        yield from (Static("", id="sentence"), Static("", id="hint"))

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        """Ask only what this box needs."""
        opened, parcel = self.came.value[1], self.goes_by.value is GoesBy.PARCEL
        for inside in self.inside:
            inside.display = opened
        for sent in self.parcel:
            sent.display = parcel
        self.promised.goes_back(self.goes_by.value)
        self.lines.count_to(self.counted.value)
        self.ask_when()

    def ask_when(self) -> None:
        """Say beneath the form when this box could be ready, and which key promises that."""
        if self.when.ask(self.wish()):
            offered = self.when.advice is not None and self.when.advice.offer is not None
            self.query_one("#hint", Static).update(Content(HINT_WITH_DAY if offered else HINT))

    def wish(self) -> Wish | None:
        """The box as far as it is typed; None while nothing of it can be promised."""
        parcel, told = self.goes_by.value is GoesBy.PARCEL, self.promised.so_far()
        try:
            carrier_days = read_number(self.carrier_days.value) if parcel else 0
        except TypedError:
            return None
        if not self.came.value[1]:
            return None
        return Wish(
            knives=self.lines.knives,
            goes_by=self.goes_by.value,
            carrier_days=carrier_days,
            kind=self.promised.kind.value,
            day=None if told is None else told.day,
            at=None if told is None else told.at,
        )

    def action_take_day(self) -> None:
        """Put the earliest day that can be told into the promise; the cursor stays where it is."""
        if self.when.advice is not None and self.when.advice.day_to_tell is not None:
            self.promised.take_day(self.when.advice.day_to_tell)

    def show(self, picture: Picture) -> None:
        """Another window has written, or a minute has gone by: the day may be another one."""
        if self.is_mounted:
            self.ask_when()

    @on(Turned)
    def comes_as_it_goes(self, event: Turned) -> None:
        """What came by mail usually goes back as a parcel, what came to the counter is fetched."""
        if event.widget is self.came:
            by_mail = self.came.value[0] is CameBy.MAIL
            self.goes_by.take(GoesBy.PARCEL if by_mail else GoesBy.PICK_UP)

    @on(Taken)
    def greet(self, event: Taken) -> None:
        """Say what else of this customer is here."""
        if event.widget is not self.picker.typed:
            return
        customer = self.picker.picked
        here = [b for b in self.desk.picture.boxes if customer is not None and b.customer.id == customer.id]
        self.say(f"On the board already: {', '.join(str(box.box.number) for box in here)}." if here else "")

    def go(self) -> None:
        new = self.typed_box()
        if new is None:
            return
        number = self.attempt(receive_box, new)
        if number is None:
            return
        self.stored = number[0]
        self.kept.forget()
        self.app.push_screen(ReceivedScreen(self.desk, self.stored), self.leave_stored)

    def leave_stored(self, seen: bool | None) -> None:
        """Leave with the number, once the stub was seen."""
        self.dismiss(self.stored)

    def typed_box(self) -> NewBox | None:
        """Everything typed, read from the top; None after asking back about a line."""
        came_by, opened = self.came.value
        number = self.read(self.number, read_number)
        counted = self.read(self.counted, parse_count) if opened else 0
        note_says = self.read_or(self.note_says, parse_count, None) if opened else None
        if opened and self.lines.line.value.strip() and not self.lines.take():
            return None
        if opened and counted != len(self.lines.knives):
            self.lines.line.focus()
        parcel = self.goes_by.value is GoesBy.PARCEL
        promised = self.promised.read(self) if self.promised.day.value.strip() else None
        carrier_days = self.read(self.carrier_days, read_number) if parcel else 0
        label = self.label.read(self) if parcel else None
        whose = self.picker.chosen()
        return NewBox(
            customer_id=whose.id if isinstance(whose, Customer) else None,
            new_customer=whose if isinstance(whose, NewCustomer) else None,
            came_by=came_by,
            goes_by=self.goes_by.value,
            counted=counted,
            knives=self.lines.knives if opened else (),
            things=read_things(self.things.value) if opened else (),
            note_says=note_says,
            number=number,
            carrier_days=carrier_days,
            promise=promised,
            label=label,
            opened=opened,
            rush=self.rush.value,
            note=self.note.value,
        )
