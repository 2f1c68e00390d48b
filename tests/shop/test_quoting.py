"""What the board answers at the counter: when, whether by a day, and what room is left."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from queueboard.shop.announcing import announce_box, arrived
from queueboard.shop.bench_work import LEAVING_DAYS
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.promising import promise
from queueboard.shop.quoting import can_do, minutes_after, offer, rush_minutes, week
from queueboard.shop.receiving import add_customer
from queueboard.shop.wishing import advise, wish_again
from queueboard.values.new import NewAnnounced, NewPromise, Unseen
from queueboard.words import GoesBy, PromiseKind, WhyNot
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


def test_an_offer_lies_weeks_ahead_where_the_work_does(shop: Shop) -> None:
    """With five weeks of work the first day that bears the box is told: the one before it is a no, it is a yes."""
    for _ in range(18):
        counter(shop, knives=60)
    seen = picture(shop)

    told = offer(seen, [chef()] * 20, GoesBy.PICK_UP, 0)

    assert told is not None
    assert (told.day - TODAY).days > LEAVING_DAYS
    open_before = told.leaves.date() - timedelta(days=1 if told.leaves.weekday() else 3)
    answers = [can_do(seen, [chef()] * 20, GoesBy.PICK_UP, 0, day) for day in (open_before, told.day)]
    assert [answer is not None and answer.yes for answer in answers] == [False, True]


def test_a_wish_says_whom_it_would_make_late(shop: Shop) -> None:
    """Forty knives by tomorrow, with boxes promised for then: no, and the answer names box and customer."""
    made = [counter(shop, knives=10, name=f"Ms Verrin {n}") for n in range(4)]

    told = can_do(picture(shop), [chef()] * 40, GoesBy.PICK_UP, 0, date(2026, 11, 10))

    assert told is not None
    assert not told.yes
    assert {late.number for late in told.costs} <= {one.box.number for one in made}
    assert all(late.minutes > 0 for late in told.costs)


def test_the_earliest_day_is_the_first_that_is_a_yes(shop: Shop) -> None:
    """Also weeks ahead, beyond the moments that the plan itself looks at: an offer and an answer know the same days."""
    seen, knives = picture(shop), [chef()] * 900

    told = offer(seen, knives, GoesBy.PICK_UP, 0)

    assert told is not None
    assert told.day > TODAY + timedelta(days=LEAVING_DAYS)
    on_it = can_do(seen, knives, GoesBy.PICK_UP, 0, told.day)
    before = can_do(seen, knives, GoesBy.PICK_UP, 0, told.leaves.date() - timedelta(days=1))
    assert on_it is not None
    assert before is not None
    assert (on_it.yes, before.yes) == (True, False)
    assert date(2026, 11, 15) in told.closed


@pytest.mark.parametrize(("days", "why"), [(0, WhyNot.PRESSES), (-1, WhyNot.BEHIND_LATE)])
def test_a_no_gives_the_right_reason(shop: Shop, days: int, why: WhyNot) -> None:
    """A box due today that the bench can just hold has too little left beside a rush; one late already cannot wait."""
    made = counter(shop, knives=16)
    due = NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="Ms Verrin", reason="she waits")
    promise(shop, by(minutes=24 * 60 * days), box(shop, made.box.number).box, replace(due, day=TODAY + timedelta(days)))

    told = can_do(picture(shop), [chef()] * 5, GoesBy.PICK_UP, 0, TODAY)

    assert told is not None
    assert (told.yes, told.why, told.presses) == (False, why, made.box.number)


def test_a_promise_that_has_too_little_already_is_named_so(shop: Shop) -> None:
    """It is not the new box that leaves it too little."""
    made = counter(shop, knives=27)
    due = NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="Ms Verrin", reason="she waits")
    promise(shop, by(), box(shop, made.box.number).box, due)

    told = can_do(picture(shop), [chef()], GoesBy.PICK_UP, 0, TODAY)

    assert told is not None
    assert told.why is WhyNot.PRESSED


def test_a_box_told_anew_is_told_the_room_of_the_week(shop: Shop) -> None:
    """The room beside a promise is that of the week ahead, with the box itself at its place."""
    made = counter(shop, knives=9)
    seen = picture(shop)

    told = advise(seen, wish_again(box(shop, made.box.number), None, PromiseKind.DAY))

    assert told is not None
    assert told.room_today == rush_minutes(seen, TODAY)
    assert told.room_tomorrow == rush_minutes(seen, TODAY + timedelta(days=1))


def test_nothing_is_left_after_a_week_with_room(shop: Shop) -> None:
    """What comes after these days is nothing while one of them has minutes free, however the minutes round."""
    for _ in range(3):
        counter(shop, knives=7)
    seen = look(shop, NOW + timedelta(seconds=41))

    assert week(seen)[-1].planned_minutes == 0
    assert minutes_after(seen, week(seen)[-1].day) == 0
    assert minutes_after(seen, TODAY - timedelta(days=1)) > 0


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


@pytest.mark.parametrize("seconds", [0, 20, 40])
def test_the_week_counts_all_work_once(shop: Shop, seconds: int) -> None:
    """Planned minutes of the days add up to the plan's, no day holds more than there is, and Sunday says why."""
    for _ in range(8):
        counter(shop, knives=8)
    seen = look(shop, NOW + timedelta(seconds=seconds))

    days = week(seen, 14)

    assert sum(day.planned_minutes for day in days) == pytest.approx(
        sum(run.end_second - run.start_second for run in seen.plan.runs) / 60, abs=len(days)
    )
    assert all(day.planned_minutes <= day.there_minutes for day in days)
    assert days[0].planned_minutes == days[0].there_minutes  # full, and not a minute over, at any second
    assert seen.day_line.work_minutes_today == seen.day_line.bench_minutes_left
    assert minutes_after(seen, days[-1].day) == 0
    assert minutes_after(seen, days[0].day) == pytest.approx(sum(day.planned_minutes for day in days[1:]), abs=2)
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


def test_a_box_in_the_door_counts_before_it_is_opened(shop: Shop) -> None:
    """Arrived and not opened, its minutes stand on today's bench and on the day it is due; no run holds it."""
    customer = add_customer(shop, by(), name="Oake")
    told = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 10), told_to="Oake")
    number = announce_box(
        shop, by(), NewAnnounced(customer_id=customer, expected_knives=6, goes_by=GoesBy.PICK_UP, promise=told)
    )
    expected = picture(shop)
    assert (expected.plan.unopened_seconds, week(expected)[0].planned_minutes) == (0, 0)

    arrived(shop, by(), box(shop, number).box)

    seen = picture(shop)
    assert (week(seen)[0].planned_minutes, week(seen)[1].due_minutes, seen.plan.runs) == (42, 42, ())
    assert seen.day_line.work_minutes_today == 42
    assert rush_minutes(seen, date(2026, 11, 10)) <= rush_minutes(expected, date(2026, 11, 10))
    anew = advise(seen, wish_again(box(shop, number), None, PromiseKind.DAY))
    assert anew is not None
    assert anew.offer is not None
    assert (anew.offer.day, anew.offer.own_minutes) == (TODAY, 44)


THURSDAY = date(2026, 11, 12)
SIX = Unseen(knives=6, comes_on=THURSDAY)


def test_six_knives_expected_on_thursday(shop: Shop) -> None:
    """Six knives of seven minutes are 42 and a set-up: begun and sent off on Friday, they are there on Tuesday."""
    told = offer(picture(shop), SIX, GoesBy.PARCEL, 2)

    assert told is not None
    assert (told.leaves.date(), told.day) == (date(2026, 11, 13), date(2026, 11, 17))
    assert told.own_minutes in (43, 44)


def test_nothing_is_told_before_a_box_is_here(shop: Shop) -> None:
    """On the day it comes it is a no, though the bench is free; the day after it is a yes."""
    seen = picture(shop)

    on_the_day = can_do(seen, SIX, GoesBy.PICK_UP, 0, THURSDAY)
    day_after = can_do(seen, SIX, GoesBy.PICK_UP, 0, date(2026, 11, 13))

    assert on_the_day is not None
    assert (on_the_day.yes, on_the_day.costs) == (False, ())
    assert day_after is not None
    assert day_after.yes


def test_more_knives_than_a_day_bears_take_another_day(shop: Shop) -> None:
    """A day has some 240 minutes of work; forty knives, 280 minutes, that come on Thursday are not done on Friday."""
    told = offer(picture(shop), Unseen(knives=40, comes_on=THURSDAY), GoesBy.PICK_UP, 0)

    assert told is not None
    assert told.leaves.date() > date(2026, 11, 13)


def test_without_a_day_it_is_asked_about_as_if_it_came_today(shop: Shop) -> None:
    """So is one whose day is over."""
    seen = picture(shop)
    answers = [offer(seen, Unseen(knives=6, comes_on=on), GoesBy.PICK_UP, 0) for on in (None, TODAY, date(2026, 11, 4))]

    assert answers[0] is not None
    assert answers[0].leaves.date() == date(2026, 11, 10)
    assert answers[1:] == answers[:1] * 2


def test_a_box_that_has_come_and_is_not_opened_still_takes_its_minutes(shop: Shop) -> None:
    """Between the door and the first look inside its guess counts as before: for promises, and as due on its day."""
    friday = date(2026, 11, 13)
    customer_id = add_customer(shop, by(), name="Ola Brandt")
    told = NewPromise(kind=PromiseKind.SHIPS_BY, day=friday)
    new = NewAnnounced(customer_id=customer_id, expected_knives=20, expected_on=TODAY, promise=told)
    number = announce_box(shop, by(), new)
    room = rush_minutes(picture(shop), friday)

    arrived(shop, by(), box(shop, number).box)

    assert rush_minutes(picture(shop), friday) == room
    assert week(picture(shop))[4].due_minutes == 20 * picture(shop).settings.planning.announced_minutes
