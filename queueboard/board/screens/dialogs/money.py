"""A price set by hand, and money taken."""

from textual import on
from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Turned
from queueboard.board.forms.form import Dialog
from queueboard.board.screens.dialogs.charges import done_or_ask
from queueboard.money.pricing import list_price
from queueboard.phrases.bill import sums_words
from queueboard.phrases.money import amount, money, too_much_words
from queueboard.phrases.typed import parse_cents
from queueboard.priced_words import MoneySort
from queueboard.shop.money import set_price, take_payment
from queueboard.values.knife import Knife
from queueboard.values.new import NewKnife, NewPayment
from queueboard.words import PayWay


class PriceDialog(Dialog):
    """What this knife costs."""

    hint = "Enter sets it · Esc leaves it as it was"

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
            own = NewKnife(kind=kind.name, edge=self.knife.edge, length_mm=self.knife.length_mm)
            listed = money(list_price(settings, kind, own), settings)
            yield Static(Content(f"The shop's list says {listed} for it, without add-ons."))

    def go(self) -> None:
        cents = self.read(self.price, parse_cents)
        done_or_ask(self, self.attempt(set_price, self.knife, cents), self.box_now(self.knife.box_id))

    def anew(self) -> Dialog:
        return PriceDialog(self.desk, self.knife_now(self.knife))


class PaymentDialog(Dialog):
    """How much came in, and how; or what is given back."""

    AUTO_FOCUS = "Field"
    hint = "a digit says how, and takes it · ↑ a deposit, money back · no card numbers"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        """The box as it stood when the question was put; money that comes in meanwhile makes the answer void."""
        self.sort = Choice([(sort.value, sort) for sort in MoneySort])
        self.paid = Field(amount(max(0, self.opened.owed_cents)), check=parse_cents)
        self.way = Choice([(way.value, way) for way in PayWay])

    def heading(self) -> str:
        box = self.opened
        return f"Money for box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        box, settings = self.opened, self.desk.picture.settings
        sums = sums_words(box.totals, settings)
        if sums:
            yield Static(Content(sums))
        yield Static(
            Content(
                f"price {money(box.price_cents, settings)}   paid {money(box.paid_cents, settings)}   "
                f"owed {money(box.owed_cents, settings)}"
            )
        )
        yield Row(("this is a", self.sort))
        yield Row((f"how much, {settings.currency}", self.paid))
        yield Row(("how", self.way))

    @on(Turned)
    def offer(self) -> None:
        """Offer what is owed, or what was paid too much, unless an amount was typed."""
        if not self.paid.touched:
            owed = self.opened.owed_cents
            self.paid.first = amount(max(0, -owed if self.sort.value is MoneySort.REFUND else owed))
            self.paid.value = self.paid.first

    def go(self) -> None:
        cents = self.read(self.paid, parse_cents)
        back = self.sort.value is MoneySort.REFUND
        if not back and cents > max(0, self.opened.owed_cents):
            self.insist(cents, too_much_words(cents, self.opened.owed_cents, self.desk.picture.settings))
        payment = NewPayment(
            cents=cents, way=self.way.value, paid_before_cents=self.opened.paid_cents, sort=self.sort.value
        )
        self.done(self.attempt(take_payment, self.opened.box, payment))

    def anew(self) -> Dialog:
        return PaymentDialog(self.desk, self.opened.box.id)
