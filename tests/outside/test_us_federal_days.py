"""Public holidays and working days against the US federal calendar.

values/us_federal_days.json: days on which federal offices are closed, 2024-2026 by the rules of 5 U.S.C. 6103, and the
table that the US Office of Personnel Management published for 2008.
"""

import json
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from queueboard.calendar.days import ShopCalendar, carrier_works, is_open
from queueboard.calendar.public_holidays import public_holidays
from tests.shop_settings import settings

PUBLISHED = json.loads((Path(__file__).parent / "values" / "us_federal_days.json").read_text(encoding="utf-8"))
OBSERVED: dict[str, list[str]] = {**PUBLISHED["observed"], "2008": PUBLISHED["opm_2008"]}
WEEKDAYS: dict[str, int] = PUBLISHED["weekdays"]
WORKING_DAYS: dict[str, int] = PUBLISHED["working_days"]


def days_of(year: str) -> list[date]:
    """Every day of a year."""
    first = date(int(year), 1, 1)
    return [day for n in range(366) if (day := first + timedelta(days=n)).year == int(year)]


def monday_to_friday(year: str, *, country: str) -> ShopCalendar:
    """A shop that is open, and whose carrier works, Monday to Friday but for a country's public holidays."""
    base = settings()
    hours = {weekday: base.hours[weekday] for weekday in range(5)}
    return ShopCalendar(replace(base, hours=hours), dict(public_holidays(country, "", int(year), int(year))))


@pytest.mark.parametrize("year", OBSERVED)
def test_federal_days_are_public_holidays(year: str) -> None:
    """Every published day is in the list; what the list has besides is a feast on the weekend itself."""
    found = {day for day, _ in public_holidays("US", "", int(year), int(year))}
    published = {date.fromisoformat(day) for day in OBSERVED[year]}

    assert published <= found
    assert all(day.weekday() >= 5 for day in found - published)


@pytest.mark.parametrize("year", WORKING_DAYS)
def test_working_days_of_a_year(year: str) -> None:
    """Days on which a Monday-to-Friday shop is open, and its carrier works, are as many as published."""
    calendar = monday_to_friday(year, country="US")

    assert sum(is_open(calendar, day) for day in days_of(year)) == WORKING_DAYS[year]
    assert sum(carrier_works(calendar, day) for day in days_of(year)) == WORKING_DAYS[year]


@pytest.mark.parametrize("year", WEEKDAYS)
def test_weekdays_of_a_year(year: str) -> None:
    """Without public holidays a Monday-to-Friday shop is open on every weekday of the year."""
    calendar = monday_to_friday(year, country="")

    assert sum(is_open(calendar, day) for day in days_of(year)) == WEEKDAYS[year]
