"""A new customer comes in with the box: both are stored in one step, or neither is."""

from dataclasses import replace

import pytest

from queueboard.errors import QueueboardError, TypedError
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import customers, receive_box
from queueboard.shop.undoing import last_undo, steps, undo
from queueboard.values.new import NewBox, NewCustomer
from queueboard.words import CameBy, GoesBy
from tests.shop.place import box, by, chef, counter, state

OAKE = NewCustomer(name="Bren Oake", phone="555 0177", town="Dunmere", address="3 Quay Lane", notes="rings twice")
NEW = NewBox(new_customer=OAKE, came_by=CameBy.COUNTER, goes_by=GoesBy.PICK_UP, counted=1, knives=(chef(),))


def test_box_and_customer_are_one_step(shop: Shop) -> None:
    """The customer is stored as typed, and one step of history holds both."""
    number = receive_box(shop, by("MB"), NEW)

    stored = box(shop, number).customer
    typed = (OAKE.name, OAKE.phone, OAKE.town, OAKE.address, OAKE.notes)
    assert (stored.name, stored.phone, stored.town, stored.address, stored.notes) == typed
    assert [step.operation for step in steps(shop, "MB")] == ["receive_box"]


@pytest.mark.parametrize("changes", [{"counted": 2}, {"carrier_days": 61}, {"note": "x" * 2001}])
def test_a_refused_box_stores_no_customer(shop: Shop, changes: dict[str, int | str]) -> None:
    """Whatever is wrong with the box, nothing of it is left in the shop file."""
    before = state(shop)

    with pytest.raises(TypedError):
        receive_box(shop, by(), replace(NEW, **changes))  # type: ignore[arg-type]  # each field has a type of its own

    assert state(shop) == before


def test_exactly_one_customer_is_named(shop: Shop) -> None:
    """A known and a new customer at once are refused, and so is none at all."""
    known = counter(shop).customer.id
    before = state(shop)

    for wrong in (replace(NEW, customer_id=known), replace(NEW, new_customer=None)):
        with pytest.raises(TypedError, match="Whose is this box"):
            receive_box(shop, by(), wrong)

    assert state(shop) == before


def test_undo_takes_both_out_again(shop: Shop) -> None:
    """Undoing the step leaves neither box nor customer; undoing that brings both back."""
    before = state(shop)
    receive_box(shop, by("MB"), NEW)
    after = state(shop)

    undo(shop, by("MB", minutes=1), steps(shop, "MB")[0].group_id, "typed by mistake")
    assert state(shop) == before

    newest = last_undo(shop, "MB")
    assert newest is not None
    undo(shop, by("MB", minutes=2), newest.group_id, "it was right")
    assert state(shop) == after


def test_undo_is_refused_while_the_customer_has_another_box(shop: Shop) -> None:
    """A customer with a second box cannot be taken out with the first; a sentence says so and nothing changes."""
    receive_box(shop, by("MB"), NEW)
    (oake,) = customers(shop)
    receive_box(shop, by("MB", minutes=1), replace(NEW, new_customer=None, customer_id=oake.id))
    before = state(shop)

    with pytest.raises(QueueboardError):
        undo(shop, by("MB", minutes=2), steps(shop, "MB")[1].group_id, "typed by mistake")

    assert state(shop) == before
