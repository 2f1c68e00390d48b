"""Weeks against ISO 8601.

values/iso_weeks.json: week dates around the turn of years, where the week belongs to the other year (from memory).
"""

import json
from datetime import date
from pathlib import Path

import pytest

from queueboard.values.week import iso_week

PUBLISHED: dict[str, str] = json.loads(
    (Path(__file__).parent / "values" / "iso_weeks.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize(("day", "week"), PUBLISHED.items())
def test_a_day_has_its_published_week(day: str, week: str) -> None:
    """The week date has the year that the week belongs to, its number, and the weekday from Monday 1."""
    assert iso_week(date.fromisoformat(day)) == week
