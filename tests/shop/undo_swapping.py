"""How to come to each operation of swap sets, and the act itself; see undo_scenarios."""

from datetime import timedelta

from queueboard.records.swaps import missing_knives
from queueboard.seedfiles import seed_text
from queueboard.shop import numbers, swapping
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer
from queueboard.values.actor import Actor
from queueboard.values.swap import NewRound
from tests.shop.place import NOW, box, by
from tests.shop.undo_closing import Act

SWAPS_ON = seed_text("settings.toml").replace("on = false ", "on = true ")
WEEK_LATER = Actor(initials="J", now=NOW + timedelta(days=7))


def kitchen(shop: Shop, name: str = "Brant Street kitchen") -> tuple[int, int]:
    """Ids of the sets A and B of a kitchen, of two kinds; the shop has switched swap sets on."""
    numbers.take_settings(shop, by(), SWAPS_ON)
    customer = add_customer(shop, by(), name=name)
    a, b = (swapping.define_set(shop, by(), customer, one, "2 chef, 1 paring") for one in "AB")
    return a, b


def one_missing(shop: Shop, name: str = "Brant Street kitchen") -> int:
    """The number of the box that B is, which came back without its paring knife."""
    a, b = kitchen(shop, name)
    number = swapping.note_round(shop, by(), NewRound(sharp_set_id=a, dull_set_id=b, dull="2 chef"))
    assert number is not None
    return number


def do_define_set(shop: Shop) -> Act:
    kitchen(shop)
    customer = add_customer(shop, by(), name="Kelp & Co")
    return lambda actor: swapping.define_set(shop, actor, customer, "A", "3 chef")


def do_note_round(shop: Shop) -> Act:
    a, b = kitchen(shop)
    new = NewRound(sharp_set_id=a, dull_set_id=b, dull="1 chef tip 3mm, 1 chef chip 0.5mm")
    return lambda actor: swapping.note_round(shop, actor, new)


def do_found_again(shop: Shop) -> Act:
    number = one_missing(shop)
    (lost,) = missing_knives(shop.database, "TRUE")
    swapping.charge_missing(shop, WEEK_LATER, lost, box(shop, number).box, 2400)
    (charged,) = missing_knives(shop.database, "TRUE")
    return lambda actor: swapping.found_again(shop, actor, charged)


def do_charge_missing(shop: Shop) -> Act:
    number = one_missing(shop)
    (lost,) = missing_knives(shop.database, "TRUE")
    numbers.take_settings(shop, by(), SWAPS_ON.replace("waiting_days = 7", "waiting_days = 0"))
    return lambda actor: swapping.charge_missing(shop, actor, lost, box(shop, number).box, 2400)


def do_check_set(shop: Shop) -> Act:
    one_missing(shop)
    return lambda actor: swapping.check_set(shop, actor, 2)
