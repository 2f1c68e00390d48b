"""A price set by hand, and money taken."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.phrases.money import amount, money
from queueboard.phrases.typed import parse_cents
from queueboard.shop.money import set_price, take_payment
from queueboard.values.knife import Knife
from queueboard.words import PayWay


class PriceDialog(Dialog):
    """What this knife costs."""

    hint = "Enter sets it · escape leaves it as it was"

    def __init__(self, desk: Desk, knife: Knife) -> None:
        super().__init__(desk)
        self.knife = knife
        self.price = Field(amount(knife.price_cents))

    def heading(self) -> str:
        return f"Price of {self.knife.tag} {self.knife.kind} {self.knife.mark}".rstrip()

    def fields(self) -> ComposeResult:
        settings = self.desk.picture.settings
        yield Row((f"price in {settings.currency}", self.price))
        kind = settings.kind(self.knife.kind)
        if kind is not None:
            yield Static(Content(f"The shop's list says {money(kind.price_cents, settings)} for {kind.name}."))

    def go(self) -> None:
        cents = self.read(self.price, parse_cents)
        self.done(self.attempt(set_price, self.knife_now(self.knife), cents))


class PaymentDialog(Dialog):
    """How much came in, and how."""

    hint = "Enter takes it · a digit says how · escape leaves · no card numbers here"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        self.paid = Field(amount(max(0, self.box_now(box_id).owed_cents)), check=parse_cents)
        self.way = Choice([(way.value, way) for way in PayWay])

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        return f"Money for box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        box, settings = self.box_now(self.box_id), self.desk.picture.settings
        yield Static(
            Content(
                f"price {money(box.price_cents, settings)}   paid {money(box.paid_cents, settings)}   "
                f"owed {money(box.owed_cents, settings)}"
            )
        )
        yield Row((f"taken, {settings.currency}", self.paid))
        yield Row(("how", self.way))

    def go(self) -> None:
        cents = self.read(self.paid, parse_cents)
        self.done(self.attempt(take_payment, self.box_now(self.box_id).box, cents, self.way.value))
