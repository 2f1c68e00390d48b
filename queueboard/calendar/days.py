"""Which days and minutes are there: opening, closing, the bench and the carrier, on the shop's own wall clock."""

from collections.abc import Mapping
from dataclasses import field
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

from queueboard.settings.market_rules import rule_days
from queueboard.settings.shapes import MarketDay, Settings
from queueboard.slotted import dataclass
from queueboard.values.plan import BenchWindow, ahead


@dataclass(frozen=True, slots=True)
class ShopCalendar:
    """The shop's numbers together with the public holidays that were looked up for its country."""

    settings: Settings
    holidays: Mapping[date, str]
    """Names by day; a day beyond the years looked up counts as no holiday."""
    known: dict[date, str | None] = field(default_factory=dict, init=False, compare=False, repr=False)
    """What why_closed has said so far: every box asks for the same few days."""
    by_carrier: dict[str, "ShopCalendar"] = field(default_factory=dict, init=False, compare=False, repr=False)
    """The calendars of single carriers, as far as asked for: nearly every box goes with the same few."""
    bench: dict[date, tuple[BenchWindow, ...]] = field(default_factory=dict, init=False, compare=False, repr=False)
    """The bench hours of whole days, as far as asked for: each plan asks for the same months."""


def why_closed(calendar: ShopCalendar, day: date) -> str | None:
    """Why the shop is shut all day, for a person to read; None when it opens.

    A market day shuts the shop: whoever stands at the stall is at neither bench nor counter.
    """
    if day not in calendar.known:
        calendar.known[day] = _why_closed(calendar, day)
    return calendar.known[day]


def _why_closed(calendar: ShopCalendar, day: date) -> str | None:
    for closure in calendar.settings.closures:
        if closure.first <= day <= closure.last:
            return closure.reason
    holiday = calendar.holidays.get(day)
    if holiday is not None and not _opens_on(calendar.settings, holiday):
        return holiday
    if day.weekday() not in calendar.settings.hours:
        return f"closed on {day:%A}s"
    return _market_on(calendar.settings, day)


def _opens_on(settings: Settings, holiday: str) -> bool:
    """True when the shop opens on a holiday; days that carry two names need both of them listed."""
    return all(name.strip().casefold() in settings.open_on_holidays for name in holiday.split(";"))


def is_open(calendar: ShopCalendar, day: date) -> bool:
    """True when the shop opens on that day."""
    return why_closed(calendar, day) is None


def closes_at(calendar: ShopCalendar, day: date) -> time | None:
    """When the shop shuts for the day on the wall clock; None on a closed day."""
    return calendar.settings.hours[day.weekday()][-1][1] if is_open(calendar, day) else None


def carrier_works(calendar: ShopCalendar, day: date) -> bool:
    """True on the carrier's working days: collection weekdays that are no public holiday."""
    return day.weekday() in calendar.settings.parcels.collection_weekdays and day not in calendar.holidays


def can_ship(calendar: ShopCalendar, day: date) -> bool:
    """True when a parcel can leave on that day: the shop is open and the carrier collects."""
    return carrier_works(calendar, day) and is_open(calendar, day)


def day_ends(zone: ZoneInfo, day: date) -> tuple[datetime, datetime]:
    """When a day begins and when the next one does, in the shop's zone: 23, 24 or 25 hours apart."""
    first, end = (datetime.combine(one, time(0), tzinfo=zone) for one in (day, day + timedelta(days=1)))
    return first, end


def bench_windows(calendar: ShopCalendar, now: datetime, days: int) -> tuple[BenchWindow, ...]:
    """The bench hours of today and the days after it, *days* in all, as far as they lie after *now* (aware).

    Bench hours are wall-clock times; their minutes are the minutes that really pass, so a window over the hour that is
    left out in spring is shorter and one over the hour that comes twice is longer. In order, never overlapping.
    """
    today = now.astimezone(calendar.settings.zone).date()
    whole = (window for offset in range(days) for window in _bench_on(calendar, today + timedelta(days=offset)))
    return tuple(ahead(whole, now))


def _bench_on(calendar: ShopCalendar, day: date) -> tuple[BenchWindow, ...]:
    """The bench hours of a whole day: none while the shop is shut."""
    if day not in calendar.bench:
        calendar.bench[day] = _bench_hours(calendar, day)
    return calendar.bench[day]


def _bench_hours(calendar: ShopCalendar, day: date) -> tuple[BenchWindow, ...]:
    if not is_open(calendar, day):
        return ()
    zone = calendar.settings.zone
    windows: list[BenchWindow] = []
    free_from = datetime.combine(day, time(0), tzinfo=zone).astimezone(UTC)
    for first, last in calendar.settings.bench.get(day.weekday(), ()):
        # Times of one zone are compared by their wall clock; only in UTC does the earlier instant come first.
        start = max(datetime.combine(day, first, tzinfo=zone).astimezone(UTC), free_from)
        end = datetime.combine(day, last, tzinfo=zone).astimezone(UTC)
        if end > start:
            windows.append(BenchWindow(start=start.astimezone(zone), end=end.astimezone(zone)))
            free_from = end
    return tuple(windows)


def market_days(settings: Settings, first: date, last: date) -> Mapping[date, str]:
    """The market days from *first* to *last*, both included, with the market's name (the first one, where two meet)."""
    found = [
        (day, market.name)
        for market in reversed(settings.markets)
        for year in range(first.year, last.year + 1)
        for day in _days_in(market, year)
        if first <= day <= last
    ]
    return dict(sorted(dict(found).items()))


def _market_on(settings: Settings, day: date) -> str | None:
    return next((market.name for market in settings.markets if day in _days_in(market, day.year)), None)


@lru_cache(maxsize=256)
def _days_in(market: MarketDay, year: int) -> frozenset[date]:
    """A market's days in one year; asked for every day of a plan, worked out once."""
    return rule_days(market, date(year, 1, 1), date(year, 12, 31))
