"""The bell: somebody stands at the counter. Surname, count, knives in one line, one question; then the papers."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, FormScroll, Row, Taken
from queueboard.board.forms.hold import ask_about_hold
from queueboard.board.forms.kept_form import KeptForm
from queueboard.board.forms.picker import CustomerPicker
from queueboard.board.forms.promise_line import PromiseLine
from queueboard.board.screens.received import ReceivedScreen
from queueboard.board.widgets.signed_list import SignedList
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.intake.lines import KnifeLine, read_lines
from queueboard.intake.small import counts_differ
from queueboard.phrases import helping
from queueboard.phrases.announced import here_already_words
from queueboard.phrases.bell import asked_words, knives_lines
from queueboard.phrases.typed import parse_count, parse_day_and_time
from queueboard.shop.picture import Picture
from queueboard.shop.receiving import customers, receive_box
from queueboard.shop.walk_in import told_at_counter
from queueboard.shop.wishing import Wish
from queueboard.values.customer import Customer
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewPromise
from queueboard.words import CameBy, GoesBy, PromiseKind

NO_DATE = frozenset({"-", "none", "no"})
"""What says that no date is told."""


class WalkInCustomer(CustomerPicker):
    """Who stands at the counter: a phone may be typed, a town is not asked."""

    def compose(self) -> ComposeResult:
        yield Row((self.label, self.typed))
        offers = SignedList(markup=False, compact=True)
        offers.can_focus = False
        yield offers
        yield Static("", classes="picked")
        yield Row(("phone", self.phone), id="new")


class WalkInScreen(KeptForm[int]):
    """Leaves with the box's number, or None when nothing was taken in; what is half typed may be left for later."""

    CSS_PATH = "receive.tcss"
    HELP = helping.WALK_IN
    BINDING_GROUP_TITLE = "The bell: a walk-in"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f2", "go", "take it in now", id="bell.take"),
        Binding("escape", "leave", "leave, what is typed is let go", id="bell.leave"),
    ]
    AUTO_FOCUS = "CustomerPicker Field"
    parked: bool = False
    """True when it was left with something half typed, which is kept."""

    def __init__(self, desk: Desk, first: str = "") -> None:
        """first: what is to be said when it opens."""
        super().__init__(desk)
        self.first = first
        self.stored: int | None = None
        self.picker = WalkInCustomer(customers(desk.shop), label="surname")
        self.counted = Field(hint="counted by hand", check=parse_count)
        self.line = Field(hint="2 chef, paring, bread ! keep the points", check=self.lines_of)
        self.echo, self.asked = Static("", id="echo"), Static("", id="asked")
        self.told = Field(hint="Enter tells this; or type fri, today 17:00, - for no date", check=self.promise_of)
        self.when = PromiseLine(desk)
        self._offered: tuple[tuple[NewKnife, ...], Picture, NewPromise | None] | None = None

    def kept_as(self) -> str:
        return "bell"

    def compose(self) -> ComposeResult:
        yield Static("The bell: a walk-in, to be fetched here", id="top")
        with FormScroll(id="form"):
            yield self.picker
            yield Row(("counted", self.counted))
            yield Row(("knives", self.line))
            yield self.echo
            yield self.asked
            yield Row(("told", self.told), id="told")
        yield self.when
        yield Static("", id="sentence")
        yield Static("Enter on, the last takes it in · F4 back, kept · F1 keys · Esc lets go", id="hint")

    def on_mount(self) -> None:
        self.changed()
        if self.first:
            self.say(self.first)

    def show(self, picture: Picture) -> None:
        """Another window has written, or a minute has gone by: the day may be another one."""
        self.changed()

    def lines_of(self, text: str) -> tuple[KnifeLine, ...]:
        """The knives typed; TypedError asks back about what is in doubt, and where the count does not agree."""
        lines = read_lines(text, self.desk.picture.settings)
        typed, counted = sum(line.count for line in lines), self.count_so_far()
        if counted is not None and typed != counted:
            raise TypedError(counts_differ(counted, typed))
        return lines

    def count_so_far(self) -> int | None:
        """The count typed; None while it is none."""
        try:
            return parse_count(self.counted.value)
        except TypedError:
            return None

    def changed(self) -> None:
        """Say line by line what is understood; once count and knives agree, ask the one question."""
        settings, now = self.desk.picture.settings, self.desk.picture.now
        lines: tuple[KnifeLine, ...] = ()
        said: tuple[str, ...] = ()
        if self.line.value.strip():
            try:
                lines = read_lines(self.line.value, settings)
                said = knives_lines(lines, self.count_so_far(), settings)
            except TypedError as question:
                said = (f"? {question}",)
        self.echo.update(Content(cell_text("\n".join(said))))
        self.echo.display = bool(said)
        ready = bool(lines) and sum(line.count for line in lines) == self.count_so_far()
        self.asked.display = self.query_one("#told").display = ready
        knives = tuple(line.knife for line in lines for _ in range(line.count)) if ready else ()
        told = self.told_so_far(knives) if ready else None
        self.asked.update(asked_words(lines, told, settings, now) if ready else "")
        self.when.ask(_wish(knives, told) if ready else None)

    def offered(self, knives: tuple[NewKnife, ...]) -> NewPromise | None:
        """What the plan offers; worked out once for these knives and this picture."""
        if self._offered is None or self._offered[0] != knives or self._offered[1] is not self.desk.picture:
            self._offered = knives, self.desk.picture, told_at_counter(self.desk.picture, knives)
        return self._offered[2]

    def promise_of(self, text: str) -> NewPromise | None:
        """The date typed; None for no date. TypedError for what is no day or no time."""
        if text.strip().casefold() in NO_DATE:
            return None
        day, at = parse_day_and_time(text, self.desk.picture.now.date())
        return NewPromise(kind=PromiseKind.DAY if at is None else PromiseKind.BY_TIME, day=day, at=at)

    def told_so_far(self, knives: tuple[NewKnife, ...]) -> NewPromise | None:
        """What would be told now: the offer, or what is typed as far as it can be read."""
        if not self.told.value.strip():
            return self.offered(knives)
        try:
            return self.promise_of(self.told.value)
        except TypedError:
            return None

    def go(self) -> None:
        new = self.typed_box()
        ask_about_hold(self, new.customer_id)
        if new.promise is not None:
            self.when.before_a_no(self)
        number = self.attempt(receive_box, new)
        if number is None:
            return
        self.kept.forget()
        self.stored = number[0]
        self.app.push_screen(ReceivedScreen(self.desk, self.stored, print_now=True), self._papers_seen)

    def _papers_seen(self, _: bool | None) -> None:
        self.dismiss(self.stored)

    def typed_box(self) -> NewBox:
        """Everything typed, read from the top; TypedError for what does not hold together, the cursor in its field."""
        whose = self.picker.chosen()
        counted = self.read(self.counted, parse_count)
        lines = self.read(self.line, self.lines_of)
        knives = tuple(line.knife for line in lines for _ in range(line.count))
        told = self.read_or(self.told, self.promise_of, self.offered(knives))
        if told is None and not self.told.value.strip():
            self.told.focus()
            raise TypedError("The plan can tell no day for these. Type the day you tell, or - to tell none.")
        if told is not None:
            told = self.when.with_sum(NewPromise(kind=told.kind, day=told.day, at=told.at, told_to=whose.name))
        return NewBox(
            customer_id=whose.id if isinstance(whose, Customer) else None,
            new_customer=whose if isinstance(whose, NewCustomer) else None,
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=counted,
            knives=knives,
            promise=told,
        )

    def action_park(self) -> None:
        """Back to where the bell was rung; what is typed here is kept, and comes back with the next bell."""
        self.parked = self.touched
        if self.parked:
            self.keep()
        self.dismiss(None)

    @on(Taken)
    def greet(self, event: Taken) -> None:
        """Say what else of this customer is here."""
        customer = self.picker.picked if event.widget is self.picker.typed else None
        if customer is not None:
            theirs = [box for box in self.desk.picture.boxes if box.customer.id == customer.id]
            self.say(here_already_words(theirs))


def _wish(knives: tuple[NewKnife, ...], told: NewPromise | None) -> Wish:
    if told is None:
        return Wish(knives=knives, goes_by=GoesBy.PICK_UP)
    return Wish(knives=knives, goes_by=GoesBy.PICK_UP, kind=told.kind, day=told.day, at=told.at)
