"""Bench seconds from now, turned into clock time and back over the stretches of bench time that are known."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from datetime import UTC, date, datetime, timedelta
from itertools import accumulate, groupby
from math import ceil

from queueboard.slotted import dataclass
from queueboard.values.plan import BenchWindow, ahead

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
    opens: tuple[float, ...]
    """When each stretch starts, as a timestamp."""
    worked: tuple[int, ...]
    """Seconds by the wall in all stretches before each, and last of all in every one."""
    share: float
    """How much of a second by the wall turns into planned work, above 0: what the shop's yield is."""

    @property
    def horizon(self) -> datetime | None:
        """The end of the last known stretch; None when no bench time is known at all."""
        return self.windows[-1].end if self.windows else None

    def start_at(self, second: int) -> datetime | None:
        """When work that starts after this many bench seconds starts; None beyond the horizon.

        A start at closing time moves to the next stretch.
        """
        wall = self._by_the_wall(second)
        return self._at(wall, bisect_right(self.worked, wall) - 1)

    def end_at(self, second: int) -> datetime | None:
        """When work that ends after this many bench seconds ends; None beyond the horizon.

        An end at closing time stays there. Second 0 is the start of the first stretch.
        """
        wall = self._by_the_wall(second)
        return self._at(wall, max(0, bisect_left(self.worked, wall) - 1))

    def seconds_before(self, instant: datetime) -> int:
        """Bench seconds from now to an instant; all of them for one beyond the horizon."""
        until = instant.timestamp()
        place = bisect_right(self.opens, until) - 1
        if place < 0:
            return 0
        into = min(int(until - self.opens[place]), self.windows[place].seconds)
        return int((self.worked[place] + into) * self.share)

    def seconds_on(self, day: date) -> int:
        """Bench seconds left in the stretches that start on this day."""
        return int(sum(w.seconds for w in self.windows if w.start.date() == day) * self.share)

    def days(self) -> tuple[int, ...]:
        """Bench seconds of the days that have some, in order; today's rest first."""
        by_day = groupby(self.windows, key=lambda window: window.start.date())
        return tuple(filter(None, (int(sum(w.seconds for w in some) * self.share) for _, some in by_day)))

    def _by_the_wall(self, second: int) -> int:
        # Rounded up, and down above, so that work of so many seconds never seems to end before it does.
        return ceil(second / self.share)

    def _at(self, wall: int, place: int) -> datetime | None:
        if place >= len(self.windows):
            return None
        return _later(self.windows[place].start, wall - self.worked[place])


def bench_clock(windows: Iterable[BenchWindow], now: datetime, share: float = 1.0) -> BenchClock:
    """The clock over these stretches, in order and without what lies before now."""
    known = tuple(sorted(ahead(windows, now), key=lambda window: window.opens))
    return BenchClock(
        windows=known,
        opens=tuple(window.opens for window in known),
        worked=tuple(accumulate((window.seconds for window in known), initial=0)),
        share=share,
    )


def _later(instant: datetime, seconds: int) -> datetime:
    return (instant.astimezone(UTC) + timedelta(seconds=seconds)).astimezone(instant.tzinfo)
