"""Prices set by hand, and money taken."""

from queueboard.records.tables import KnifeRow, PaymentRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import PayWay


@operation()
def set_price(writing: Writing, knife: Knife, cents: int) -> None:
    """Set a knife's price by hand, 0 to 100,000.00."""
    writing.tell(tags=[knife.tag], cents=cents)
    rows.fresh_knife(writing, knife)
    writing.change(KnifeRow, knife.id, knife.version, price_cents=rows.checked_cents(cents, lowest=0))


@operation(undo_needs_reason=True)
def take_payment(writing: Writing, box: Box, cents: int, way: PayWay) -> None:
    """Take money for a box, at least one cent; paying more than is owed is allowed and shows as paid too much."""
    rows.checked_cents(cents, lowest=1)
    writing.tell(number=box.number, cents=cents, to=way.value)
    writing.insert(
        PaymentRow, box_id=box.id, cents=cents, way=way.value, at_us=writing.now_us, by=writing.actor.initials
    )
