"""Which copies are kept as they grow old."""

from collections.abc import Callable, Iterable
from datetime import date

DAILY, WEEKLY, MONTHLY = 14, 8, 12
"""How many days, weeks (ISO 8601) and months keep a copy; of each year one is kept for good."""


def kept(days: Iterable[date]) -> frozenset[date]:
    """The days whose copies stay: the newest 14, the last of each of the newest 8 weeks and 12 months, of each year.

    Weeks, months and years without a copy count for none. What is kept of the days that were kept, with a newer one, is
    what would be kept of all of them: so thinning each day loses nothing that thinning once would keep.
    """
    newest_first = sorted(set(days), reverse=True)
    return _for_a_while(newest_first) | _last_of(newest_first, _year, len(newest_first))


def only_for_their_year(days: Iterable[date]) -> frozenset[date]:
    """Of these days, those whose copies stay for nothing but their year, and so for good."""
    newest_first = sorted(set(days), reverse=True)
    return kept(newest_first) - _for_a_while(newest_first)


def _for_a_while(newest_first: list[date]) -> frozenset[date]:
    weeks, months = _last_of(newest_first, _week, WEEKLY), _last_of(newest_first, _month, MONTHLY)
    return frozenset(newest_first[:DAILY]) | weeks | months


def _last_of(newest_first: list[date], period: Callable[[date], tuple[int, ...]], most: int) -> frozenset[date]:
    last: dict[tuple[int, ...], date] = {}
    for day in newest_first:
        last.setdefault(period(day), day)
    return frozenset(list(last.values())[:most])


def _week(day: date) -> tuple[int, ...]:
    return day.isocalendar()[:2]


def _month(day: date) -> tuple[int, ...]:
    return day.year, day.month


def _year(day: date) -> tuple[int, ...]:
    return (day.year,)
