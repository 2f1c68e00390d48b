"""Which days the shop and the carrier work, and which minutes the bench has."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.calendar.days import (
    ShopCalendar,
    bench_windows,
    can_ship,
    carrier_works,
    closes_at,
    is_open,
    market_days,
    why_closed,
)
from queueboard.settings.shapes import Closure, Span
from tests.calendars import INSTANTS, YEAR, calendars, closed, closures, market, shop_calendar, with_closure
from tests.shop_settings import settings

NOV_26 = date(2026, 11, 26)
FEAST = {NOV_26: "Thanksgiving Day"}
BERLIN = ZoneInfo("Europe/Berlin")


def minutes_of(calendar: ShopCalendar, now: datetime, days: int) -> int:
    """All bench minutes of some days."""
    return sum(window.seconds // 60 for window in bench_windows(calendar, now, days))


def sundays(span: Span) -> ShopCalendar:
    """A shop that works one stretch on Sundays, when the clocks change, and no other."""
    hours = {6: (span,)}
    return shop_calendar(base=replace(settings(), hours=hours, bench=hours))


def test_a_shop_may_open_on_a_public_holiday() -> None:
    """A holiday the shop has listed closes the carrier and not the shop; one with two names needs both listed."""
    columbus, twice = date(2026, 10, 12), date(2026, 11, 11)
    base = replace(settings(), open_on_holidays=frozenset({"columbus day", "veterans day"}))
    calendar = shop_calendar(base=base, holidays={columbus: "Columbus Day", twice: "Veterans Day; Town Day", **FEAST})

    assert is_open(calendar, columbus)
    assert not carrier_works(calendar, columbus)
    assert why_closed(calendar, twice) == "Veterans Day; Town Day"
    assert why_closed(calendar, NOV_26) == "Thanksgiving Day"


def test_a_closed_day_says_why() -> None:
    """Closures, feasts, weekdays without hours and markets each give their own words; an open day gives none."""
    calendar = shop_calendar(
        holidays=FEAST,
        closures=(closed(date(2026, 12, 24), date(2027, 1, 2), "winter break"),),
        markets=(market("FREQ=MONTHLY;BYDAY=3SA", date(2026, 1, 1)),),
    )

    assert why_closed(calendar, NOV_26) == "Thanksgiving Day"
    assert why_closed(calendar, date(2026, 11, 29)) == "closed on Sundays"
    assert why_closed(calendar, date(2026, 11, 21)) == "Harbour market"
    assert why_closed(calendar, date(2026, 12, 24)) == "winter break"
    assert why_closed(calendar, date(2027, 1, 2)) == "winter break"
    assert why_closed(calendar, date(2027, 1, 4)) is None
    assert is_open(calendar, date(2026, 11, 27))


def test_the_carrier_keeps_its_own_days() -> None:
    """The carrier rests on its weekdays off and on feasts, and works through the shop's closures."""
    calendar = shop_calendar(holidays=FEAST, closures=(closed(date(2026, 11, 27)),))

    assert not carrier_works(calendar, NOV_26)
    assert not carrier_works(calendar, date(2026, 11, 28))
    assert carrier_works(calendar, date(2026, 11, 27))
    assert not can_ship(calendar, date(2026, 11, 27))
    assert can_ship(calendar, date(2026, 11, 25))


def test_the_shop_shuts_at_the_end_of_its_last_stretch() -> None:
    """Closing time is that of the last stretch of hours, and a closed day has none."""
    calendar = shop_calendar(holidays=FEAST)

    assert closes_at(calendar, date(2026, 11, 25)) == time(17, 30)
    assert closes_at(calendar, NOV_26) is None


def test_today_counts_from_now() -> None:
    """Windows of today are cut at the present minute, those that are over are left out."""
    calendar = shop_calendar()
    nine = datetime(2026, 11, 26, 9, tzinfo=calendar.settings.zone)

    windows = bench_windows(calendar, nine, 2)

    assert [(w.start.day, f"{w.start:%H:%M}", f"{w.end:%H:%M}", w.seconds // 60) for w in windows] == [
        (26, "09:00", "10:30", 90),
        (26, "13:00", "15:00", 120),
        (27, "08:00", "10:30", 150),
        (27, "13:00", "15:00", 120),
    ]
    assert bench_windows(calendar, nine.replace(hour=15), 1) == ()


def test_now_may_come_from_another_zone() -> None:
    """An instant told in another zone cuts the windows at the same moment."""
    calendar = shop_calendar()
    nine = datetime(2026, 11, 26, 9, tzinfo=BERLIN)

    assert bench_windows(calendar, nine.astimezone(UTC), 3) == bench_windows(calendar, nine, 3)


@pytest.mark.parametrize(
    ("day", "span", "minutes"),
    [
        (date(2026, 3, 29), (time(1), time(4)), 120),
        (date(2026, 3, 29), (time(2), time(3)), 0),
        (date(2026, 10, 25), (time(1), time(4)), 240),
        (date(2026, 10, 25), (time(8), time(10)), 120),
    ],
)
def test_bench_hours_over_a_clock_change_have_the_minutes_that_pass(
    day: date, span: tuple[time, time], minutes: int
) -> None:
    """The hour left out in March is missing and the one that comes twice in October counts twice (EU rule, Berlin)."""
    calendar = sundays(span)

    assert minutes_of(calendar, datetime.combine(day, time(), tzinfo=BERLIN), 1) == minutes


def test_now_inside_the_hour_that_comes_twice() -> None:
    """In the second of the two hours called two o'clock, the minutes of the first are over."""
    calendar = sundays((time(1), time(4)))
    first = datetime(2026, 10, 25, 2, 30, tzinfo=BERLIN)

    assert minutes_of(calendar, first, 1) == 150
    assert minutes_of(calendar, first.replace(fold=1), 1) == 90


def test_market_days_are_named() -> None:
    """The market days of a stretch of time come in order, with the market's name; two on one day give the first."""
    calendar = shop_calendar(
        markets=(
            market("FREQ=MONTHLY;BYDAY=3SA", date(2026, 1, 1)),
            market("FREQ=YEARLY;BYMONTH=12;BYMONTHDAY=19", date(2026, 1, 1), "Winter fair"),
            market("FREQ=YEARLY;BYMONTH=12;BYMONTHDAY=20", date(2026, 1, 1), "Winter fair"),
        )
    )

    assert market_days(calendar.settings, date(2026, 12, 1), date(2027, 1, 16)) == {
        date(2026, 12, 19): "Harbour market",
        date(2026, 12, 20): "Winter fair",
        date(2027, 1, 16): "Harbour market",
    }


@given(calendars(), INSTANTS, st.integers(0, 40))
def test_windows_are_in_order_and_never_overlap(calendar: ShopCalendar, instant: datetime, days: int) -> None:
    """Each window ends after it begins, begins no earlier than now or the end of the one before, on an open day."""
    now = instant.astimezone(calendar.settings.zone)

    windows = bench_windows(calendar, now, days)

    free_from = now.astimezone(UTC)
    for window in windows:
        assert free_from <= window.start.astimezone(UTC) < window.end.astimezone(UTC)
        assert window.seconds >= 0
        assert window.start.tzinfo is calendar.settings.zone
        free_from = window.end.astimezone(UTC)
    assert all(is_open(calendar, window.start.date()) for window in windows)


@given(calendars(), closures(), INSTANTS)
def test_a_closure_never_adds_bench_time(calendar: ShopCalendar, closure: Closure, instant: datetime) -> None:
    """With one closure more there are as many minutes or fewer, and none on its days."""
    now = instant.astimezone(calendar.settings.zone)
    shut = with_closure(calendar, closure)

    assert minutes_of(shut, now, 40) <= minutes_of(calendar, now, 40)
    assert not any(closure.first <= w.start.date() <= closure.last for w in bench_windows(shut, now, 40))


@given(calendars(), INSTANTS)
def test_time_that_passes_never_adds_bench_time(calendar: ShopCalendar, instant: datetime) -> None:
    """An hour later there are at most 60 minutes fewer, and never more."""
    now = instant.astimezone(calendar.settings.zone).replace(second=0, microsecond=0)
    later = (now.astimezone(UTC) + timedelta(hours=1)).astimezone(calendar.settings.zone)
    days = 5 - (later.date() - now.date()).days

    assert 0 <= minutes_of(calendar, now, 5) - minutes_of(calendar, later, days) <= 60


@given(calendars(), YEAR)
def test_a_parcel_leaves_only_when_shop_and_carrier_work(calendar: ShopCalendar, day: date) -> None:
    """A day to ship is open and one of the carrier's, and neither falls on a public holiday."""
    assert can_ship(calendar, day) == (is_open(calendar, day) and carrier_works(calendar, day))
    assert not (day in calendar.holidays and (is_open(calendar, day) or carrier_works(calendar, day)))
