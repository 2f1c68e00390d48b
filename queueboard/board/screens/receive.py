"""Take in a box: whose it is, what was counted, its knives line by line, what was told."""

from collections.abc import Iterable
from dataclasses import replace
from typing import ClassVar

from textual import on
from textual.binding import Binding, BindingType
from textual.widget import Widget

from queueboard.board.desk import Desk
from queueboard.board.forms.box_form import BoxForm
from queueboard.board.forms.fields import Choice, Field, Row, Turned
from queueboard.board.forms.hold import ask_about_hold
from queueboard.board.forms.knife_lines import KnifeLines
from queueboard.board.screens.received import ReceivedScreen
from queueboard.intake.again import lines_again
from queueboard.intake.small import read_number, read_things
from queueboard.phrases import helping
from queueboard.phrases.typed import parse_count
from queueboard.shop.costing import would_come_to
from queueboard.shop.receiving import last_kinds, receive_box
from queueboard.shop.wishing import Wish
from queueboard.values.customer import Customer
from queueboard.values.new import NewBox, NewCustomer, NewKnife
from queueboard.values.totals import Totals
from queueboard.words import CameBy, GoesBy, LabelOwner

Arrival = tuple[CameBy, bool]
"""How it came, and whether it is opened now."""

ARRIVALS: tuple[tuple[str, Arrival], ...] = (
    ("counter", (CameBy.COUNTER, True)),
    ("mail", (CameBy.MAIL, True)),
    ("mail, not opened", (CameBy.MAIL, False)),
    ("counter, not opened", (CameBy.COUNTER, False)),
)


class ReceiveScreen(BoxForm):
    """A box that is here, with its knives unless it stays unopened."""

    BINDING_GROUP_TITLE = "Receive"
    HELP = helping.RECEIVE
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f6", "same_again", "the kinds of the last box again", id="receive.again"),
    ]

    opening_words = "Receive a box; its number is"
    hint = "Enter on · ↑ back · F2 take in · F6 same again · F1 keys · Esc leave"
    hint_with_day = "Enter on · ↑ back · F2 take in · F3 the day · F6 again · F1 keys · Esc leave"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, GoesBy.PICK_UP)
        self.stored: int | None = None
        self.came = Choice(ARRIVALS)
        self.counted = Field(hint="by hand, before the note", check=parse_count)
        self.note_says = Field(hint="if there is one", check=parse_count)
        self.lines = KnifeLines(desk)
        self.lines.sums = self.would_come_to
        self.things = Field(hint="sheath, roll: with commas between")
        self.counts = Row(("counted", self.counted), ("note says", self.note_says), id="counts")
        self.inside = (self.counts, self.lines, Row(("comes with", self.things)))

    def kept_as(self) -> str:
        return "receiving"

    def how_it_comes(self) -> Iterable[Widget]:
        yield Row(("came by", self.came))

    def what_is_in_it(self) -> Iterable[Widget]:
        return self.inside

    def changed(self) -> None:
        """Ask only what this box needs."""
        for inside in self.inside:
            inside.display = self.came.value[1]
        self.lines.count_to(self.counted.value, self.note_says.value)
        super().changed()

    def would_come_to(self, knives: tuple[NewKnife, ...]) -> Totals:
        """The price of the whole box as it is typed so far: with rush, minimum, the way back and tax."""
        ships = self.goes_by.value is GoesBy.PARCEL and self.label.standing.value[0] is LabelOwner.SHOP
        return would_come_to(
            self.desk.picture.settings,
            knives,
            note_says=self.lines.note_says,
            came_by=self.came.value[0],
            rush=self.rush.value,
            shop_ships=ships,
        )

    def wish(self) -> Wish | None:
        """The box by the knives typed; nothing can be promised of one that is not opened."""
        wish = super().wish()
        return replace(wish, knives=self.lines.knives) if wish is not None and self.came.value[1] else None

    def action_same_again(self) -> None:
        """Type the kinds of this customer's last box, or of the last box of all; what is different is taken back."""
        if self.lines.lines:
            self.say("There are lines already; ↑ brings them back one by one.", trouble=True)
            return
        picked = self.picker.picked
        last = last_kinds(self.desk.shop, None if picked is None else picked.id)
        if last is None:
            self.say("There is no earlier box whose kinds could be typed again.", trouble=True)
            return
        self.lines.add(lines_again(last[1], self.desk.picture.settings))
        self.changed()
        self.say(f"The kinds of box {last[0]} again; condition, marks and wishes are these knives' own.")

    @on(Turned)
    def comes_as_it_goes(self, event: Turned) -> None:
        """What came by mail usually goes back as a parcel, what came to the counter is fetched."""
        if event.widget is self.came:
            by_mail = self.came.value[0] is CameBy.MAIL
            self.goes_by.take(GoesBy.PARCEL if by_mail else GoesBy.PICK_UP)

    def go(self) -> None:
        new = self.typed_box()
        if new is None:
            return
        ask_about_hold(self, new.customer_id)
        if new.promise is not None:
            self.when.before_a_no(self)
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
        promised, carrier_days, label = self.read_promise(), self.read_carrier_days(), self.read_label()
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
