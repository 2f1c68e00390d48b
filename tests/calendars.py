"""Calendars of the small invented shop for tests, and strategies for shops with any hours."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from hypothesis import strategies as st

from queueboard.calendar.days import ShopCalendar
from queueboard.settings.parcel_shapes import LastShip
from queueboard.settings.shapes import Closure, MarketDay, Settings, Span
from tests.shop_settings import settings

ZONES = tuple(ZoneInfo(name) for name in ("UTC", "Europe/Berlin", "America/New_York", "Australia/Lord_Howe"))
"""Zones without summer time, with it, on the other side of the ocean, and with half an hour of it."""

YEAR = st.dates(date(2026, 1, 1), date(2027, 12, 31))
"""Any day of two years."""


def closed(first: date, last: date | None = None, reason: str = "away") -> Closure:
    """A closure of one or more days."""
    return Closure(first=first, last=last or first, reason=reason)


def market(rule: str, start: date, name: str = "Harbour market") -> MarketDay:
    """A market with its rule."""
    return MarketDay(name=name, rule=rule, start=start)


def shop_calendar(
    *,
    holidays: Mapping[date, str] | None = None,
    closures: tuple[Closure, ...] = (),
    markets: tuple[MarketDay, ...] = (),
    base: Settings | None = None,
) -> ShopCalendar:
    """The calendar of the small shop: open Monday to Saturday, carrier Monday to Friday until 15:45."""
    return ShopCalendar(replace(base or settings(), closures=closures, markets=markets), holidays or {})


def with_closure(calendar: ShopCalendar, closure: Closure) -> ShopCalendar:
    """The same calendar with one closure more."""
    base = calendar.settings
    return ShopCalendar(replace(base, closures=(*base.closures, closure)), calendar.holidays)


@st.composite
def spans(draw: st.DrawFn) -> tuple[Span, ...]:
    """Up to three stretches of one day, in order and apart."""
    ends = sorted(draw(st.lists(st.integers(0, 1439), min_size=2, max_size=6, unique=True)))
    minutes = ends[: len(ends) // 2 * 2]
    clock = [time(minute // 60, minute % 60) for minute in minutes]
    return tuple(zip(clock[::2], clock[1::2], strict=True))


@st.composite
def closures(draw: st.DrawFn) -> Closure:
    """A closure of up to three weeks."""
    first = draw(YEAR)
    return closed(first, first + timedelta(days=draw(st.integers(0, 20))))


@st.composite
def last_ships(draw: st.DrawFn) -> LastShip:
    """A row of a carrier's table of last days."""
    ship_on = draw(YEAR)
    return LastShip(ship_on=ship_on, arrives_by=ship_on + timedelta(days=draw(st.integers(0, 12))))


@st.composite
def calendars(draw: st.DrawFn) -> ShopCalendar:
    """A shop with any weekly hours, zone, closures and holidays, open on at least one day the carrier collects."""
    hours = draw(st.dictionaries(st.integers(0, 6), spans(), min_size=1))
    collection = draw(st.frozensets(st.integers(0, 6), max_size=6)) | {draw(st.sampled_from(sorted(hours)))}
    base = settings()
    numbers = replace(
        base,
        zone=draw(st.sampled_from(ZONES)),
        hours=hours,
        bench=hours,
        ready_by=draw(st.times().map(to_minute)),
        closures=tuple(draw(st.lists(closures(), max_size=3))),
        parcels=replace(
            base.parcels,
            collection_weekdays=collection,
            cut_off=draw(st.times().map(to_minute)),
            last_ship=tuple(draw(st.lists(last_ships(), max_size=2))),
        ),
    )
    return ShopCalendar(numbers, dict.fromkeys(draw(st.lists(YEAR, max_size=10)), "a feast"))


def to_minute(clock: time) -> time:
    """The time without its seconds, as settings write it."""
    return clock.replace(second=0, microsecond=0)


def instants(zone: ZoneInfo) -> st.SearchStrategy[datetime]:
    """Any real instant of two years, on the wall clock of a zone."""
    first = datetime(2026, 1, 1, tzinfo=UTC)
    seconds = st.integers(0, 2 * 365 * 24 * 60 * 60)
    return seconds.map(lambda passed: (first + timedelta(seconds=passed)).astimezone(zone))
