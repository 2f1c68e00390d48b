"""Boxes that somebody says will come by mail: announced, expected, in the door, or called off."""

from datetime import date

from queueboard.clean import clean
from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.records import asking
from queueboard.records.database import Cell
from queueboard.records.tables import BoxRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.days import checked_day, today_of
from queueboard.shop.operation import operation
from queueboard.shop.receiving import MOST_KNIVES, in_the_door, store_box
from queueboard.values.box import Box
from queueboard.values.new import NewAnnounced, NewBox
from queueboard.words import CameBy


@operation(undo_needs_reason=True)
def announce_box(writing: Writing, new: NewAnnounced) -> int:
    """Note a box that will come by mail, with its customer when that is a new one; returns the box's number.

    Nothing of it is on hand, and no close-out waits for it, until it is in the door.
    """
    return store_announced(writing, new)


def store_announced(writing: Writing, new: NewAnnounced) -> int:
    """Store a box that is announced; returns its number."""
    return store_box(
        writing,
        NewBox(
            customer_id=new.customer_id,
            new_customer=new.new_customer,
            came_by=CameBy.MAIL,
            goes_by=new.goes_by,
            counted=0,
            knives=(),
            number=new.number,
            carrier_days=new.carrier_days,
            promise=new.promise,
            label=new.label,
            opened=False,
            rush=new.rush,
            note=new.note,
        ),
        announced_us=writing.now_us,
        **_expected(writing, new.expected_knives, new.expected_on),
    )


@operation()
def expect_box(writing: Writing, box: Box, knives: int | None, on: date | None) -> None:
    """Say anew how many knives an announced box should hold, and on which day it should come; None when not known."""
    _only_announced(writing, box)
    writing.tell(number=box.number)
    writing.change(BoxRow, box.id, box.version, **_expected(writing, knives, on))


@operation()
def arrived(writing: Writing, box: Box) -> None:
    """Say that an announced box is in the door, unopened."""
    _only_announced(writing, box)
    writing.tell(number=box.number)
    writing.change(BoxRow, box.id, box.version, **in_the_door(writing))


@operation(undo_needs_reason=True)
def call_off(writing: Writing, box: Box, reason: str) -> None:
    """Say that an announced box will not come, and why; it leaves the board."""
    text = clean(reason, limit=500, field="reason")
    if not text:
        raise ReasonNeededError(f"Say why box {box.number} does not come.")
    _only_announced(writing, box)
    paid = asking.paid_cents(writing.database, box.id)
    if paid:
        raise RuleError(f"{paid / 100:.2f} was paid for box {box.number}; give it back or undo it first.")
    writing.reason = text
    writing.tell(number=box.number)
    writing.change(BoxRow, box.id, box.version, closed_us=writing.now_us, this_next=0)


def _only_announced(writing: Writing, box: Box) -> None:
    rows.fresh_box(writing, box)
    if not box.announced:
        raise RuleError(f"Box {box.number} is in the door already.")


def _expected(writing: Writing, knives: int | None, on: date | None) -> dict[str, Cell]:
    """What was said of a box that will come, where it can be so."""
    if knives is not None and not 1 <= knives <= MOST_KNIVES:
        raise TypedError(f"{knives} knives is outside 1 to {MOST_KNIVES}; leave it empty when nobody said.")
    if on is not None and on < today_of(writing):
        raise TypedError(f"{on.isoformat()} is over; type the day on which the box should come, or leave it empty.")
    return {
        "expected_knives": knives,
        "expected_on": None if on is None else checked_day(writing, on, "day on which it should come"),
    }
