"""Opening and bench hours, read from their tables of weekdays."""

from collections.abc import Mapping
from itertools import pairwise

from queueboard.settings.fields import Table, written
from queueboard.settings.shapes import Span

WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
"""The weekdays as they are written in the settings, Monday first."""


def weekday_of(table: Table, key: str, place: int) -> int:
    """One weekday in a list of them, Monday 0."""
    value = table.list_of(key)[place]
    if not isinstance(value, str) or value not in WEEKDAYS:
        raise table.wrong(f"{written(value)} is no weekday; write {', '.join(WEEKDAYS)}", key, place)
    return WEEKDAYS.index(value)


def read_hours(table: Table) -> Mapping[int, tuple[Span, ...]]:
    """Opening hours by weekday; a weekday that is missing or has an empty list is closed."""
    hours = _by_weekday(table, "opening hours")
    if not hours:
        raise table.wrong('the shop is never open; write at least one weekday like mon = ["08:00-17:00"]')
    return hours


def read_bench(table: Table, hours: Mapping[int, tuple[Span, ...]]) -> Mapping[int, tuple[Span, ...]]:
    """Bench hours by weekday, each inside one stretch of opening hours."""
    bench = _by_weekday(table, "bench hours")
    if not bench:
        raise table.wrong('the bench has no hours at all; write at least one weekday like mon = ["08:00-10:30"]')
    for weekday, spans in bench.items():
        for place, (start, end) in enumerate(spans):
            if not any(first <= start and end <= last for first, last in hours.get(weekday, ())):
                told = f"bench hours {start:%H:%M}-{end:%H:%M} lie outside the opening hours of {WEEKDAYS[weekday]}"
                raise table.wrong(f"{told} ({_told(hours.get(weekday, ()))})", WEEKDAYS[weekday], place)
    return bench


def _by_weekday(table: Table, what: str) -> Mapping[int, tuple[Span, ...]]:
    table.only(*WEEKDAYS)
    hours = {WEEKDAYS.index(day): _spans(table, day, what) for day in WEEKDAYS if table.has(day)}
    return {weekday: spans for weekday, spans in hours.items() if spans}


def _spans(table: Table, day: str, what: str) -> tuple[Span, ...]:
    """The stretches of one weekday, in order and apart from each other."""
    spans = tuple(table.span(day, place, what) for place in range(len(table.list_of(day))))
    for place, (before, after) in enumerate(pairwise(spans), start=1):
        if after[0] < before[1]:
            raise table.wrong(f"{what} {_told((after,))} begin before {_told((before,))} end", day, place)
    return spans


def _told(spans: tuple[Span, ...]) -> str:
    return ", ".join(f"{start:%H:%M}-{end:%H:%M}" for start, end in spans) or "closed"
