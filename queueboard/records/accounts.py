"""Boxes of which something has left without its money, read with fixed SQL."""

from dataclasses import dataclass
from datetime import datetime

from queueboard.money.bill import Bill
from queueboard.records.cells import whole
from queueboard.records.charges import CHARGED_BOX, charges_of
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.reading import BOX, CUSTOMER, box_of, by_box, customer_of, knives_of, payments_of
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.words import Settling

_LEFT = "SELECT box_id FROM close_out WHERE finished_us IS NOT NULL AND settled <> ?"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftUnpaid:
    """A box of which something left on account or unpaid, whatever was paid since."""

    box: Box
    customer: Customer
    bill: Bill
    left_at: datetime
    """When something of it first left without its money."""
    settled: Settling
    """How it left then."""


def left_unpaid(database: ShopDatabase, customer_id: int | None = None) -> tuple[LeftUnpaid, ...]:
    """Every such box, or those of one customer, the oldest first."""
    paid = Settling.PAID.value
    whose, values = ("", (paid,)) if customer_id is None else (" AND customer_id = ?", (paid, customer_id))
    boxes = tuple(map(box_of, database.rows(f"{BOX} WHERE id IN ({_LEFT}){whose}", values)))
    left = {
        whole(row[0]): (from_us(whole(row[1])), Settling(str(row[2])))
        for row in database.rows(
            "SELECT box_id, finished_us, settled FROM close_out "
            "WHERE finished_us IS NOT NULL AND settled <> ? ORDER BY finished_us DESC, id DESC",
            (paid,),
        )
    }
    inside = f"IN (SELECT id FROM box WHERE id IN ({_LEFT}){whose})"
    knives = by_box(knives_of(database, f"k.box_id {inside}", *values), lambda knife: knife.box_id)
    charges = by_box(charges_of(database, f"{CHARGED_BOX} {inside}", *values), lambda charge: charge.box_id)
    payments = by_box(payments_of(database, f"box_id {inside}", *values), lambda payment: payment.box_id)
    customers = {
        customer.id: customer
        for customer in map(customer_of, database.rows(f"{CUSTOMER} WHERE id IN (SELECT customer_id FROM box)"))
    }
    found = (
        LeftUnpaid(
            box=box,
            customer=customers[box.customer_id],
            bill=Bill(
                knives=knives.get(box.id, ()),
                charges=charges.get(box.id, ()),
                payments=payments.get(box.id, ()),
                rounding=box.rounding,
            ),
            left_at=left[box.id][0],
            settled=left[box.id][1],
        )
        for box in boxes
    )
    return tuple(sorted(found, key=lambda one: (one.left_at, one.box.id)))
