"""Late and tight boxes in words, and what stands one key deeper."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from queueboard.phrases.boxes import box_signs
from queueboard.phrases.day import day_line_words, learned_minutes
from queueboard.phrases.late import (
    asks_first,
    chance_words,
    earliest_words,
    heaviest_overload_words,
    late_boxes,
    late_words,
    outlook_lines,
    received_words,
    slack_words,
)
from queueboard.shop.picture import Picture
from queueboard.values.plan import Overload
from queueboard.words import Column, GoesBy, Lateness, PromiseKind
from tests.busy_morning import busy_morning
from tests.pictures import NOW, at, box_picture, forecast, knife, picture, plan, promise
from tests.pictures import box as one_box

MORNING = busy_morning()


def tight(number: int = 431, slack: int = 12, permille: int = 234) -> Picture:
    """A box with a little to spare, alone on the board."""
    box = box_picture(
        number,
        forecast_=forecast(
            number,
            finish=at(15),
            minutes_left=30,
            lateness=Lateness.TIGHT,
            slack_minutes=slack,
            late_permille=permille,
        ),
    )
    return picture(box)


def test_late_boxes_come_before_those_that_will_be_and_those_before_the_tight() -> None:
    """The order is late first, each group by how late, the tightest of the tight first; on time is in none."""
    some = replace(MORNING, boxes=(*tight(431).boxes, *tight(432, slack=3).boxes, *MORNING.boxes))

    assert [box.box.number for box in late_boxes(some)] == [411, 420, 432, 431]


def test_after_receiving_a_tight_date_is_not_called_broken() -> None:
    """The day list holds a tight date; only one that will not hold is to be told anew; a safe one is not mentioned."""
    forecast = tight().boxes[0].forecast

    assert received_words(forecast).startswith("TIGHT: the day list holds the date told")
    assert "does not hold the date told" in received_words(replace(forecast, lateness=Lateness.WILL_BE_LATE))
    assert received_words(replace(forecast, lateness=Lateness.ON_TIME)) == ""


def test_tight_is_a_word_wherever_late_is_one() -> None:
    """A tight box says so on the board, in the late list and on the day's line."""
    some = tight()
    (box,) = some.boxes

    assert box_signs(box, NOW) == ("TOMORROW", "TIGHT")
    assert late_words(box, NOW).startswith("431 TIGHT, 12 bench min to spare, ready by tomorrow 16:00")
    assert "TIGHT 1" in day_line_words(some.day_line)


def test_slack_below_nought_is_what_is_missing() -> None:
    """Minutes to spare, minutes short, or nothing where no ship-by or no work is."""
    assert slack_words(forecast(slack_minutes=0)) == "0 bench min to spare"
    assert slack_words(forecast(slack_minutes=-130)) == "130 bench min short"
    assert slack_words(forecast()) == ""


def test_a_chance_is_never_nought_or_a_hundred() -> None:
    """Between one and 99 percent it is said as it is; beyond, that it is beyond."""
    assert chance_words(234) == "23 % likely to be late"
    assert chance_words(3) == "under 1 % likely to be late"
    assert chance_words(999) == "over 99 % likely to be late"


def test_one_key_deeper_is_the_chance_and_when_it_is_done() -> None:
    """A tight box tells its chance, what it has to spare and its finish; nothing of another date."""
    some = tight()

    assert outlook_lines(some.boxes[0], some) == (
        "23 % likely to be late",
        "12 bench min to spare · done by today 15:00",
    )


def test_an_overload_stands_in_place_of_every_chance() -> None:
    """While the plan tells an overload no percentage is said, but by how much and before when; the box's own moment."""
    loads = (Overload(before=at(15, 45, days=1), minutes=600), Overload(before=at(15, 45, days=4), minutes=900))
    some = replace(tight(), plan=replace(plan(), overloads=loads))
    later = replace(some.boxes[0], ship_by=at(16, days=5))

    assert heaviest_overload_words(some) == "overloaded by 900 min before Monday 15:45"
    assert outlook_lines(some.boxes[0], some)[0] == "overloaded by 600 min before tomorrow 15:45"
    assert outlook_lines(later, some)[0] == "overloaded by 900 min before Monday 15:45"
    assert "%" not in " ".join(outlook_lines(later, some))


def test_a_box_that_will_be_late_has_an_honest_day() -> None:
    """One key deeper the day that can be told now."""
    box = box_picture(
        420,
        forecast_=forecast(420, finish=at(10, days=5), minutes_left=30, lateness=Lateness.WILL_BE_LATE),
        honest_day=date(2026, 12, 1),
    )

    assert outlook_lines(box, picture(box))[1:] == ("ready Tue 1 Dec at the earliest (p: what can be told)",)


@pytest.mark.parametrize("lateness", [Lateness.LATE, Lateness.WILL_BE_LATE])
def test_no_day_is_told_before_what_is_looked_for_is_found(lateness: Lateness) -> None:
    """Only the lost knife is left: what must be found stands where a day would, also on the late list."""
    here = (replace(knife("420-3", column=Column.READY), looking_for=True),)
    box = box_picture(420, knives_=here, forecast_=forecast(420, lateness=lateness), honest_day=None)

    assert earliest_words(box, picture(box).now) == "not before 420-3 chef is found"
    assert "1 looked for: 420-3 chef" in late_words(box, picture(box).now)


def test_a_box_told_by_its_shipping_is_told_so_again() -> None:
    """The honest day of a promise by the day it leaves is such a day too."""
    told = box_picture(
        one_box(420, goes_by=GoesBy.PARCEL, carrier_days=2),
        promises=(promise(date(2026, 11, 27), kind=PromiseKind.SHIPS_BY, box_number=420),),
        forecast_=forecast(420, finish=at(10, days=5), minutes_left=30, lateness=Lateness.WILL_BE_LATE),
        honest_day=date(2026, 12, 1),
    )

    assert outlook_lines(told, picture(told))[1:] == ("ships by Tue 1 Dec at the earliest (p: what can be told)",)


@pytest.mark.parametrize(
    ("days", "lateness", "asks"),
    [
        ((0, 1), Lateness.WILL_BE_LATE, True),
        ((0, 1), Lateness.LATE, True),
        ((0, 1), Lateness.TIGHT, False),
        ((1, 0), Lateness.WILL_BE_LATE, False),
        ((0, 0), Lateness.WILL_BE_LATE, False),
        ((0,), Lateness.WILL_BE_LATE, False),
        ((0, 2, 1), Lateness.WILL_BE_LATE, True),
    ],
)
def test_a_box_is_not_put_off_twice_without_asking(days: tuple[int, ...], lateness: Lateness, *, asks: bool) -> None:
    """Where a later day was told before and the date would have to move again, that is its own question."""
    told = (
        replace(promise(box_number=420), id=place, day=NOW.date() + timedelta(days=on)) for place, on in enumerate(days)
    )
    box = box_picture(420, promises=tuple(told), forecast_=forecast(420, minutes_left=30, lateness=lateness))

    assert asks_first(box) is asks
    assert ("put off once already: ask before its date moves again" in late_words(box, NOW)) is asks


def test_minutes_of_a_knife_are_those_that_were_learned() -> None:
    """A process found to take twice as long doubles the minutes of its knives."""
    seen = picture(box_picture())
    starter = learned_minutes(knife(), seen)
    twice = tuple(replace(factor, value=2 * factor.value) for factor in seen.minutes.learned.processes)
    slow = replace(seen, minutes=replace(seen.minutes, learned=replace(seen.minutes.learned, processes=twice)))

    assert starter is not None
    assert learned_minutes(knife(), slow) == 2 * starter
