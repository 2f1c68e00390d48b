"""Bench seconds from now, turned into clock time and back over the stretches of bench time that are known."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from math import ceil

from queueboard.values.plan import BenchWindow

_MINUTE = timedelta(minutes=1)


def minutes_late(due: datetime, end: datetime) -> int:
    """Minutes by the clock from due to a later end, begun minutes counted whole; 0 when end is not later.

    Counted in UTC: two wall clock times of one zone subtract without regard to a change of the clocks.
    """
    return max(0, -((due.astimezone(UTC) - end.astimezone(UTC)) // _MINUTE))


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchClock:
    """The known bench time in order, clipped to now. A bench second is a second in which somebody works at it."""

    windows: tuple[BenchWindow, ...]
    share: float = 1.0
    """How much of a second by the wall turns into planned work, above 0: what the shop's yield is."""

    @property
    def horizon(self) -> datetime | None:
        """The end of the last known stretch; None when no bench time is known at all."""
        return self.windows[-1].end if self.windows else None

    def start_at(self, second: int) -> datetime | None:
        """When work that starts after this many bench seconds starts; None beyond the horizon.

        A start at closing time moves to the next stretch.
        """
        left = self._by_the_wall(second)
        for window in self.windows:
            if left < window.seconds:
                return _later(window.start, left)
            left -= window.seconds
        return None

    def end_at(self, second: int) -> datetime | None:
        """When work that ends after this many bench seconds ends; None beyond the horizon.

        An end at closing time stays there. Second 0 is the start of the first stretch.
        """
        left = self._by_the_wall(second)
        for window in self.windows:
            if left <= window.seconds:
                return _later(window.start, left)
            left -= window.seconds
        return None

    def seconds_before(self, instant: datetime) -> int:
        """Bench seconds from now to an instant; all of them for one beyond the horizon."""
        until = instant.timestamp()
        before = (int(until - window.start.timestamp()) for window in self.windows)
        return self._planned(min(w.seconds, max(0, s)) for w, s in zip(self.windows, before, strict=True))

    def seconds_on(self, day: date) -> int:
        """Bench seconds left in the stretches that start on this day."""
        return self._planned(w.seconds for w in self.windows if w.start.date() == day)

    def days(self) -> tuple[int, ...]:
        """Bench seconds of the days that have some, in order; today's rest first."""
        starts = dict.fromkeys(window.start.date() for window in self.windows)
        return tuple(filter(None, map(self.seconds_on, starts)))

    def _planned(self, by_the_wall: Iterable[int]) -> int:
        return int(sum(by_the_wall) * self.share)

    def _by_the_wall(self, second: int) -> int:
        # Rounded up, and down above, so that work of so many seconds never seems to end before it does.
        return ceil(second / self.share)


def bench_clock(windows: Iterable[BenchWindow], now: datetime, share: float = 1.0) -> BenchClock:
    """The clock over these stretches, in order and without what lies before now."""
    ahead = (_from(window, now) for window in windows if window.end.astimezone(UTC) > now.astimezone(UTC))
    return BenchClock(windows=tuple(sorted(ahead, key=lambda w: w.start.astimezone(UTC))), share=share)


def _from(window: BenchWindow, now: datetime) -> BenchWindow:
    if window.start.astimezone(UTC) >= now.astimezone(UTC):
        return window
    return BenchWindow(start=now.astimezone(window.start.tzinfo), end=window.end)


def _later(instant: datetime, seconds: int) -> datetime:
    return (instant.astimezone(UTC) + timedelta(seconds=seconds)).astimezone(instant.tzinfo)
