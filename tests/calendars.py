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

YEAR = st.integers(0, 729).map(lambda days: date(2026, 1, 1) + timedelta(days=days))
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


CLOCKS = st.integers(0, 1439).map(lambda minute: time(minute // 60, minute % 60))
"""Any minute of a day, as settings write it."""

INSTANTS = st.integers(0, 2 * 365 * 24 * 60 * 60).map(
    lambda passed: datetime(2026, 1, 1, tzinfo=UTC) + timedelta(seconds=passed)
)
"""Any real instant of two years, in UTC."""


def _spans(clocks: list[time]) -> tuple[Span, ...]:
    """Stretches of one day, in order and apart."""
    ends = sorted(clocks)[: len(clocks) // 2 * 2]
    return tuple(zip(ends[::2], ends[1::2], strict=True))


def closures() -> st.SearchStrategy[Closure]:
    """Closures of up to three weeks."""
    return st.tuples(YEAR, st.integers(0, 20)).map(lambda drawn: closed(drawn[0], drawn[0] + timedelta(days=drawn[1])))


def _calendar(
    *,
    hours: dict[int, tuple[Span, ...]],
    collection: frozenset[int],
    collected: int,
    zone: ZoneInfo,
    ready_by: time,
    cut_off: time,
    shut: list[Closure],
    last: list[tuple[date, int]],
    holidays: list[date],
) -> ShopCalendar:
    """collected: which of the open weekdays the carrier collects on in any case."""
    base = settings()
    numbers = replace(
        base,
        zone=zone,
        hours=hours,
        bench=hours,
        ready_by=ready_by,
        closures=tuple(shut),
        parcels=replace(
            base.parcels,
            collection_weekdays=collection | {sorted(hours)[collected % len(hours)]},
            cut_off=cut_off,
            last_ship=tuple(LastShip(ship_on=day, arrives_by=day + timedelta(days=more)) for day, more in last),
        ),
    )
    return ShopCalendar(numbers, dict.fromkeys(holidays, "a feast"))


SHOPS = st.builds(
    _calendar,
    hours=st.dictionaries(
        st.integers(0, 6), st.lists(CLOCKS, min_size=2, max_size=6, unique=True).map(_spans), min_size=1
    ),
    collection=st.frozensets(st.integers(0, 6), max_size=6),
    collected=st.integers(0, 6),
    zone=st.sampled_from(ZONES),
    ready_by=CLOCKS,
    cut_off=CLOCKS,
    shut=st.lists(closures(), max_size=3),
    last=st.lists(st.tuples(YEAR, st.integers(0, 12)), max_size=2),
    holidays=st.lists(YEAR, max_size=10),
)


def calendars() -> st.SearchStrategy[ShopCalendar]:
    """Shops with any weekly hours, zone, closures and holidays, open on at least one day the carrier collects."""
    return SHOPS
