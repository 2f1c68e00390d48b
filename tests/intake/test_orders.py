"""A file of orders read line by line: what is a box, what is none and why, whatever somebody put into the file."""

import csv
import json
from datetime import date
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.intake.orders import MOST_ORDERS, read_orders
from queueboard.words import GoesBy
from tests.shop_settings import settings

SHOP = settings()
FILE = """name,phone,town,knives,kinds,expected_on,goes_back,note
"Tallis, Maren",555 0142,Dunmere,6,,2026-12-01,,order A-17
Oake,,,,"2 chef 20, 1 slim",2026-12-02,pick-up,
"""


def test_each_line_is_a_box() -> None:
    """Name with a comma, count, shorthand, day, way back and note come out as they were written."""
    orders = read_orders(FILE, SHOP)

    assert orders.bad == ()
    first, second = (order.box for order in orders.good)
    assert first.new_customer is not None
    assert (first.new_customer.name, first.new_customer.phone, first.new_customer.town) == (
        "Tallis, Maren",
        "555 0142",
        "Dunmere",
    )
    assert (first.expected_knives, first.expected_on) == (6, date(2026, 12, 1))
    assert (first.goes_by, first.note) == (GoesBy.PARCEL, "order A-17")
    assert (second.expected_knives, second.goes_by, second.carrier_days) == (3, GoesBy.PICK_UP, 0)
    assert second.note == "2 chef 20, 1 slim"


def test_json_lines_say_the_same() -> None:
    """The same orders as an object a line are the same boxes."""
    rows = csv.DictReader(StringIO(FILE))
    lines = "\n".join(json.dumps({name: cell for name, cell in row.items() if cell}) for row in rows)

    assert [order.box for order in read_orders(lines, SHOP).good] == [o.box for o in read_orders(FILE, SHOP).good]


@pytest.mark.parametrize(
    ("line", "why"),
    [
        (",6", "The name is empty"),
        ("Oake,0", "A whole number from 1 to 999"),
        ("Oake,two", "“two” knives"),
        (f"Oake,{'9' * 5000}", "A whole number from 1 to 999"),
        ("Oake,6,,,,,,,,,", "cells"),
        ("Oake,5,2 chef", "add up to 2"),
        ("Oake,,2 swords", "no kind “swords”"),
        ("Oake,1,,1 Dec", "is no day"),
        ("Oake,1,,,by pigeon", "is no way back"),
        ("Oake\0,1", "NUL"),
    ],
)
def test_a_bad_line_is_named_and_the_others_are_read(line: str, why: str) -> None:
    """The sentence has the number of its line; those before and after are boxes."""
    orders = read_orders(f"name,knives,kinds,expected_on,goes_back\nNora,1\n{line}\nPiet,2\n", SHOP)

    assert [order.line for order in orders.good] == [2, 4]
    (bad,) = orders.bad
    assert bad.line == 3
    assert why in bad.why


def test_a_cell_of_two_lines_does_not_shift_the_numbers() -> None:
    """Lines are counted as an editor counts them, RFC 4180's line ends inside quotes included."""
    orders = read_orders('name,note\r\nOake,"two\r\nlines"\r\n,x\r\n', SHOP)

    assert [order.line for order in orders.good] == [2]
    assert [bad.line for bad in orders.bad] == [4]


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ('{"name": "Oake", "knives": 2.5}', "neither text nor a whole number"),
        ('{"name": "Oake", "knives": true}', "neither text nor a whole number"),
        ('{"name": "Oake", "name": "Nora"}', "twice"),
        ('{"name": "Oake", "colour": "red"}', "no column of orders"),
        ('["Oake"]', "no JSON object"),
        ('{"name": "Oake"', "no JSON"),
        ("[" * 100_000, "no JSON"),
    ],
)
def test_a_bad_object_is_named(line: str, why: str) -> None:
    """The line is left out with its number, the next one is read."""
    orders = read_orders('{"name": "Nora"}\n' + line + '\n\n{"name": "Piet"}\n', SHOP)

    assert [order.line for order in orders.good] == [1, 4]
    (bad,) = orders.bad
    assert bad.line == 2
    assert why in bad.why


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "no order"),
        ("name\n", "no order"),
        ("knives\n3\n", "no column “name”"),
        ("name,colour\nOake,red\n", "“colour” is no column"),
        ("name,name\nOake,Oake\n", "twice"),
        ("name\n" + "Oake\n" * (MOST_ORDERS + 1), "more than"),
        ('"name\n', "cannot be read as CSV"),
    ],
)
def test_what_is_no_file_of_orders_is_refused_whole(text: str, why: str) -> None:
    """Nothing of it is read as an order."""
    with pytest.raises(TypedError, match=why):
        read_orders(text, SHOP)


NAMES = st.text(st.characters(codec="utf-8"), min_size=1, max_size=30)


@given(st.lists(st.fixed_dictionaries({"name": NAMES, "note": NAMES}), min_size=1, max_size=5))
def test_any_text_is_a_box_or_a_bad_line(rows: list[dict[str, str]]) -> None:
    """Whatever stands in the cells, each line is read or named, and none is lost."""
    out = StringIO(newline="")
    writer = csv.DictWriter(out, ["name", "note"])
    writer.writeheader()
    writer.writerows(rows)

    orders = read_orders(out.getvalue(), SHOP)
    assert len(orders.good) + len(orders.bad) == len(rows)


@given(st.text(max_size=80))
def test_any_file_is_read_or_refused_with_a_sentence(text: str) -> None:
    """Nothing but a sentence comes of what is no file of orders."""
    try:
        orders = read_orders(text, SHOP)
    except TypedError:
        return
    assert orders.good or orders.bad
