"""A box goes by the days of the carrier on its label, and by that carrier's table of last days."""

from dataclasses import replace
from datetime import date, datetime, time

import pytest

from queueboard.calendar.days import ShopCalendar
from queueboard.parcels.carriers import with_carrier
from queueboard.parcels.cutoffs import arrives_on, last_day_to_ship, ship_by
from queueboard.parcels.labels import last_use_day
from queueboard.settings.parcel_shapes import Carrier, LastShip
from queueboard.words import GoesBy
from tests.calendars import shop_calendar
from tests.pictures import promise, settings

DECEMBER = LastShip(ship_on=date(2026, 12, 18), arrives_by=date(2026, 12, 24))
GULL = Carrier(
    name="Gull Post",
    collection_weekdays=frozenset({0, 2}),
    cut_off=time(14),
    last_ship=(DECEMBER,),
    last_checked=date(2026, 11, 2),
)


def calendar() -> ShopCalendar:
    """The small shop, with one carrier that it has typed and a table of last days for all others."""
    base = settings()
    own = LastShip(ship_on=date(2026, 12, 16), arrives_by=date(2026, 12, 24))
    return shop_calendar(base=replace(base, parcels=replace(base.parcels, carriers=(GULL,), last_ship=(own,))))


def test_a_carrier_nobody_has_typed_goes_by_the_usual() -> None:
    """Without a carrier, or with one the shop knows nothing of, the calendar stays what it is."""
    usual = calendar()

    assert with_carrier(usual, "") is usual
    assert with_carrier(usual, "Two Rivers") is usual


def test_a_carrier_has_its_own_days_and_hour() -> None:
    """Gull Post collects on Monday and Wednesday until 14:00, and a label for Friday dies on Wednesday."""
    told = promise(date(2026, 11, 20))
    gull = with_carrier(calendar(), "GULL POST")

    assert ship_by(gull, told, GoesBy.PARCEL, 1) == datetime(2026, 11, 16, 14, tzinfo=gull.settings.zone)
    assert last_use_day(gull, date(2026, 11, 20)) == date(2026, 11, 18)
    assert last_use_day(calendar(), date(2026, 11, 20)) == date(2026, 11, 20)
    assert gull.settings.parcels.last_checked == date(2026, 11, 2)


@pytest.mark.parametrize(
    ("arrives_by", "last"),
    [
        ("2026-12-25", "2026-12-23"),  # Friday: two days on the way, no row speaks of it
        ("2026-12-24", "2026-12-16"),  # the row
        ("2026-12-23", "2026-12-16"),  # what must leave by the 16th for the 24th, must for the 23rd
        ("2026-12-17", "2026-12-15"),  # the days on the way are stricter than the row
    ],
)
def test_the_shop_s_table_of_last_days_holds(arrives_by: str, last: str) -> None:
    """A row "16 Dec for 24 Dec" asks for an earlier day than the carrier's usual two (worked out by hand)."""
    found = last_day_to_ship(calendar(), date.fromisoformat(arrives_by), 2)

    assert found == date.fromisoformat(last)


def test_what_misses_the_last_day_comes_after_the_feast() -> None:
    """Sent on the 17th, a day after the last one, it is there on the 25th at the earliest; in time, on the 18th."""
    assert arrives_on(calendar(), date(2026, 12, 16), 2) == date(2026, 12, 18)
    assert arrives_on(calendar(), date(2026, 12, 17), 2) == date(2026, 12, 25)
    assert arrives_on(calendar(), date(2027, 1, 4), 2) == date(2027, 1, 6)


def test_by_hand_no_table_holds() -> None:
    """A parcel without days on the way leaves on the day itself."""
    assert last_day_to_ship(calendar(), date(2026, 12, 24), 0) == date(2026, 12, 24)
