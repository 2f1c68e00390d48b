"""Going back and forth by working days, whatever makes a day a working day."""

from collections.abc import Callable
from datetime import date, timedelta

FURTHEST = 366
"""Days that a search goes before it gives up: a year in which nothing works is no calendar."""

Works = Callable[[date], bool]
"""Says of a day whether it is a working day."""


def on_or_before(day: date, works: Works) -> date:
    """The latest working day up to *day* itself; the day a year before it, when there is none in that year."""
    return _on_or_beyond(day, works, -1)


def on_or_after(day: date, works: Works) -> date:
    """The earliest working day from *day* itself on; the day a year after it, when there is none in that year."""
    return _on_or_beyond(day, works, 1)


def working_days_from(day: date, count: int, works: Works) -> date:
    """The *count*-th working day after *day*; before it when count is negative; *day* itself when it is 0."""
    step = 1 if count > 0 else -1
    for _ in range(abs(count)):
        day = _on_or_beyond(day + timedelta(days=step), works, step)
    return day


def _on_or_beyond(day: date, works: Works, step: int) -> date:
    for distance in range(FURTHEST):
        candidate = day + timedelta(days=step * distance)
        if works(candidate):
            return candidate
    return day + timedelta(days=step * FURTHEST)
