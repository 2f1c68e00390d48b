"""For every operation on announced boxes: how to come to it, and the one act itself."""

from dataclasses import replace
from datetime import date

from queueboard.intake.orders import Order
from queueboard.shop import announcing
from queueboard.shop.opening import Shop
from queueboard.shop.orders import take_orders
from queueboard.shop.picture import BoxPicture
from queueboard.values.new import NewAnnounced, NewCustomer, NewPromise
from queueboard.words import PromiseKind
from tests.shop.place import box, by
from tests.shop.undo_closing import Act

OAKE = NewAnnounced(
    new_customer=NewCustomer(name="Oake", phone="555 0160"),
    expected_knives=6,
    expected_on=date(2026, 11, 12),
    carrier_days=2,
    promise=NewPromise(kind=PromiseKind.SHIPS_BY, day=date(2026, 11, 18), told_to="Oake"),
)
"""Six knives, to come on Thursday and to leave on the Wednesday after."""


def announced(shop: Shop) -> BoxPicture:
    """An announced box."""
    return box(shop, announcing.announce_box(shop, by(), OAKE))


def do_announce_box(shop: Shop) -> Act:
    return lambda actor: announcing.announce_box(shop, actor, OAKE)


def do_take_orders(shop: Shop) -> Act:
    orders = [Order(line=2, box=OAKE), Order(line=3, box=replace(OAKE, note="A-17"))]
    return lambda actor: take_orders(shop, actor, orders)


def do_expect_box(shop: Shop) -> Act:
    made = announced(shop)
    return lambda actor: announcing.expect_box(shop, actor, made.box, 8, date(2026, 11, 13))


def do_arrived(shop: Shop) -> Act:
    made = announced(shop)
    return lambda actor: announcing.arrived(shop, actor, made.box)


def do_call_off(shop: Shop) -> Act:
    made = announced(shop)
    return lambda actor: announcing.call_off(shop, actor, made.box, "sold the knives")
