"""A box given to its right customer, and a customer entered twice put together."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.picker import CustomerPicker, customer_words
from queueboard.errors import TypedError
from queueboard.shop.correcting import give_box_to, merge_customers
from queueboard.shop.receiving import customers
from queueboard.values.customer import Customer


class GiveBoxDialog(Dialog):
    """A box entered for the wrong customer goes to the right one."""

    hint = "type a surname, Enter takes the match · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        self.picker = CustomerPicker(customers(desk.shop), label="belongs to")

    def heading(self) -> str:
        box = self.opened
        return f"Box {box.box.number} stands under {customer_words(box.customer)}"

    def fields(self) -> ComposeResult:
        yield self.picker

    def go(self) -> None:
        self.done(self.attempt(give_box_to, self.opened.box, self.picker.chosen()))

    def anew(self) -> Dialog:
        return GiveBoxDialog(self.desk, self.opened.box.id)


class MergeDialog(Dialog):
    """A customer entered twice: all boxes of the double go to the entry that is kept."""

    hint = "type the other entry, Enter takes it, Enter again puts them together · Esc leaves"

    def __init__(self, desk: Desk, keep: Customer) -> None:
        super().__init__(desk)
        self.keep = keep
        known = tuple(customer for customer in customers(desk.shop) if customer.id != keep.id)
        self.picker = CustomerPicker(known, label="the double", new=False)
        self.sure = Choice([("put them together, all boxes go to the one kept", True)])

    def heading(self) -> str:
        return f"Kept: {customer_words(self.keep)}. Which entry is the same person?"

    def fields(self) -> ComposeResult:
        yield self.picker
        yield self.sure

    def go(self) -> None:
        if self.picker.picked is None:
            self.picker.typed.focus()
            raise TypedError(self.picker.question())
        self.done(self.attempt(merge_customers, self.keep, self.picker.picked))

    def anew(self) -> Dialog:
        now = next((one for one in customers(self.desk.shop) if one.id == self.keep.id), self.keep)
        return MergeDialog(self.desk, now)
