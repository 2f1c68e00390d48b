"""A typed mistake put right: in a knife's line, in a box, in a customer."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Tick
from queueboard.board.forms.form import Dialog
from queueboard.intake.lengths import read_length_mm
from queueboard.intake.small import read_number
from queueboard.intake.words_typed import read_condition, read_edge, read_findings
from queueboard.phrases.boxes import unopened_words
from queueboard.phrases.knives import length_words
from queueboard.phrases.typed import parse_count
from queueboard.shop.correcting import correct_box, correct_customer, correct_knife
from queueboard.shop.receiving import customers
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife
from queueboard.words import CameBy, GoesBy


class CorrectKnifeDialog(Dialog):
    """The line of one knife; only what is typed anew is changed."""

    def __init__(self, desk: Desk, knife: Knife) -> None:
        super().__init__(desk)
        self.knife = knife
        self.kind = Field(knife.kind)
        self.length = Field(length_words(knife.length_mm, desk.picture.settings.length_unit), hint="not measured")
        self.edge = Field(knife.edge.value)
        self.condition = Field(knife.condition.value)
        words = ", ".join(finding.value for finding in knife.findings)
        self.found = Field(words, hint="very dull, rust freckles: from the list, with commas between")
        self.mark = Field(knife.mark, hint="what tells it apart: black handle, nick")
        self.wish = Field(knife.wish, hint="in the customer's own words")

    def heading(self) -> str:
        return f"Correct {self.knife.tag} {self.knife.kind} {self.knife.mark}".rstrip()

    def fields(self) -> ComposeResult:
        yield Row(("kind", self.kind))
        yield Row(("length", self.length))
        yield Row(("edge", self.edge))
        yield Row(("condition", self.condition))
        yield Row(("found", self.found))
        yield Row(("mark", self.mark))
        yield Row(("wish", self.wish))

    def go(self) -> None:
        unit = self.desk.picture.settings.length_unit

        def length_mm(text: str) -> int:
            return read_length_mm(text, shop_unit=unit)

        self.done(
            self.attempt(
                correct_knife,
                self.knife,
                kind=self.kind.value if self.kind.touched else None,
                edge=self.read(self.edge, read_edge) if self.edge.touched else None,
                length_mm=self.read_or(self.length, length_mm, None) if self.length.touched else None,
                no_length=self.length.emptied,
                condition=self.read(self.condition, read_condition) if self.condition.touched else None,
                findings=self.read(self.found, read_findings) if self.found.touched else None,
                mark=self.mark.value if self.mark.touched else None,
                wish=self.wish.value if self.wish.touched else None,
            )
        )

    def anew(self) -> Dialog:
        return CorrectKnifeDialog(self.desk, self.knife_now(self.knife))


class CorrectBoxDialog(Dialog):
    """The box itself: its number, the counts, how it came and goes; only what is typed anew is changed."""

    def __init__(self, desk: Desk, box: Box) -> None:
        super().__init__(desk)
        self.box = box
        self.number = Field(str(box.number))
        self.counted = Field(str(box.counted) if box.opened else "", hint=unopened_words(self.box_now(box.id)))
        self.note_says = Field("" if box.note_says is None else str(box.note_says), hint="no note")
        self.carrier_days = Field(str(box.carrier_days))
        self.came_by = Choice([(way.value, way) for way in CameBy], at=list(CameBy).index(box.came_by))
        self.goes_by = Choice([(way.value, way) for way in GoesBy], at=list(GoesBy).index(box.goes_by))

    def heading(self) -> str:
        return f"Correct box {self.box.number}, {self.box_now(self.box.id).customer.name}"

    def fields(self) -> ComposeResult:
        yield Row(("number", self.number))
        yield Row(("counted", self.counted))
        yield Row(("note says", self.note_says))
        yield Row(("carrier days", self.carrier_days))
        yield Row(("came by", self.came_by))
        yield Row(("goes back by", self.goes_by))

    def go(self) -> None:
        self.done(
            self.attempt(
                correct_box,
                self.box,
                number=self.read(self.number, read_number) if self.number.touched else None,
                counted=self.read(self.counted, parse_count) if self.counted.touched else None,
                note_says=self.read_or(self.note_says, read_number, None) if self.note_says.touched else None,
                no_note=self.note_says.emptied,
                carrier_days=self.read(self.carrier_days, read_number) if self.carrier_days.touched else None,
                came_by=self.came_by.value if self.came_by.touched else None,
                goes_by=self.goes_by.value if self.goes_by.touched else None,
            )
        )

    def anew(self) -> Dialog:
        return CorrectBoxDialog(self.desk, self.box_now(self.box.id).box)


class CorrectCustomerDialog(Dialog):
    """A customer's name, phone, town, address, notes and proof cards; only what is typed anew is changed."""

    def __init__(self, desk: Desk, customer: Customer) -> None:
        super().__init__(desk)
        self.customer = customer
        self.name_typed = Field(customer.name)
        self.phone = Field(customer.phone)
        self.town = Field(customer.town)
        self.address = Field(customer.address)
        self.notes = Field(customer.notes)
        self.card = Tick("every box gets a proof card: the gauge is asked for its knives", value=customer.proof_card)

    def customer_now(self) -> Customer:
        """The customer as the shop file has it now."""
        known = customers(self.desk.shop)
        return next((customer for customer in known if customer.id == self.customer.id), self.customer)

    def heading(self) -> str:
        return f"Correct customer {self.customer.name}"

    def fields(self) -> ComposeResult:
        yield Row(("name", self.name_typed))
        yield Row(("phone", self.phone))
        yield Row(("town", self.town))
        yield Row(("address", self.address))
        yield Row(("notes", self.notes))
        yield self.card

    def go(self) -> None:
        self.done(
            self.attempt(
                correct_customer,
                self.customer,
                name=self.name_typed.value if self.name_typed.touched else None,
                phone=self.phone.value if self.phone.touched else None,
                town=self.town.value if self.town.touched else None,
                address=self.address.value if self.address.touched else None,
                notes=self.notes.value if self.notes.touched else None,
                proof_card=self.card.value if self.card.touched else None,
            )
        )

    def anew(self) -> Dialog:
        return CorrectCustomerDialog(self.desk, self.customer_now())
