"""Orders from a file: tried without storing anything, taken all or none, and noticed when they come a second time."""

from dataclasses import replace

import pytest

from queueboard.errors import RuleError
from queueboard.intake.orders import Order, Orders, read_orders
from queueboard.shop.announcing import call_off
from queueboard.shop.opening import Shop
from queueboard.shop.orders import take_orders, try_orders
from queueboard.shop.receiving import add_customer
from tests.shop.place import box, by, picture, state
from tests.shop_settings import settings

FILE = "name,phone,knives,expected_on\nOake,555 0160,6,2026-12-01\nNora Finch,,2,\n"


def read(text: str = FILE) -> Orders:
    """A file, read."""
    return read_orders(text, settings())


def test_trying_stores_nothing(shop: Shop) -> None:
    """Customers, boxes and history are as before, and the good ones are those that the shop would take."""
    before = state(shop)
    lines = shop.database.one("SELECT count(*) FROM history")

    tried = try_orders(shop, by(), read())
    assert [order.line for order in tried.good] == [2, 3]
    assert tried.bad == ()
    assert state(shop) == before
    assert shop.database.one("SELECT count(*) FROM history") == lines


def test_each_order_is_an_announced_box(shop: Shop) -> None:
    """New customers are written down, known ones are found again, whatever their capitals and accents."""
    known = add_customer(shop, by(), name="Öake", phone="(555) 0160")

    first, second = take_orders(shop, by(), read().good)
    assert box(shop, first).customer.id == known
    assert (box(shop, first).box.expected_knives, box(shop, first).box.announced) == (6, True)
    assert box(shop, second).customer.name == "Nora Finch"
    assert len(picture(shop).boxes) == 2


def test_the_same_file_is_noticed(shop: Shop) -> None:
    """Each line says which box it has become, also when that one was called off; nothing is taken in twice."""
    first, second = take_orders(shop, by(), read().good)
    call_off(shop, by(), box(shop, second).box, "sold them")

    tried = try_orders(shop, by(), read())
    assert tried.good == ()
    assert [bad.why for bad in tried.bad] == [
        f"Box {n} says the same already; it was taken in before." for n in (first, second)
    ]


def test_a_line_that_stands_there_twice_is_one_order(shop: Shop) -> None:
    """The second is named with the line of the first."""
    tried = try_orders(shop, by(), read("name,knives\nOake,3\nOake,3\nOake,4\n"))

    assert [order.line for order in tried.good] == [2, 4]
    assert [(bad.line, bad.why) for bad in tried.bad] == [(3, "It says the same as line 2.")]


def test_two_customers_of_one_name_are_asked_about(shop: Shop) -> None:
    """Without a phone nobody can tell which is meant; with one it is clear."""
    add_customer(shop, by(), name="Oake", phone="555 0160")
    other = add_customer(shop, by(), name="Oake", phone="555 0199")

    tried = try_orders(shop, by(), read("name,phone\nOake,\nOake,555-0199\n"))
    assert [bad.why for bad in tried.bad] == ["There are 2 customers called Oake; the phone says which is meant."]
    (number,) = take_orders(shop, by(), tried.good)
    assert box(shop, number).customer.id == other


def test_all_are_taken_or_none(shop: Shop) -> None:
    """Where one of them cannot be stored, nothing of the others stays."""
    good = read().good
    over = Order(line=4, box=replace(good[0].box, expected_knives=1000))
    before = state(shop)

    with pytest.raises(Exception, match="1000 knives is outside"):
        take_orders(shop, by(), [*good, over])
    assert state(shop) == before
    with pytest.raises(RuleError, match="no order"):
        take_orders(shop, by(), [])


def test_the_customers_are_read_once_for_a_whole_file(shop: Shop) -> None:
    """However many orders there are: once to try them, once to take them."""
    known = add_customer(shop, by(), name="Oake")
    text = "name,knives\n" + "".join(f"Oake,{n}\n" for n in range(1, 21))
    asked: list[str] = []
    shop.database.query_hooks.append(lambda event: asked.append(event.sql))

    tried = try_orders(shop, by(), read(text))
    taken = take_orders(shop, by(), tried.good)

    shop.database.query_hooks.clear()
    assert len(taken) == 20
    assert {box(shop, number).customer.id for number in taken} == {known}
    assert sum("FROM customer WHERE merged_into IS NULL" in sql for sql in asked) == 2
    assert sum("FROM erased_customer" in sql for sql in asked) == 2


def test_somebody_new_who_orders_twice_is_one_customer(shop: Shop) -> None:
    """The second line of a name finds whom the first has written down; another phone is somebody else."""
    orders = read("name,phone,knives\nOake,555 0160,3\nOAKE,5550160,4\nOake,555 0199,5\n").good

    first, second, third = (box(shop, number).customer.id for number in take_orders(shop, by(), orders))

    assert first == second != third
