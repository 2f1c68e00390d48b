"""What the board answers at the counter: when, whether by a day, and what room is left."""

from datetime import date, timedelta

import pytest

from queueboard.shop.announcing import announce_box
from queueboard.shop.opening import Shop
from queueboard.shop.promising import promise
from queueboard.shop.quoting import can_do, offer, rush_minutes, week
from queueboard.shop.receiving import add_customer
from queueboard.values.new import NewAnnounced, NewPromise
from queueboard.words import GoesBy, PromiseKind
from tests.shop.place import NOW, box, by, chef, counter, parcel, picture

TODAY = date(2026, 11, 9)
"""The Monday of NOW, nine in the shop's morning."""


def test_an_empty_shop_promises_today(shop: Shop) -> None:
    """One dull chef's knife, six minutes and a set-up of ninety seconds: ready today, and as good as sure."""
    told = offer(picture(shop), [chef()], GoesBy.PICK_UP, 0)

    assert told is not None
    assert (told.day, told.open_minutes, told.own_minutes, told.binds) == (TODAY, 0, 8, None)
    assert told.sure_permille >= 990


def test_the_sum_adds_up_to_the_moment_of_leaving(shop: Shop) -> None:
    """Open work, this box and what is to spare are together the bench minutes before it leaves."""
    parcel(shop, knives=9)
    seen = picture(shop)

    told = offer(seen, [chef()] * 3, GoesBy.PICK_UP, 0)

    assert told is not None
    assert seen.ledger is not None
    there = seen.ledger.bench.seconds_before(told.leaves) / 60
    assert told.open_minutes + told.own_minutes + told.spare_minutes == pytest.approx(there, abs=2)
    assert told.kept_minutes <= told.spare_minutes


def test_a_parcel_is_told_by_the_day_it_arrives(shop: Shop) -> None:
    """What leaves today is in hand three of the carrier's working days later: Thursday."""
    told = offer(picture(shop), [chef()], GoesBy.PARCEL, 3)

    assert told is not None
    # Wednesday 11 November is a public holiday on which the carrier rests.
    assert told.day == date(2026, 11, 13)


def test_an_offer_keeps_every_promise_and_the_day_before_does_not(shop: Shop) -> None:
    """A big job goes where nobody is late for it; a day sooner would be too little left, or cost somebody."""
    for _ in range(6):
        counter(shop, knives=6)
    seen = picture(shop)
    knives = [chef()] * 20

    told = offer(seen, knives, GoesBy.PICK_UP, 0)

    assert told is not None
    assert told.day > TODAY
    before = can_do(seen, knives, GoesBy.PICK_UP, 0, told.day - timedelta(days=1))
    assert before is not None
    assert not before.yes


def test_a_wish_says_whom_it_would_make_late(shop: Shop) -> None:
    """Forty knives by tomorrow, with boxes promised for then: no, and the answer names box and customer."""
    made = [counter(shop, knives=10, name=f"Ms Verrin {n}") for n in range(4)]

    told = can_do(picture(shop), [chef()] * 40, GoesBy.PICK_UP, 0, date(2026, 11, 10))

    assert told is not None
    assert not told.yes
    assert {late.number for late in told.costs} <= {one.box.number for one in made}
    assert all(late.minutes > 0 for late in told.costs)


def test_yes_has_no_cost(shop: Shop) -> None:
    """A knife by Friday in a calm shop: yes, and nobody pays for it."""
    counter(shop)

    told = can_do(picture(shop), [chef()], GoesBy.PICK_UP, 0, date(2026, 11, 13))

    assert told is not None
    assert (told.yes, told.costs, told.presses) == (True, (), None)


def test_a_day_that_has_passed_is_a_no(shop: Shop) -> None:
    """Nobody can do yesterday."""
    told = can_do(picture(shop), [chef()], GoesBy.PICK_UP, 0, TODAY - timedelta(days=3))

    assert told is not None
    assert not told.yes


def test_rush_minutes_shrink_by_what_is_promised(shop: Shop) -> None:
    """What may still be taken on today is less once more is promised for today, and none on a closed day."""
    free = rush_minutes(picture(shop), TODAY)
    made = counter(shop, knives=9)
    today = NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="Ms Verrin", reason="she waits")
    promise(shop, by(), box(shop, made.box.number).box, today)

    assert 0 <= rush_minutes(picture(shop), TODAY) < free
    assert rush_minutes(picture(shop), date(2026, 11, 15)) == 0


def test_the_week_counts_all_work_once(shop: Shop) -> None:
    """Planned minutes of the days add up to the plan's, no day holds more than there is, and Sunday says why."""
    for _ in range(8):
        counter(shop, knives=8)
    seen = picture(shop)

    days = week(seen, 14)

    assert sum(day.planned_minutes for day in days) == pytest.approx(
        sum(run.end_second - run.start_second for run in seen.plan.runs) / 60, abs=len(days)
    )
    assert all(day.planned_minutes <= day.there_minutes + 1 for day in days)
    assert days[6].closed == "closed on Sundays"
    assert days[0].day == NOW.date()


def test_without_knives_there_is_nothing_to_ask(shop: Shop) -> None:
    """A box without knives has no day."""
    assert offer(picture(shop), [], GoesBy.PICK_UP, 0) is None


def test_an_announced_box_holds_its_place(shop: Shop) -> None:
    """Thirty knives announced and promised for tomorrow take the bench time that a new box would have had."""
    customer = add_customer(shop, by(), name="Oake")
    before = offer(picture(shop), [chef()] * 12, GoesBy.PICK_UP, 0)
    announced = NewAnnounced(
        customer_id=customer,
        expected_knives=30,
        goes_by=GoesBy.PICK_UP,
        promise=NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 10), told_to="Oake"),
    )
    number = announce_box(shop, by(), announced)
    seen = picture(shop)

    told = can_do(seen, [chef()] * 20, GoesBy.PICK_UP, 0, TODAY)

    assert before is not None
    assert before.day == TODAY
    assert told is not None
    assert [late.number for late in told.costs] in ([number], [])
    assert not told.yes
    assert seen.plan.runs == ()
