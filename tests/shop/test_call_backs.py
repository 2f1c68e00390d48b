"""Knives that come back since they are not sharp: the link, the shop's own rule, what is charged."""

from datetime import UTC, date, datetime, timedelta

import pytest

from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.papers.proof_card import card_text
from queueboard.priced_words import ChargeSort
from queueboard.records.shelf import call_backs_of
from queueboard.seedfiles import seed_text
from queueboard.shop import gauging
from queueboard.shop.call_backs import link_call_back, take_back, twins_of
from queueboard.shop.charging import add_charge
from queueboard.shop.finding import gone_of_customer
from queueboard.shop.looking import look
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.proof import card_of
from queueboard.shop.receiving import receive_box, strike_knife
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewCharge, NewKnife
from queueboard.values.shelf import GoneSeen, NewCallBack
from queueboard.words import CameBy, Column, GoesBy
from tests.shop.place import NOW, box, by, chef, counter
from tests.shop.undo_shelf import gone

MINIMUM = seed_text("settings.toml").replace("# minimum = 5.00 ", "minimum = 15.00 ")


def after(days: int) -> Actor:
    """Somebody so many days after the box left."""
    return Actor(initials="MB", now=NOW + timedelta(days=days))


def seen(shop: Shop, number: int) -> BoxPicture:
    """An open box some weeks later."""
    found = look(shop, NOW + timedelta(days=40)).box(number)
    assert found is not None
    return found


def back(old: GoneSeen, *places: int, why: str = "drags on tomato", free: bool | None = None) -> NewCallBack:
    """Its knives at these places came back."""
    return NewCallBack(old_box_id=old.box.id, old_knife_ids=tuple(old.knives[p].id for p in places), why=why, free=free)


def test_within_the_shops_days_it_is_free_and_linked(shop: Shop) -> None:
    """Two of three knives, nine days later: a new box at no charge, each knife linked, the gauge asked for by rule."""
    take_settings(shop, by(), MINIMUM)
    old = gone(shop)
    number = take_back(shop, after(9), back(old, 0, 2))
    made = seen(shop, number)

    assert (made.price_cents, made.box.complaint, len(made.knives)) == (0, True, 2)
    assert made.charges == ()
    assert made.customer == old.customer
    assert [(one.kind, one.length_mm, one.mark) for one in made.knives] == [
        (one.kind, one.length_mm, one.mark) for one in (old.knives[0], old.knives[2])
    ]
    assert made.call_back is not None
    assert (made.call_back.old_number, made.call_back.days, made.call_back.free) == (old.box.number, 9, True)
    assert made.call_back.knives == tuple(
        (new.id, was.id) for new, was in zip(made.knives, (old.knives[0], old.knives[2]), strict=True)
    )
    assert len(call_backs_of(shop.database, "c.old_box_id = ?", old.box.id)) == 1


@pytest.mark.parametrize(("days", "asked"), [(0, False), (14, False), (15, True)])
def test_beyond_the_days_it_is_asked(shop: Shop, days: int, asked: bool) -> None:  # a parameter
    """Up to and with the last day it is free; a day later it must be said, and either answer holds."""
    old = gone(shop)
    if not asked:
        assert seen(shop, take_back(shop, after(days), back(old, 0))).price_cents == 0
        return
    with pytest.raises(TypedError, match="It left 15 days ago, and the shop works again for nothing up to 14 days"):
        take_back(shop, after(days), back(old, 0))
    assert seen(shop, take_back(shop, after(days), back(old, 0, free=False))).price_cents > 0
    assert seen(shop, take_back(shop, after(days), back(old, 1, free=True))).price_cents == 0


def test_days_are_those_of_the_shops_calendar(shop: Shop) -> None:
    """From one evening to the next morning is one day, by the clock on the shop's wall and not by UTC."""
    old = gone(shop)
    evening = datetime(2026, 11, 10, 4, 30, tzinfo=UTC)
    number = take_back(shop, Actor(initials="MB", now=evening), back(old, 0))
    made = seen(shop, number).call_back

    assert old.left_at.date() == date(2026, 11, 9)
    assert made is not None
    assert made.days == 0


def test_a_call_back_needs_knives_a_reason_and_a_box_that_is_gone(shop: Shop) -> None:
    """No knife, a knife of another box, no reason, a box that is here: refused with a sentence, nothing is stored."""
    old, here = gone(shop), counter(shop)
    before = look(shop, NOW).last_line
    strange = NewCallBack(old_box_id=old.box.id, old_knife_ids=(here.knives[0].id,), why="drags")
    ours = NewCallBack(old_box_id=here.box.id, old_knife_ids=(here.knives[0].id,), why="drags")
    with pytest.raises(TypedError, match="Say which knives"):
        take_back(shop, after(1), back(old))
    with pytest.raises(TypedError, match="Say which knives"):
        take_back(shop, after(1), strange)
    with pytest.raises(ReasonNeededError):
        take_back(shop, after(1), back(old, 0, why=" "))
    with pytest.raises(RuleError, match="had left"):
        take_back(shop, after(1), ours)

    assert look(shop, NOW).last_line == before


def received_again(shop: Shop, old: GoneSeen, *knives: NewKnife) -> BoxPicture:
    """A box of the same customer, taken in as any other."""
    new = NewBox(
        customer_id=old.customer.id,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=len(knives),
        knives=knives,
    )
    return box(shop, receive_box(shop, by(), new))


def test_a_box_received_already_is_linked_and_costs_nothing(shop: Shop) -> None:
    """Its knives are known again by kind, length and mark; their price and add-ons go, and so does the minimum."""
    take_settings(shop, by(), MINIMUM)
    old = gone(shop)
    made = received_again(shop, old, chef(mark="NICK 2"))
    add_charge(shop, by(), made.box, NewCharge(sort=ChargeSort.CHIPS, cents=300), made.knives[0])
    made = box(shop, made.box.number)
    assert made.price_cents == 1500
    pairs = twins_of(made.knives, gone_of_customer(shop, old.customer.id)[0].left)
    assert [(new.tag, was.tag) for new, was in pairs] == [(made.knives[0].tag, old.knives[2].tag)]
    link_call_back(shop, after(3), made.box, old.box.id, [(new.id, was.id) for new, was in pairs], "drags")
    linked = seen(shop, made.box.number)

    assert (linked.price_cents, linked.box.complaint) == (0, True)
    with pytest.raises(RuleError, match="linked to an earlier one already"):
        link_call_back(shop, after(3), linked.box, old.box.id, [], "again")


def test_what_did_not_come_back_keeps_its_price(shop: Shop) -> None:
    """One of two is linked: the other one costs what it costs."""
    old = gone(shop)
    made = received_again(shop, old, chef(mark="nick 0"), chef(mark="new here"))
    link_call_back(shop, after(3), made.box, old.box.id, [(made.knives[0].id, old.knives[0].id)], "drags")

    assert [knife.price_cents > 0 for knife in seen(shop, made.box.number).knives] == [False, True]


def test_somebody_elses_box_is_never_linked(shop: Shop) -> None:
    """An earlier box of another customer is refused."""
    old, other = gone(shop), counter(shop, name="Bo Oake")
    with pytest.raises(RuleError, match="not an earlier box of this customer"):
        link_call_back(shop, after(1), other.box, old.box.id, [], "drags")


def test_alike_knives_are_linked_each_once(shop: Shop) -> None:
    """Two of the same look take two old ones; a third has none left."""
    old = counter(shop, knives=2)
    new = counter(shop, knives=3)

    pairs = twins_of(new.knives, old.knives)
    assert [(a.number, b.number) for a, b in pairs] == [(1, 1), (2, 2)]


def test_the_card_shows_what_it_was_read_at_when_it_left(shop: Shop) -> None:
    """The proof card of the new box names the old tag, the days, the old readings, and that it is free."""
    old = gone(shop)
    number = take_back(shop, after(9), back(old, 0))
    strange = card_of(shop, number)
    assert strange is not None
    said = " ".join(card_text(strange).split())

    assert f"Call-back of {old.knives[0].tag}, 9 days after it left, when it was not read with the gauge" in said
    assert "worked again free of charge." in said


def test_a_linked_knife_that_is_struck_out_takes_its_link_along(shop: Shop) -> None:
    """Typed by mistake, it goes with its link; the box stays a call-back."""
    old = gone(shop)
    number = take_back(shop, after(2), back(old, 0, 1))
    strike_knife(shop, after(2), seen(shop, number).knives[0], "only one came back")
    made = seen(shop, number)

    assert made.call_back is not None
    assert made.call_back.knives == ((made.knives[0].id, old.knives[1].id),)


def test_readings_of_the_old_box_stay_where_they_are(shop: Shop) -> None:
    """The new knife begins unread; the old one's readings are only shown."""
    old = gone(shop)
    number = take_back(shop, after(2), back(old, 0))

    assert gauging.edge(shop, seen(shop, number).knives[0]).readings == ()
    assert seen(shop, number).knives[0].column is Column.RECEIVED


def test_knives_that_are_here_already_do_not_come_back_again(shop: Shop) -> None:
    """While a knife stands on the board as a call-back it is not received a second time; the others are."""
    old = gone(shop)
    first = take_back(shop, after(3), back(old, 0))

    with pytest.raises(RuleError, match=f"are here already, in box {first}"):
        take_back(shop, after(4), back(old, 0, 1))
    assert len(seen(shop, take_back(shop, after(4), back(old, 1))).knives) == 1
