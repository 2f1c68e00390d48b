"""LATE and WILL BE LATE: what the plan says of each box against its ship-by."""

from dataclasses import replace
from datetime import datetime

import pytest

from queueboard.values.plan import BenchWindow, BoxForecast, BoxWork, PlanRules
from queueboard.words import Lateness
from tests.planning.work import PLAIN, bench_days, box_work, free, knife_work, planned
from tests.plans import at


def forecast_of(*boxes: BoxWork, windows: tuple[BenchWindow, ...] | None = None) -> BoxForecast:
    """The forecast of the first box by number, with the belts up."""
    return planned(*boxes, processes=(free(PLAIN),), windows=windows).forecasts[0]


def test_ship_by_has_passed() -> None:
    """A box whose cut-off was ten minutes ago and that takes another eight is LATE by eighteen."""
    seen = forecast_of(box_work(1, knife_work(101, 8), ship_by=at(9, 2)))

    assert (seen.lateness, seen.late_minutes) == (Lateness.LATE, 18)


def test_the_cut_off_itself_is_in_time() -> None:
    """A box that is finished on the very minute of its ship-by is on time, if tight; a minute later it is not."""
    assert forecast_of(box_work(1, knife_work(101, 8), ship_by=at(9, 20))).lateness is Lateness.TIGHT
    seen = forecast_of(box_work(1, knife_work(101, 9), ship_by=at(9, 20)))
    assert (seen.lateness, seen.late_minutes) == (Lateness.WILL_BE_LATE, 1)


def test_late_is_said_days_ahead() -> None:
    """When the boxes before it take too long, a box is WILL BE LATE days before its ship-by, by the clock."""
    before = replace(box_work(2, knife_work(201, 500), ship_by=at(15, days=1)), never_slip=True)

    seen = forecast_of(
        box_work(1, knife_work(101, 20), ship_by=at(16, days=1)), before, windows=bench_days(3, minutes=260)
    )

    # 520 minutes fill two days of 260: done at 13:32 tomorrow, in time. One minute more would be the day after.
    assert (seen.lateness, seen.finish) == (Lateness.TIGHT, at(13, 32, days=1))
    seen = forecast_of(
        box_work(1, knife_work(101, 21), ship_by=at(16, days=1)), before, windows=bench_days(3, minutes=260)
    )
    assert (seen.lateness, seen.finish) == (Lateness.WILL_BE_LATE, at(9, 13, days=2))
    assert seen.late_minutes == 17 * 60 + 13


def test_a_finish_beyond_the_horizon_is_late_when_ship_by_is_not() -> None:
    """What cannot be finished in the known bench time misses a ship-by inside it, by at least the rest of it."""
    windows = bench_days(2, minutes=60)

    seen = forecast_of(box_work(1, knife_work(101, 200), ship_by=at(9, 12, days=1)), windows=windows)
    assert (seen.lateness, seen.late_minutes, seen.finish) == (Lateness.WILL_BE_LATE, 60, None)
    assert seen.is_without_end

    seen = forecast_of(box_work(1, knife_work(101, 200), ship_by=at(9, 2)), windows=windows)
    assert (seen.lateness, seen.late_minutes) == (Lateness.LATE, 24 * 60 + 70)

    seen = forecast_of(box_work(1, knife_work(101, 200), ship_by=at(9, 12, days=9)), windows=windows)
    assert seen.lateness is Lateness.ON_TIME


def test_without_any_bench_time_nothing_promised_is_on_time() -> None:
    """A shop with no bench time ahead finishes nothing: what was promised will be late, by who knows how much."""
    seen = forecast_of(box_work(1, knife_work(101), ship_by=at(15, days=9)), windows=())

    assert (seen.lateness, seen.late_minutes, seen.finish) == (Lateness.WILL_BE_LATE, 0, None)


def test_a_parcel_that_is_ready_and_still_here_is_late() -> None:
    """With nothing left for the bench a box is on time until its ship-by, and LATE after it while it is here."""
    assert forecast_of(box_work(1, ship_by=at(9, 12))).lateness is Lateness.ON_TIME
    seen = forecast_of(box_work(1, ship_by=at(9, 2)))
    assert (seen.lateness, seen.late_minutes) == (Lateness.LATE, 10)


def test_a_box_that_waits_on_the_shelf_to_be_fetched_is_never_late() -> None:
    """The shop did its part of a pick-up whose knives are all ready."""
    assert forecast_of(replace(box_work(1, ship_by=at(9, 2)), ready_to_fetch=True)).lateness is Lateness.ON_TIME


def test_a_box_without_a_promise_is_never_late() -> None:
    """Nobody was told a date."""
    assert forecast_of(box_work(1, knife_work(101, 400))).lateness is Lateness.ON_TIME


@pytest.mark.parametrize(
    ("ship_by", "expected", "late_minutes"),
    [
        (at(9, 2), Lateness.LATE, 18),
        (at(9, 19), Lateness.WILL_BE_LATE, 1),
        (at(9, 20), Lateness.ON_TIME, 0),
    ],
)
def test_a_waiting_box_is_late_when_even_an_answer_now_is_too_late(
    ship_by: datetime, expected: Lateness, late_minutes: int
) -> None:
    """A waiting box has no finish; it counts as late only when it were so with the answer here and the bench free."""
    seen = forecast_of(replace(box_work(1, knife_work(101, 8), ship_by=ship_by), waiting=True))

    assert (seen.lateness, seen.late_minutes, seen.finish) == (expected, late_minutes, None)


def test_a_box_is_done_with_its_last_run() -> None:
    """A box finishes when the run of its last knife ends, shared with whatever else is in that run."""
    due = at(15, days=1)

    plan = planned(
        box_work(1, knife_work(101, 5), ship_by=due),
        box_work(2, knife_work(201, 7), ship_by=due),
        processes=(free(PLAIN),),
    )

    assert {forecast.finish for forecast in plan.forecasts} == {at(9, 24)}


def test_a_box_with_little_to_spare_is_tight() -> None:
    """An hour of work with five minutes to spare is on time by the plan and still likely enough late to be told."""
    seen = forecast_of(box_work(1, knife_work(101, 60), ship_by=at(10, 17)))

    assert (seen.lateness, seen.slack_minutes, seen.late_minutes) == (Lateness.TIGHT, 5, 0)
    assert seen.late_permille is not None
    assert 200 <= seen.late_permille < 500


def test_a_box_with_days_to_spare_says_nothing() -> None:
    """Ten minutes of work due in a week are as good as sure."""
    seen = forecast_of(box_work(1, knife_work(101, 10), ship_by=at(15, days=7)))

    assert (seen.lateness, seen.late_permille) == (Lateness.ON_TIME, 0)


def test_the_shops_yield_stretches_the_clock() -> None:
    """When four fifths of the bench time turn into work, eight minutes of it take ten by the wall."""
    plan = planned(
        box_work(1, knife_work(101, 8), ship_by=at(9, 21)),
        processes=(free(PLAIN),),
        rules=PlanRules(bench_share=0.8),
    )

    assert plan.forecasts[0].finish == at(9, 22)
    assert plan.forecasts[0].lateness is Lateness.WILL_BE_LATE
    assert plan.bench_minutes_today == 336


def test_an_overload_is_told_in_minutes() -> None:
    """Three days of work promised by tomorrow: so many minutes too many, and no percentage for whom it concerns."""
    boxes = [box_work(n, knife_work(n * 100 + 1, 400), ship_by=at(15, days=1)) for n in (1, 2, 3)]

    plan = planned(*boxes, processes=(free(PLAIN),), windows=bench_days(10, minutes=300))

    assert (plan.overloads[0].before, plan.overloads[0].minutes) == (at(15, days=1), 600)
    assert all(seen.late_permille is None for seen in plan.forecasts)
