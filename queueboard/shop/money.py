"""Prices set by hand, and money taken."""

from queueboard.errors import ChangedError
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
    """Take money for a box, at least one cent; paying more than is owed is allowed and shows as paid too much."""
    writing.tell(number=box.number, cents=new.cents, to=new.way.value)
    rows.fresh_box(writing, box)
    add_payment(writing, box, new)


def add_payment(writing: Writing, box: Box, new: NewPayment) -> None:
    """Store money taken, unless other money has come in for the box since it was typed."""
    rows.checked_cents(new.cents, lowest=1)
    paid = asking.paid_cents(writing.database, box.id)
    if paid != new.paid_before_cents:
        raise ChangedError(
            f"Money for box {box.number} was taken or taken back meanwhile: {paid / 100:.2f} is paid now, "
            f"not {new.paid_before_cents / 100:.2f}. Nothing was stored. Look again, then decide."
        )
    writing.insert(
        PaymentRow,
        box_id=box.id,
        cents=new.cents,
        way=new.way.value,
        at_us=writing.now_us,
        by=writing.actor.initials,
        sort=new.sort.value,
    )
