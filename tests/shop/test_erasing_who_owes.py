"""Erasing a customer who has not paid for everything: the sum is said first; what lies beside the file goes too."""

from datetime import timedelta

import pytest

from queueboard.errors import RuleError
from queueboard.shop import correcting, erasing, money, numbers, receiving
from queueboard.shop.market import take_market
from queueboard.shop.market_pad import PadLine, new_pad, pad_path, put_line
from queueboard.shop.opening import Shop
from queueboard.shop.owing import owing
from queueboard.values.actor import Actor
from queueboard.words import Settling
from tests.shop.place import NOW, by, cash, counter, state
from tests.shop.undo_charging import gone_as
from tests.shop.undo_market import MARKET_ON, typed

LATER = Actor(initials="J", now=NOW + timedelta(days=731))


@pytest.mark.parametrize(
    ("boxes", "words"),
    [
        (1, "still owes 18.00 USD (18.00 for box 100), and"),
        (2, "still owes 36.00 USD (18.00 for box 100, 18.00 for box 101), and"),
    ],
)
def test_who_still_owes_money_is_asked_about_once(shop: Shop, boxes: int, words: str) -> None:
    """The sum is said and nothing happens; said again with the sum known, the words go and the amounts stay."""
    left = [gone_as(shop, Settling.ON_ACCOUNT, name="Ms Verrin") for _ in range(boxes)]
    first, *others = receiving.customers(shop)
    for other in others:
        correcting.merge_customers(shop, by(), first, other)
        (first,) = (one for one in receiving.customers(shop) if one.id == first.id)
    before = state(shop)

    with pytest.raises(RuleError) as refused:
        erasing.erase(shop, LATER, first, "asked by letter")

    assert words in str(refused.value)
    assert state(shop) == before
    erasing.erase(shop, LATER, first, "asked by letter", though_owing=True)
    assert receiving.customers(shop) == ()
    assert [account.owed_cents for account in owing(shop, LATER.now)] == [1800 * len(left)]


def test_who_has_paid_since_is_erased_without_a_question(shop: Shop) -> None:
    """Left on account and paid later: nothing is owed."""
    left = gone_as(shop, Settling.ON_ACCOUNT, name="Ms Verrin")
    money.pay_account(shop, by(minutes=9), left, cash(1800))

    erasing.erase(shop, LATER, receiving.customers(shop)[0], "asked by letter")

    assert receiving.customers(shop) == ()


def test_of_many_debts_the_oldest_are_named(shop: Shop) -> None:
    """Seven boxes: five by number, two as a count, and the whole sum."""
    for _ in range(7):
        gone_as(shop, Settling.ON_ACCOUNT, name="Ms Verrin")
    first, *others = receiving.customers(shop)
    for other in others:
        correcting.merge_customers(shop, by(), first, other)
        (first,) = (one for one in receiving.customers(shop) if one.id == first.id)

    with pytest.raises(RuleError, match=r"owes 126\.00 USD \(.*18\.00 for box 104, 2 more\), and"):
        erasing.erase(shop, LATER, first, "asked by letter")


def test_all_boxes_that_are_here_are_named(shop: Shop) -> None:
    """Knives in the shop come before money, whatever was said about money."""
    made, other = counter(shop, name="Ms Verrin"), counter(shop, name="Verrin")
    correcting.merge_customers(shop, by(), made.customer, other.customer)

    with pytest.raises(RuleError, match="Boxes 100, 101 of this customer are still here"):
        erasing.erase_customer(shop, LATER, made.customer.id, "asked by letter", though_owing=True)


def test_a_market_day_that_is_over_goes_with_it(shop: Shop) -> None:
    """Lines taken in from a stall's paper still lie beside the file with a name; erasing lets go of them."""
    numbers.take_settings(shop, by(), MARKET_ON)
    pad = put_line(shop, new_pad(shop, NOW), PadLine(id=0, text="500 4 Verrin *"))
    take_market(shop, by(), typed("500 4 Verrin *"), pad.id)
    assert "Verrin" in pad_path(shop).read_text(encoding="utf-8")

    erasing.erase(shop, LATER, receiving.customers(shop)[0], "asked by letter")

    assert not pad_path(shop).exists()
