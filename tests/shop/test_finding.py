"""Finding boxes by what is said on the phone: any word order, no accents, phones with blanks, open and gone."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.seedfiles import seed_text
from queueboard.shop import finding
from queueboard.shop.erasing import erase_customer
from queueboard.shop.finding import find, find_gone, gone_box, newest_gone, surname
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from tests.pictures import box_picture, customer, picture
from tests.shop.place import by, counter
from tests.shop.undo_shelf import gone

SHOP = picture(
    box_picture(417, customer_=customer("Maren Tallis", id=1, phone="0555 014 417", town="Osterby")),
    box_picture(420, customer_=customer("Kitchen 21 of the Heron", id=2, phone="", town="Vik")),
    box_picture(431, customer_=customer("Tallis, Åse", id=3, phone="+49 555-99 02", town="Vik")),
)


@pytest.mark.parametrize(
    ("typed", "numbers"),
    [
        ("tallis", [417, 431]),
        ("TALLIS maren", [417]),
        ("ase tallis", [431]),
        ("vik tallis", [431]),
        ("vik", [420, 431]),
        ("417", [417]),
        ("417-3", [417]),
        ("4417", [417]),
        ("9902", [431]),
        ("99 02", [431]),
        ("0555 014 417", [417]),
        ("tallis 9902", [431]),
        ("tallis 431", [431]),
        ("02", []),
        ("kitchen 21", [420]),
        ("tallis heron", []),
        ("  ", []),
    ],
)
def test_every_word_must_fit_in_any_order(typed: str, numbers: list[int]) -> None:
    """Names, town, number, tag and the last figures of the phone, each word for itself."""
    assert [box.box.number for box in find(SHOP, typed)] == numbers


@pytest.mark.parametrize(
    ("name", "said"),
    [("Maren Tallis", "tallis"), ("Tallis, Åse", "tallis"), ("van der Oake, Bo", "van der oake"), ("Heron", "heron")],
)
def test_the_surname_is_the_last_word_or_what_stands_before_a_comma(name: str, said: str) -> None:
    """However a name was typed, the same surname is the same."""
    assert surname(name) == said


@given(st.text(max_size=40))
def test_whatever_is_typed_finds_or_does_not(text: str) -> None:
    """No text breaks the search, and what is found is in it once."""
    found = find(SHOP, text)
    assert len({box.box.id for box in found}) == len(found)


def test_a_box_that_is_gone_is_found_as_an_open_one_is(shop: Shop) -> None:
    """By name without accents, by number and by phone; the newest first, and only so many."""
    first, second = gone(shop), gone(shop)
    counter(shop)

    assert [one.box.number for one in find_gone(shop, "tallis")] == [second.box.number, first.box.number]
    assert [one.box.number for one in find_gone(shop, "dunmere 0142", limit=1)] == [second.box.number]
    assert [one.box.number for one in find_gone(shop, str(first.box.number))] == [first.box.number]
    assert find_gone(shop, "verrin") == ()
    assert newest_gone(shop, 9999) is None


def test_boxes_are_looked_through_page_by_page(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where so many customers fit that their boxes are not asked for, the same are found, the newest first."""
    numbers = [gone(shop).box.number for _ in range(4)][::-1]
    asked = [one.box.number for one in find_gone(shop, "tallis")]
    monkeypatch.setattr(finding, "MOST_STANDING", 0)
    monkeypatch.setattr(finding, "FIRST_PAGE", 1)

    assert [one.box.number for one in find_gone(shop, "tallis")] == asked == numbers
    assert [one.box.number for one in find_gone(shop, f"tallis {numbers[2]}")] == [numbers[2]]
    assert [one.box.number for one in find_gone(shop, "tallis", limit=2)] == numbers[:2]


def test_an_erased_customer_is_not_found(shop: Shop) -> None:
    """Nothing of them is shown any more, whatever is typed."""
    take_settings(shop, by(), seed_text("settings.toml").replace("= 730", "= 0"))
    old = gone(shop)
    erase_customer(shop, by(minutes=5), old.customer.id, "asked by letter", though_owing=True)

    assert find_gone(shop, str(old.box.number)) == ()
    assert gone_box(shop, old.box.id) is None
