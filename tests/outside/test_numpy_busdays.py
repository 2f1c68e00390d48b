"""Working days against the examples in numpy's documentation of busday_count and busday_offset.

values/numpy_busdays.json has the calls and the printed answers; numpy itself is not needed.
"""

import json
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import TypedDict

import pytest

from queueboard.calendar.counting import on_or_after, on_or_before, working_days_from
from queueboard.calendar.days import ShopCalendar, is_open
from tests.shop_settings import settings


class Count(TypedDict):
    """One busday_count: days from first up to, without, end."""

    call: str
    first: str
    end: str
    weekdays: list[int]
    result: int


class Offset(TypedDict):
    """One busday_offset: roll to a working day, then go so many on."""

    call: str
    day: str
    roll: str
    count: int
    weekdays: list[int]
    result: str


class Published(TypedDict):
    """The whole file of values."""

    count: list[Count]
    offset: list[Offset]


PUBLISHED: Published = json.loads((Path(__file__).parent / "values" / "numpy_busdays.json").read_text(encoding="utf-8"))
ROLL = {"forward": on_or_after, "backward": on_or_before}


def opens_on(weekdays: list[int]) -> Callable[[date], bool]:
    """The working days of a shop that opens on these weekdays."""
    base = settings()
    calendar = ShopCalendar(replace(base, hours=dict.fromkeys(weekdays, base.hours[0])), {})
    return lambda day: is_open(calendar, day)


@pytest.mark.parametrize("example", PUBLISHED["count"], ids=lambda example: str(example["call"]))
def test_open_days_are_counted_as_published(example: Count) -> None:
    """The shop is open on as many days as the documentation prints, the end not counted."""
    first, end = date.fromisoformat(example["first"]), date.fromisoformat(example["end"])
    works = opens_on(example["weekdays"])

    assert sum(works(first + timedelta(days=n)) for n in range((end - first).days)) == example["result"]


@pytest.mark.parametrize("example", PUBLISHED["offset"], ids=lambda example: str(example["call"]))
def test_working_days_are_stepped_as_published(example: Offset) -> None:
    """Rolling to a working day and going so many on ends on the day that the documentation prints."""
    works = opens_on(example["weekdays"])
    start = ROLL[example["roll"]](date.fromisoformat(example["day"]), works)

    assert working_days_from(start, example["count"], works).isoformat() == example["result"]
