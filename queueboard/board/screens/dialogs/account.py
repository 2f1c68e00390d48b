"""Money taken for a box that is gone."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.errors import ChangedError
from queueboard.phrases.money import amount, too_much_words
from queueboard.phrases.owing import owed_box_words
from queueboard.phrases.typed import parse_cents
from queueboard.shop.money import pay_account
from queueboard.shop.owing import OwedBox, owing
from queueboard.values.new import NewPayment
from queueboard.words import PayWay


class AccountDialog(Dialog):
    """How much came in for it, and how."""

    hint = "Enter takes it · a digit says how · Esc leaves · no card numbers here"

    def __init__(self, desk: Desk, owed: OwedBox) -> None:
        super().__init__(desk)
        self.owed = owed
        self.paid = Field(amount(owed.owed_cents), check=parse_cents)
        self.way = Choice([(way.value, way) for way in PayWay])

    def heading(self) -> str:
        return f"Money for box {self.owed.box.number}, which is gone"

    def fields(self) -> ComposeResult:
        yield Static(Content(owed_box_words(self.owed)))
        yield Row((f"taken, {self.desk.picture.settings.currency}", self.paid))
        yield Row(("how", self.way))

    def go(self) -> None:
        cents = self.read(self.paid, parse_cents)
        if cents > self.owed.owed_cents:
            self.insist(cents, too_much_words(cents, self.owed.owed_cents, self.desk.picture.settings))
        payment = NewPayment(cents=cents, way=self.way.value, paid_before_cents=self.owed.paid_cents)
        self.done(self.attempt(pay_account, self.owed.box, payment))

    def anew(self) -> Dialog:
        accounts = owing(self.desk.shop, self.desk.picture.now, self.owed.box.customer_id)
        boxes = (owed for account in accounts for owed in account.boxes)
        fresh = next((owed for owed in boxes if owed.box.id == self.owed.box.id), None)
        if fresh is None:
            raise ChangedError(f"Box {self.owed.box.number} was paid meanwhile; nothing was stored.")
        return AccountDialog(self.desk, fresh)
