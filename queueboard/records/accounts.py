"""Boxes of which something has left without its money, read with fixed SQL."""

from datetime import datetime

from queueboard.money.bill import Bill, BillLines, add_ons, of_the_whole
from queueboard.records.cells import whole
from queueboard.records.charges import CHARGED_BOX, charges_of, charges_of_boxes
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.reading import BOX, CUSTOMER, box_of, by_box, customer_of, knives_of, payments_of
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.words import Settling

_HAS_LEFT = "(b.closed_us IS NOT NULL OR k.place = 'gone')"
"""A condition: a knife k of a box b has left, or its whole box has."""

_NOT_CHARGED = (
    "SELECT c.knife_id FROM charge c JOIN knife k ON k.id = c.knife_id JOIN box b ON b.id = k.box_id "
    f"WHERE (k.declined IS NOT NULL OR k.looking_for = 1 OR k.apart = 1 OR NOT {_HAS_LEFT})"
)
"""The knives with a charge of their own for which nothing is asked, or nothing yet."""

_OWING = f"finished_us IS NOT NULL AND settled <> '{Settling.PAID.value}'"
"""A condition on a close-out, written out as its index has it."""

_LEFT = f"SELECT box_id FROM close_out WHERE {_OWING}"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOwing:
    """A box of which something left on account or unpaid, with what of it has left, whatever was paid since."""

    box: Box
    customer: Customer
    lines: BillLines
    """Of a closed box all, of an open one the knives that have left, with all that concerns the whole box."""
    left_at: datetime
    """When something of it first left without its money."""
    settled: Settling
    """How it left then."""


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
    whose, values = _whose(customer_id)
    boxes = tuple(map(box_of, database.rows(f"{BOX} WHERE id IN ({_LEFT}){whose}", values)))
    left = _left(database, whose, *values)
    inside = f"IN (SELECT id FROM box WHERE id IN ({_LEFT}){whose})"
    knives = by_box(knives_of(database, f"k.box_id {inside}", *values), lambda knife: knife.box_id)
    charges = by_box(charges_of(database, f"{CHARGED_BOX} {inside}", *values), lambda charge: charge.box_id)
    payments = by_box(payments_of(database, f"box_id {inside}", *values), lambda payment: payment.box_id)
    customers = _customers(database, whose, *values)
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


def left_owing(database: ShopDatabase, customer_id: int | None = None) -> tuple[LeftOwing, ...]:
    """The same boxes with what their sums need, the oldest first: years of them are added up where they are stored."""
    whose, values = _whose(customer_id)
    which = f"SELECT id FROM box WHERE id IN ({_LEFT}){whose}"
    knives = by_box(
        (
            (whole(row[0]), whole(row[1]), whole(row[2]))
            for row in database.rows(
                "SELECT k.box_id, k.tax_ppm, sum(CASE WHEN k.declined IS NULL AND k.looking_for = 0 AND k.apart <> 1 "
                "THEN k.price_cents ELSE 0 END) FROM knife k JOIN box b ON b.id = k.box_id "
                f"WHERE k.box_id IN ({which}) AND {_HAS_LEFT} GROUP BY k.box_id, k.tax_ppm",
                values,
            )
        ),
        lambda line: line[0],
    )
    charges = by_box(charges_of_boxes(database, which, *values), lambda charge: charge.box_id)
    free = {whole(row[0]) for row in database.rows(f"{_NOT_CHARGED} AND k.box_id IN ({which})", values)}
    payments = by_box(payments_of(database, f"box_id IN ({which})", *values), lambda payment: payment.box_id)
    customers, left = _customers(database, whose, *values), _left(database, whose, *values)
    found = (
        LeftOwing(
            box=box,
            customer=customers[box.customer_id],
            lines=BillLines(
                knives=tuple((ppm, cents) for _, ppm, cents in knives.get(box.id, ())),
                add_ons=add_ons(charges.get(box.id, ()), free),
                whole=of_the_whole(charges.get(box.id, ())),
                paid_cents=sum(payment.in_cents for payment in payments.get(box.id, ())),
                rounding=box.rounding,
            ),
            left_at=left[box.id][0],
            settled=left[box.id][1],
        )
        for box in map(box_of, database.rows(f"{BOX} WHERE id IN ({_LEFT}){whose}", values))
    )
    return tuple(sorted(found, key=lambda one: (one.left_at, one.box.id)))


def _whose(customer_id: int | None) -> tuple[str, tuple[Cell, ...]]:
    """A further condition on box for one customer's boxes, none for all; and its values."""
    return ("", ()) if customer_id is None else (" AND customer_id = ?", (customer_id,))


def _left(database: ShopDatabase, whose: str, *values: Cell) -> dict[int, tuple[datetime, Settling]]:
    """When something of a box first left without its money, and how, by box."""
    boxes = f" AND box_id IN (SELECT id FROM box WHERE 1 = 1{whose})" if whose else ""
    return {
        whole(row[0]): (from_us(whole(row[1])), Settling(str(row[2])))
        for row in database.rows(
            "SELECT box_id, finished_us, settled FROM close_out "
            f"WHERE {_OWING}{boxes} ORDER BY finished_us DESC, id DESC",
            values,
        )
    }


def _customers(database: ShopDatabase, whose: str, *values: Cell) -> dict[int, Customer]:
    brought = database.rows(f"{CUSTOMER} WHERE id IN (SELECT customer_id FROM box WHERE 1 = 1{whose})", values)
    return {customer.id: customer for customer in map(customer_of, brought)}
