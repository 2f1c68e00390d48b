"""Public holidays as they are looked up for the shop's file."""

from datetime import date

import pytest

from queueboard.calendar.public_holidays import public_holidays
from queueboard.errors import SettingsError


def test_no_country_has_no_public_holidays() -> None:
    """An empty country gives an empty list."""
    assert public_holidays("", "", 2026, 2027) == ()


def test_the_years_asked_for_are_there_in_order() -> None:
    """Days of both end years come in order, each once."""
    days = [day for day, _ in public_holidays("DE", "BE", 2026, 2028)]

    assert days == sorted(set(days))
    assert {day.year for day in days} == {2026, 2027, 2028}


def test_a_region_has_its_own_days() -> None:
    """A holiday that only one region keeps is there with that region, and not with another or with none."""
    repentance_day = date(2026, 11, 18)

    assert repentance_day in dict(public_holidays("DE", "SN", 2026, 2026))
    assert repentance_day not in dict(public_holidays("DE", "BE", 2026, 2026))
    assert repentance_day not in dict(public_holidays("DE", "", 2026, 2026))


@pytest.mark.parametrize(("country", "region"), [("ZZ", ""), ("US", "QQ"), ("XX", "YY")])
def test_an_unknown_place_is_a_sentence(country: str, region: str) -> None:
    """A country or region that the list does not know is named, with what to do."""
    with pytest.raises(SettingsError, match=f"No public holidays are known for .*{region or country}.*closures"):
        public_holidays(country, region, 2026, 2026)
