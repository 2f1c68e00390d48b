"""What a box is charged for, in words."""

from dataclasses import replace

import pytest

from queueboard.phrases.bill import add_on_words, charge_words, limit_words, payment_words, price_words, sums_words
from queueboard.phrases.moves import step_words, undo_words
from queueboard.priced_words import ChargeSort, MoneySort
from queueboard.shop.picture import BoxPicture
from queueboard.values.box import Charge
from queueboard.values.step import About, Step
from queueboard.values.totals import Totals
from queueboard.words import DeclineReason
from tests.money.test_bill import KNIVES, charge
from tests.pictures import NOW, box, box_picture, payment, picture
from tests.shop_settings import settings

SHOP = settings()
CHIPS = replace(charge(ChargeSort.CHIPS, 600, of=KNIVES[0]), text="2 mm deep")
BOX: BoxPicture = replace(box_picture(box(214), knives_=KNIVES, promises=()), charges=(CHIPS,))


def test_a_knife_shows_its_price_and_add_ons() -> None:
    """Price and add-ons stand in a narrow cell, in full beside it; what is declined is free, what is apart says so."""
    assert price_words(KNIVES[0], BOX, SHOP) == "9.00+6.00"
    assert price_words(KNIVES[1], BOX, SHOP) == "9.00 EUR"
    assert price_words(replace(KNIVES[0], apart=True), BOX, SHOP) == "15.00 apart"
    assert price_words(replace(KNIVES[0], declined=DeclineReason.CRACKED), BOX, SHOP) == "free"
    assert add_on_words(KNIVES[0], BOX) == "chips 6.00, 2 mm deep"


@pytest.mark.parametrize(
    ("one", "words"),
    [
        (CHIPS, "214-1 chips 6.00, 2 mm deep"),
        (charge(ChargeSort.DISCOUNT, ppm=100_000), "discount 10 %"),
        (charge(ChargeSort.MINIMUM, 1500), "up to the minimum of 15.00"),
        (charge(ChargeSort.SHIPPING, 1200, tax_ppm=72_500), "return shipping 12.00 and 7.25 % tax"),
        (replace(charge(ChargeSort.OTHER, 300), text="[red]x[/]"), "other 3.00, [red]x[/]"),
    ],
)
def test_a_charge_says_what_how_much_and_what_for(one: Charge, words: str) -> None:
    """The sort, the amount or share, the tax on it, then the person's own words."""
    assert charge_words(one, BOX) == words


def test_sums_say_what_a_total_is_made_of() -> None:
    """Every part that is there stands before its total; prices of knives alone need no sum."""
    assert sums_words(BOX.totals, SHOP) == "knives 35.00, add-ons 6.00 = 41.00 EUR"
    assert sums_words(Totals(knives_cents=3500), SHOP) == ""
    every = Totals(
        knives_cents=900, rush_cents=450, minimum_cents=150, discount_cents=150, shipping_cents=1200, tax_cents=98
    )
    said = "knives 9.00, rush 4.50, minimum 1.50, discount -1.50, shipping 12.00, tax 0.98 = 26.48 EUR"
    assert sums_words(every, SHOP) == said


def test_a_limit_is_said_and_loud_once_passed() -> None:
    """What was agreed stands there; above it the sum, the limit and what to do."""
    assert limit_words(BOX, SHOP) == ""
    within = replace(BOX, box=replace(BOX.box, not_above_cents=6000))
    above = replace(BOX, box=replace(BOX.box, not_above_cents=4000))

    assert limit_words(within, SHOP) == "not above 60.00 EUR"
    assert limit_words(above, SHOP) == "ABOVE LIMIT: 41.00 EUR, agreed up to 40.00 EUR. Call; w lets it wait"


def test_money_is_named_by_its_sort() -> None:
    """A payment, a deposit and money given back are told apart."""
    shop = picture(BOX)
    paid = [payment_words(replace(payment(400), sort=sort), shop) for sort in MoneySort]

    assert [words.split(" 4.00 EUR cash, today")[0] for words in paid] == ["paid", "deposit", "given back"]


def test_a_refund_is_no_payment_in_history() -> None:
    """Money given back reads so in history and in undo."""
    about = About(number=214, to="cash", was="refund", cents=400)
    step = Step(group_id="x", operation="take_payment", about=about, at=NOW, by="J", needs_reason=True)

    assert step_words(step) == "4.00 cash given back for box 214"
    assert undo_words(step) == "4.00 cash was not given back for box 214"
