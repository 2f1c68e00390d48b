"""For which knives the gauge is asked: by the shop's rule, fixed when they come to the bench."""

import pytest

from queueboard.seedfiles import seed_text
from queueboard.shop.correcting import correct_customer
from queueboard.shop.fitting import fit_belt
from queueboard.shop.moving import move_knives
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.promising import set_flags
from queueboard.words import Column, WhyRead
from tests.shop.place import box, by, counter, parcel


def asked(shop: Shop, made: BoxPicture) -> list[WhyRead | None]:
    """Why the gauge is asked for each knife, once they have come to the bench."""
    knives = box(shop, made.box.number).knives
    move_knives(shop, by(), knives, Column.ON_BENCH)
    return [knife.gauge for knife in box(shop, made.box.number).knives]


def test_every_tenth_of_a_kind_is_read(shop: Shop) -> None:
    """Counted over boxes and trays, whatever comes together."""
    first, second = parcel(shop, knives=8), parcel(shop, knives=13, name="other")

    assert asked(shop, first) == [None] * 8
    assert asked(shop, second) == [None, WhyRead.NTH, *[None] * 9, WhyRead.NTH, None]


def test_a_knife_that_comes_again_keeps_its_answer(shop: Shop) -> None:
    """Back in received and on the bench once more, the same knife is asked for and no other."""
    made = parcel(shop, knives=10)
    before = asked(shop, made)
    move_knives(shop, by(), box(shop, made.box.number).knives, Column.RECEIVED)

    assert asked(shop, made) == before
    assert before.count(WhyRead.NTH) == 1


def test_the_first_on_a_fresh_belt_is_read(shop: Shop) -> None:
    """One knife of the next tray, and none of the tray after it, once the belt has worked."""
    fit_belt(shop, by(), "plain", "16 um")
    first = parcel(shop, knives=3)
    assert asked(shop, first) == [WhyRead.FRESH_BELT, None, None]
    assert asked(shop, counter(shop, name="meanwhile")) == [None, None]


def test_proof_cards_and_complaints_are_read(shop: Shop) -> None:
    """Every knife of a customer with proof cards, and of a box that came back."""
    card, back = counter(shop), counter(shop, name="Ms Lund")
    correct_customer(shop, by(), card.customer, proof_card=True)
    set_flags(shop, by(), back.box, complaint=True)

    assert asked(shop, card) == [WhyRead.PROOF_CARD] * 2
    assert asked(shop, back) == [WhyRead.COMPLAINT] * 2


@pytest.mark.parametrize(
    ("line", "why"),
    [("always = [] ", WhyRead.ALWAYS), ("every = 10 ", None)],
)
def test_the_rule_is_the_shop_s(shop: Shop, line: str, why: WhyRead | None) -> None:
    """A kind that is always read; a shop that reads none by number."""
    new = 'always = ["chef"] ' if why else "every = 0 "
    take_settings(shop, by(), seed_text("settings.toml").replace(line, new))

    assert asked(shop, parcel(shop, knives=10)) == [why] * 10
