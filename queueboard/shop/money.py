"""Prices set by hand, and money taken."""

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.priced_words import MoneySort
from queueboard.records import asking
from queueboard.records.tables import KnifeRow, PaymentRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.values.new import NewPayment


@operation()
def set_price(writing: Writing, knife: Knife, cents: int) -> None:
    """Set a knife's price by hand, 0 to MOST_CENTS."""
    writing.tell(tags=[knife.tag], cents=cents)
    rows.fresh_knife(writing, knife)
    writing.change(KnifeRow, knife.id, knife.version, price_cents=rows.checked_cents(cents, lowest=0))


@operation(undo_needs_reason=True)
def take_payment(writing: Writing, box: Box, new: NewPayment) -> None:
    """Take money for an open box, or give it back, at least one cent.

    Paying more than is owed is allowed and shows as paid too much; no more is given back than was paid.
    """
    _tell(writing, box, new)
    rows.fresh_box(writing, box)
    add_payment(writing, box, new)


@operation(undo_needs_reason=True)
def pay_account(writing: Writing, box: Box, new: NewPayment) -> None:
    """Take money for a box that is closed out, gone on account or unpaid."""
    _tell(writing, box, new)
    if rows.box_now(writing.database, box.id).closed_at is None:
        raise RuleError(f"Box {box.number} is open; take the payment at the box.")
    add_payment(writing, box, new)


def _tell(writing: Writing, box: Box, new: NewPayment) -> None:
    writing.tell(number=box.number, cents=new.cents, to=new.way.value, was=new.sort.value)


def add_payment(writing: Writing, box: Box, new: NewPayment) -> None:
    """Store money taken or given back, unless other money has come in for the box since it was typed."""
    rows.checked_cents(new.cents, lowest=1)
    paid = asking.paid_cents(writing.database, box.id)
    if paid != new.paid_before_cents:
        raise ChangedError(
            f"Money for box {box.number} was taken or taken back meanwhile: {paid / 100:.2f} is paid now, "
            f"not {new.paid_before_cents / 100:.2f}. Nothing was stored. Look again, then decide."
        )
    if new.sort is MoneySort.REFUND and new.cents > paid:
        raise TypedError(f"{paid / 100:.2f} was paid for box {box.number}; no more than that can be given back.")
    writing.insert(
        PaymentRow,
        box_id=box.id,
        cents=new.cents,
        way=new.way.value,
        at_us=writing.now_us,
        by=writing.actor.initials,
        sort=new.sort.value,
    )
