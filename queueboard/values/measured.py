"""What is measured at the bench: runs that somebody began, and what was said against what was seen."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchRun:
    """Knives of one process that somebody works together, with the clock on it."""

    id: int
    version: int
    process: str
    knife_ids: tuple[int, ...]
    """Those at the bench and those that have left it forward; one that left it any other way is out of the run."""
    started_at: datetime
    started_by: str
    """Initials of whose run it is."""
    nominal_seconds: int
    """Hands-on seconds of its knives by the starter minutes, and the set-up."""
    planned_seconds: int
    """The same as the plan gave it when it began, by the learned minutes."""
    set_up_seconds: int
    """As planned."""
    paused_at: datetime | None = None
    """None while it runs."""
    paused_seconds: int = 0
    """All pauses that are over."""
    finished_at: datetime | None = None
    timed: bool = True
    """False when it was done without timing, or its time was thrown away."""

    def worked_seconds(self, now: datetime) -> int:
        """Seconds from its start, without pauses; until it was paused or finished, else until now (aware)."""
        until = self.finished_at or self.paused_at or now
        return max(0, int((until - self.started_at).total_seconds()) - self.paused_seconds)
