"""By when a box must be done."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.calendar.days import ShopCalendar, can_ship, is_open
from queueboard.parcels.cutoffs import arrives_on, last_day_to_ship, ship_by
from queueboard.settings.shapes import Closure
from queueboard.words import GoesBy, PromiseKind
from tests.calendars import YEAR, calendars, closed, closures, shop_calendar, with_closure
from tests.pictures import promise

THURSDAY_FEAST = {date(2026, 11, 26): "Thanksgiving Day"}
CALENDAR = shop_calendar(holidays=THURSDAY_FEAST, closures=(closed(date(2026, 12, 9)),))
"""Open Monday to Saturday, carrier Monday to Friday until 15:45; one feast, and one day that only the shop is shut."""

PARCEL = [
    # promised day, kind, carrier's days, the cut-off's day
    ("2026-11-20", PromiseKind.DAY, 0, "2026-11-20"),
    ("2026-11-20", PromiseKind.DAY, 2, "2026-11-18"),
    ("2026-11-22", PromiseKind.DAY, 2, "2026-11-18"),  # a Sunday: the carrier's last working day is Friday
    ("2026-11-23", PromiseKind.DAY, 2, "2026-11-19"),  # Friday and Monday on the way
    ("2026-11-27", PromiseKind.DAY, 2, "2026-11-24"),  # the feast moves nothing: Wednesday and Friday on the way
    ("2026-11-26", PromiseKind.DAY, 1, "2026-11-24"),
    ("2026-12-11", PromiseKind.DAY, 2, "2026-12-08"),  # the 9th would do for the carrier, but the shop is shut
    ("2026-11-26", PromiseKind.SHIPS_BY, 5, "2026-11-25"),
    ("2026-11-28", PromiseKind.SHIPS_BY, 5, "2026-11-27"),
    ("2026-11-27", PromiseKind.SHIPS_BY, 5, "2026-11-27"),
]


@pytest.mark.parametrize(("day", "kind", "carrier_days", "cut_off"), PARCEL)
def test_a_parcel_leaves_in_time(day: str, kind: PromiseKind, carrier_days: int, cut_off: str) -> None:
    """The cut-off is the packing hour of the latest day from which the carrier still makes it (worked out by hand)."""
    told = promise(date.fromisoformat(day), kind=kind)

    found = ship_by(CALENDAR, told, GoesBy.PARCEL, carrier_days)

    assert found == datetime.combine(date.fromisoformat(cut_off), time(15, 45), tzinfo=CALENDAR.settings.zone)


@pytest.mark.parametrize(("day", "ready"), [("2026-11-25", "25"), ("2026-11-26", "25"), ("2026-11-22", "21")])
def test_a_pick_up_is_ready_on_the_last_open_day(day: str, ready: str) -> None:
    """A box promised for a closed day is ready on the open day before it, by the shop's hour."""
    found = ship_by(CALENDAR, promise(date.fromisoformat(day)), GoesBy.PICK_UP, 0)

    assert f"{found:%d %H:%M}" == f"{ready} 16:00"


def test_a_promise_by_a_time_holds_to_the_minute() -> None:
    """Ready by eleven on Tuesday is eleven on Tuesday in the shop's zone."""
    told = promise(date(2026, 11, 24), kind=PromiseKind.BY_TIME, at=time(11))

    assert ship_by(CALENDAR, told, GoesBy.PICK_UP, 0) == datetime(2026, 11, 24, 11, tzinfo=CALENDAR.settings.zone)


def test_somebody_who_waits_is_promised_to_the_minute() -> None:
    """A customer who stays in the shop is due at the time that was told."""
    told = promise(date(2026, 11, 24), kind=PromiseKind.WAITS, at=time(9, 40))

    assert ship_by(CALENDAR, told, GoesBy.PICK_UP, 0) == datetime(2026, 11, 24, 9, 40, tzinfo=CALENDAR.settings.zone)


def test_the_next_round_is_packed_the_open_day_before() -> None:
    """What goes out with the van on Monday is ready on Saturday, and on Wednesday when Thursday is a feast."""
    days = {"2026-11-23": "2026-11-21", "2026-11-27": "2026-11-25"}
    for day, ready in days.items():
        told = promise(date.fromisoformat(day), kind=PromiseKind.NEXT_ROUND)
        found = ship_by(CALENDAR, told, GoesBy.PICK_UP, 0)
        assert found is not None
        assert found.date() == date.fromisoformat(ready)


def test_nothing_promised_has_no_cut_off() -> None:
    """Without a promise there is nothing to be late for."""
    assert ship_by(CALENDAR, None, GoesBy.PARCEL, 3) is None


def test_no_cut_off_lies_after_the_shop_has_shut() -> None:
    """On a day that ends early, ready-by and packing cut-off come no later than the door closes."""
    short = {**CALENDAR.settings.hours, 4: ((time(8), time(13)),)}
    calendar = shop_calendar(base=replace(CALENDAR.settings, hours=short))
    friday = promise(date(2026, 11, 27))

    assert f"{ship_by(calendar, friday, GoesBy.PICK_UP, 0):%d %H:%M}" == "27 13:00"
    assert f"{ship_by(calendar, friday, GoesBy.PARCEL, 0):%d %H:%M}" == "27 13:00"


def test_a_year_that_is_all_closed_shows_as_long_past() -> None:
    """Where no day would do, the cut-off lies so far back that the box is late, and nothing breaks."""
    calendar = with_closure(CALENDAR, closed(date(2020, 1, 1), date(2030, 1, 1)))

    found = ship_by(calendar, promise(date(2026, 11, 27)), GoesBy.PARCEL, 2)

    assert found is not None
    assert found.date() < date(2026, 1, 1)


DAYS = st.integers(0, 10)
PARCEL_KINDS = st.sampled_from([PromiseKind.DAY, PromiseKind.SHIPS_BY])


@given(calendars(), YEAR, DAYS, PARCEL_KINDS)
def test_a_parcel_s_cut_off_is_on_a_day_to_ship(
    calendar: ShopCalendar, day: date, carrier_days: int, kind: PromiseKind
) -> None:
    """The cut-off never lies after the promise, and the shop is open and the carrier collects on its day."""
    found = ship_by(calendar, promise(day, kind=kind), GoesBy.PARCEL, carrier_days)

    assert found is not None
    assert found.date() <= day
    assert can_ship(calendar, found.date())


@given(calendars(), YEAR)
def test_a_pick_up_s_cut_off_is_on_an_open_day(calendar: ShopCalendar, day: date) -> None:
    """Ready-by never lies after the promised day, and the shop is open on its day."""
    found = ship_by(calendar, promise(day), GoesBy.PICK_UP, 0)

    assert found is not None
    assert found.date() <= day
    assert is_open(calendar, found.date())


@given(calendars(), YEAR, DAYS)
def test_the_last_day_to_ship_is_the_last(calendar: ShopCalendar, day: date, carrier_days: int) -> None:
    """A parcel that leaves then arrives in time, and one that leaves on any later day does not."""
    last = last_day_to_ship(calendar, day, carrier_days)

    assert arrives_on(calendar, last, carrier_days) <= day
    later = [last + timedelta(days=n) for n in range(1, (day - last).days + 8)]
    assert all(arrives_on(calendar, late, carrier_days) > day for late in later if can_ship(calendar, late))


@given(calendars(), closures(), YEAR, DAYS, st.sampled_from(GoesBy))
def test_a_closure_never_gives_more_time(
    calendar: ShopCalendar, closure: Closure, day: date, carrier_days: int, goes_by: GoesBy
) -> None:
    """With one closure more the cut-off is the same or earlier."""
    before = ship_by(calendar, promise(day), goes_by, carrier_days)
    after = ship_by(with_closure(calendar, closure), promise(day), goes_by, carrier_days)

    assert before is not None
    assert after is not None
    assert after <= before


@given(calendars(), YEAR, DAYS, st.integers(1, 30))
def test_a_later_promise_never_gives_less_time(
    calendar: ShopCalendar, day: date, carrier_days: int, more_days: int
) -> None:
    """A promise some days later has its cut-off at the same time or later."""
    early = ship_by(calendar, promise(day), GoesBy.PARCEL, carrier_days)
    late = ship_by(calendar, promise(day + timedelta(days=more_days)), GoesBy.PARCEL, carrier_days)

    assert early is not None
    assert late is not None
    assert early <= late


@given(calendars(), YEAR, st.integers(0, 9))
def test_a_slower_carrier_never_gives_more_time(calendar: ShopCalendar, day: date, carrier_days: int) -> None:
    """With one working day more on the way, the parcel leaves on the same day or earlier."""
    assert last_day_to_ship(calendar, day, carrier_days + 1) <= last_day_to_ship(calendar, day, carrier_days)
