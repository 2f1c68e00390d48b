"""What holds of swap sets beside the story of a restaurant."""

from datetime import timedelta

import pytest

from queueboard.errors import RuleError, SettingsError, TypedError
from queueboard.papers.swaps import swap_sheets
from queueboard.records.swaps import missing_knives, sets_of
from queueboard.settings.reading import read_settings
from queueboard.shop import correcting, numbers, swapping
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer, customers
from queueboard.shop.swaps_seen import kitchens
from queueboard.values.actor import Actor
from queueboard.values.new import NewCustomer
from queueboard.values.swap import NewRound
from tests.shop.place import NOW, box, by, parcel, picture
from tests.shop.undo_swapping import SWAPS_ON, WEEK_LATER, kitchen, one_missing


def test_the_same_name_typed_again_changes_the_set(shop: Shop) -> None:
    """Whatever its case; another kitchen's A is another set."""
    a, _ = kitchen(shop)
    first = sets_of(shop.database, "s.id = ?", a)[0]
    assert swapping.define_set(shop, by(), first.customer_id, "a", "3 chef, 1 bread", 14) == a
    swapping.define_set(shop, by(), NewCustomer(name="Kelp & Co"), "A", "1 slicer")

    now = sets_of(shop.database, "s.id = ?", a)[0]
    assert (dict(now.whole), now.every_days, now.name) == ({"chef": 3, "bread": 1}, 14, "A")
    assert [one.customer.name for one in kitchens(shop, NOW)] == ["Brant Street kitchen", "Kelp & Co"]


@pytest.mark.parametrize(
    ("name", "knives", "every", "says"),
    [
        ("", "2 chef", 7, "no name"),
        ("A" * 21, "2 chef", 7, "20"),
        ("A", "2 spoons", 7, "spoons"),
        ("A", "2 chef", 0, "outside 1 to 60"),
        ("A", "999 chef, 1 paring", 7, "more than 999"),
    ],
)
def test_a_set_that_is_typed_wrong_stores_nothing(shop: Shop, name: str, knives: str, every: int, says: str) -> None:
    """A sentence says what, and the new kitchen is not stored either."""
    numbers.take_settings(shop, by(), SWAPS_ON)
    with pytest.raises(TypedError, match=says):
        swapping.define_set(shop, by(), NewCustomer(name="Kelp & Co"), name, knives, every)

    assert not sets_of(shop.database, "TRUE")
    assert not customers(shop)


def test_customers_put_together_keep_their_sets(shop: Shop) -> None:
    """The sets of the double go to the one that is kept, with their rounds."""
    one_missing(shop)
    double = kitchens(shop, NOW)[0].customer
    keep = add_customer(shop, by(), name="Brant Street")
    kept = next(one for one in customers(shop) if one.id == keep)
    correcting.merge_customers(shop, by(), kept, double)

    (one,) = kitchens(shop, NOW)
    assert (one.customer.id, len(one.sets), len(one.missing)) == (keep, 2, 1)


def test_a_missing_knife_is_charged_to_its_own_kitchen_only(shop: Shop) -> None:
    """Not on a box of somebody else, not twice, and not once it was found."""
    number = one_missing(shop)
    other = parcel(shop)
    (lost,) = missing_knives(shop.database, "TRUE")
    with pytest.raises(RuleError, match="not a box of this kitchen"):
        swapping.charge_missing(shop, WEEK_LATER, lost, other.box, 2400)
    swapping.charge_missing(shop, WEEK_LATER, lost, box(shop, number).box, 2400)
    (charged,) = missing_knives(shop.database, "TRUE")
    with pytest.raises(RuleError, match="charged already"):
        swapping.charge_missing(shop, WEEK_LATER, charged, box(shop, number).box, 2400)
    later = Actor(initials="J", now=WEEK_LATER.now + timedelta(hours=1))
    swapping.found_again(shop, later, charged)
    (found,) = missing_knives(shop.database, "TRUE")
    with pytest.raises(RuleError, match="found already"):
        swapping.found_again(shop, later, found)
    assert not box(shop, number).charges


def test_two_kitchens_do_not_swap_with_each_other(shop: Shop) -> None:
    """Sets of two kitchens, the same set twice and no set at all are refused."""
    a, b = kitchen(shop)
    other = swapping.define_set(shop, by(), NewCustomer(name="Kelp & Co"), "A", "2 chef")
    with pytest.raises(RuleError, match="two kitchens"):
        swapping.note_round(shop, by(), NewRound(sharp_set_id=a, dull_set_id=other, dull="2 chef"))
    for one in (b, None):
        with pytest.raises(TypedError, match="name two sets"):
            swapping.note_round(shop, by(), NewRound(sharp_set_id=one, dull_set_id=one, dull="2 chef"))


def test_people_s_words_are_printed_literally(shop: Shop) -> None:
    """Signs that could be markup or a sequence stand on the sheet as they were typed, without what a terminal obeys."""
    kitchen(shop, "[red]Brant[/] \x1b[31m" + "x" * 100)
    text = swap_sheets(kitchens(shop, NOW), picture(shop))
    assert "[red]Brant[/]" in text
    assert "\x1b" not in text


@pytest.mark.parametrize("typed", ["60", "-1", '"1 mm"', "0.00001", "true"])
def test_a_free_nick_that_is_no_size_is_named_with_its_line(typed: str) -> None:
    """free_nick_mm is a number of millimetres from 0 to 50."""
    line = next(place for place, text in enumerate(SWAPS_ON.split("\n"), 1) if text.startswith("free_nick_mm"))
    with pytest.raises(SettingsError, match=f"line {line}: free_nick_mm is a number of millimetres"):
        read_settings(SWAPS_ON.replace("free_nick_mm = 1 ", f"free_nick_mm = {typed} "))


def test_half_a_millimetre_is_five_hundred_micrometres() -> None:
    """What is not written is as in the shape: off, 7 days, 1 mm."""
    swaps = read_settings(SWAPS_ON.replace("free_nick_mm = 1 ", "free_nick_mm = 0.5 ")).swaps
    assert (swaps.on, swaps.waiting_days, swaps.free_nick_um) == (True, 7, 500)
    bare = read_settings(SWAPS_ON.partition("[swaps]")[0] + "[prices]" + SWAPS_ON.partition("[prices]")[2]).swaps
    assert (bare.on, bare.waiting_days, bare.free_nick_um) == (False, 7, 1000)
