"""The shapes of a plan: work going in, runs and finishes coming out."""

from dataclasses import dataclass
from datetime import date, datetime

from queueboard.words import Lateness, OrderWord, RunReason


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchWindow:
    """A stretch of bench time, aware instants, end after start."""

    start: datetime
    end: datetime

    @property
    def minutes(self) -> int:
        """Whole minutes that really pass in the stretch, on a day the clocks change too."""
        return int((self.end.timestamp() - self.start.timestamp()) // 60)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnifeWork:
    """A knife that still needs the bench."""

    knife_id: int
    tag: str
    process: str
    minutes: int
    """Hands-on minutes at the bench."""
    handling_minutes: int
    """Intake, test and wrap minutes, apart from the bench."""
    rework: bool = False
    begun: bool = False
    """True when it already stands on the bench."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxWork:
    """A box with its unfinished knives and what decides its turn."""

    box_id: int
    number: int
    ship_by: datetime | None
    """The cut-off; None when nothing was promised."""
    label_last_day: date | None = None
    """Last day on which using its return label still works."""
    promised_today: bool = False
    rush: bool = False
    this_next: bool = False
    waiting: bool = False
    """True when the whole box cannot go on until somebody answers."""
    ready_to_fetch: bool = False
    """True for a pick-up whose knives are all ready: the shop's part is done, so it is never late."""
    handling_minutes: int = 0
    knives: tuple[KnifeWork, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcessWork:
    """A process and what setting it up costs."""

    name: str
    set_up_seconds: int
    run_size: int
    """Most knives in one run; at least 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Knives of one process worked together."""

    process: str
    knife_ids: tuple[int, ...]
    why: RunReason
    """The rank that placed it."""
    set_up_seconds: int
    minutes: int
    """Hands-on minutes of its knives, without the set-up."""
    handling_minutes: int
    start_minute: int
    """Bench minutes from now to its start."""
    end_minute: int
    start: datetime | None
    """Clock time; None beyond the horizon of the bench calendar."""
    end: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxForecast:
    """When the plan finishes a box, against its ship-by."""

    box_id: int
    finish: datetime | None
    """None when nothing is left for the bench, or when it lies beyond the horizon."""
    minutes_left: int
    lateness: Lateness
    late_minutes: int = 0
    """Minutes by the clock between ship-by and finish (or now); 0 when on time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderChange:
    """One difference between the day list as it was fixed and as it stands."""

    tag: str
    what: OrderWord


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The whole plan, frozen."""

    runs: tuple[Run, ...]
    forecasts: tuple[BoxForecast, ...]
    bench_minutes_today: int
    """Bench minutes left today."""
    work_minutes_today: int
    """Bench minutes left today that the runs fill, set-ups included; all of them when work goes on tomorrow."""
    changes: tuple[OrderChange, ...] = ()
    """What is different since the day list was fixed; empty when it stands or was never fixed."""
