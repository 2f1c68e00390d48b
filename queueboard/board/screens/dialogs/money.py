"""A price set by hand, and money taken."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.phrases.money import amount, money, too_much_words
from queueboard.phrases.typed import parse_cents
from queueboard.shop.money import set_price, take_payment
from queueboard.values.knife import Knife
from queueboard.values.new import NewPayment
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
        self.done(self.attempt(set_price, self.knife, cents))

    def anew(self) -> Dialog:
        return PriceDialog(self.desk, self.knife_now(self.knife))


class PaymentDialog(Dialog):
    """How much came in, and how."""

    hint = "Enter takes it · a digit says how · escape leaves · no card numbers here"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        """The box as it stood when the question was put; money that comes in meanwhile makes the answer void."""
        self.paid = Field(amount(max(0, self.opened.owed_cents)), check=parse_cents)
        self.way = Choice([(way.value, way) for way in PayWay])

    def heading(self) -> str:
        box = self.opened
        return f"Money for box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        box, settings = self.opened, self.desk.picture.settings
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
        if cents > max(0, self.opened.owed_cents):
            self.insist(cents, too_much_words(cents, self.opened.owed_cents, self.desk.picture.settings))
        payment = NewPayment(cents=cents, way=self.way.value, paid_before_cents=self.opened.paid_cents)
        self.done(self.attempt(take_payment, self.opened.box, payment))

    def anew(self) -> Dialog:
        return PaymentDialog(self.desk, self.opened.box.id)
