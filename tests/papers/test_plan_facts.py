"""What scripts and papers are told of the plan: slack, chances, overloads, the week's load, runs under way."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from queueboard.papers.day_sheet import day_sheet
from queueboard.papers.facts import box_facts, day_facts, late_facts
from queueboard.papers.lists import late_list
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.running import start_run
from queueboard.values.plan import Overload
from queueboard.words import Lateness
from tests.pictures import at, box_picture, forecast, plan
from tests.pictures import picture as made
from tests.shop.place import box, by, counter, parcel, picture, small_shop

TIGHT = box_picture(
    431,
    forecast_=forecast(
        431, finish=at(15), minutes_left=30, lateness=Lateness.TIGHT, slack_minutes=12, late_permille=234
    ),
)
LATE = box_picture(
    417, forecast_=forecast(417, minutes_left=5, lateness=Lateness.LATE, late_minutes=90), honest_day=date(2026, 11, 27)
)
OVERLOADS = (Overload(before=at(15, 45, days=1), minutes=600), Overload(before=at(15, 45, days=2), minutes=20))


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A shop with two boxes."""
    shop = small_shop(tmp_path)
    yield shop
    close_shop(shop)


def test_a_box_tells_slack_chance_and_honest_day() -> None:
    """Each where it is known; a chance of a box without one is null."""
    seen = made(TIGHT, LATE)

    tight, late = box_facts(TIGHT, seen), box_facts(LATE, seen)

    assert (tight["slack_minutes"], tight["late_permille"], tight["honest_day"]) == (12, 234, None)
    assert (late["slack_minutes"], late["late_permille"], late["honest_day"]) == (None, None, "2026-11-27")


def test_while_overloads_are_told_no_chance_is() -> None:
    """The overloads stand in its place, all of them for scripts, the heaviest on paper."""
    seen = made(TIGHT, plan_=replace(plan(), overloads=OVERLOADS))

    assert box_facts(TIGHT, seen)["late_permille"] is None
    told = [
        {"before": "2026-11-27T15:45:00+01:00", "minutes": 600},
        {"before": "2026-11-28T15:45:00+01:00", "minutes": 20},
    ]
    assert day_facts(seen)["overloads"] == told
    assert late_facts(seen)["overloads"] == told
    assert "overloaded by 600 min before tomorrow 15:45" in day_sheet(seen).splitlines()
    assert late_list(seen).startswith("overloaded by 600 min before tomorrow 15:45\n")


def test_tight_boxes_are_told_apart_from_late_ones() -> None:
    """The day names both by number, each in its own list; the late list has both."""
    seen = made(TIGHT, LATE)

    assert (day_facts(seen)["late"], day_facts(seen)["tight"]) == ([417], [431])
    assert [line.split()[:2] for line in late_list(seen).splitlines()] == [["417", "LATE"], ["431", "TIGHT,"]]


def test_a_run_under_way_says_whose_it_is_and_how_long_so_far(shop: Shop) -> None:
    """For scripts in seconds, on paper in words; a run that nobody has begun says nothing of it."""
    first, _ = counter(shop), parcel(shop)
    start_run(shop, by("K"), "plain", box(shop, first.box.number).knives, 90, 720)

    seen = picture(shop, minutes=14)

    runs = day_facts(seen)["runs"]
    assert isinstance(runs, list)
    told = [run["under_way"] for run in runs if isinstance(run, dict)]
    assert told[0] == {
        "by": "K",
        "since": "2026-11-09T09:00:00-05:00",
        "paused": False,
        "timed": True,
        "worked_seconds": 840,
        "planned_seconds": 810,
    }
    assert told[1:] == [None]
    assert "1. UNDER WAY plain, 2 knives: K since 09:00, 14 of 14 min" in day_sheet(seen)


def test_the_load_of_a_week_is_told_day_by_day(shop: Shop) -> None:
    """Today and six days more; what is planned never passes what is there, and closed days say why."""
    counter(shop, knives=20)

    load = day_facts(picture(shop))["load"]

    assert isinstance(load, list)
    days = [day for day in load if isinstance(day, dict)]
    assert [day["day"] for day in days][::6] == ["2026-11-09", "2026-11-15"]
    assert [bool(day["closed"]) for day in days] == [False] * 6 + [True]
    assert days[0]["planned_minutes"] == 122
