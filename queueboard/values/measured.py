"""What is measured at the bench: runs that somebody began, and what was said against what was seen."""

from datetime import date, datetime

from queueboard.slotted import dataclass
from queueboard.words import PromiseKind


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
    starter_seconds: int
    """Hands-on seconds of the knives that are still counted, by the starter minutes."""
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


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidSeen:
    """What was said of a box at a day's first look, and what was seen once its cut-off was over."""

    day: date
    """On which it was said."""
    box_id: int
    number: int
    due: datetime
    """The cut-off as it was then, in the shop's zone."""
    late_permille: int
    """The chance of being late that was said, in thousandths."""
    ready_at: datetime | None
    """When the last of its knives was ready; None when some are not yet."""

    @property
    def late(self) -> bool:
        """True when it was not ready by its cut-off."""
        return self.ready_at is None or self.ready_at > self.due


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidTenth:
    """All that was said between two tenths of a chance, against how often it was so."""

    from_percent: int
    """The lower end; the tenth ends 10 below the next, the last one at 100."""
    said: int
    """How often something was said in it."""
    said_permille: int
    """What was said, on average."""
    late: int
    """How many of those were late."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldSeen:
    """A date told to a customer whose cut-off is over, and whether it was kept."""

    box_id: int
    number: int
    kind: PromiseKind
    day: date
    told_at: datetime
    first: bool
    """True for the first date that was told for the box."""
    replaced: bool
    """True when a later date was told for the same box; the first is judged all the same."""
    cut_off: datetime
    """In the shop's zone."""
    done_at: datetime | None
    """When the box went, for a parcel; when the last knife was ready, for a pick-up; None when neither is so yet.

    A knife that is looked for is not ready and has not gone; found or settled later, it counts from then.
    """
    kept: bool
