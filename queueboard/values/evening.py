"""What was written down at the end of a day: the dust tray, the money counted, the day closed."""

from datetime import UTC, date, datetime, timedelta

from queueboard.slotted import dataclass
from queueboard.words import PayWay


@dataclass(frozen=True, slots=True, kw_only=True)
class DustTray:
    """The dust tray emptied or wetted and looked at, and the second look at it where there was one."""

    id: int
    day: date
    at: datetime
    by: str
    """Initials."""
    again_at: datetime | None = None
    again_by: str = ""

    def again_from(self, minutes: int) -> datetime:
        """From when on a second look means something: so many minutes of real time after it was emptied, in UTC."""
        return self.at.astimezone(UTC) + timedelta(minutes=minutes)


@dataclass(frozen=True, slots=True, kw_only=True)
class TillCount:
    """Money of one way as somebody counted it."""

    id: int
    version: int
    way: PayWay
    should_cents: int
    """What should have been there when it was counted."""
    counted_cents: int
    at: datetime
    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClosedDay:
    """A day that was closed."""

    id: int
    day: date
    not_done: int
    """Boxes that were due and not done when it was closed."""
    note: str
    at: datetime
    by: str
