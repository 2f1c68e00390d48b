"""The shapes of a plan: work going in, runs and finishes coming out."""

from collections.abc import Iterable, Iterator
from dataclasses import field
from datetime import datetime

from queueboard.slotted import dataclass
from queueboard.words import Lateness, OrderWord, RunReason


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchWindow:
    """A stretch of bench time, aware instants, end after start."""

    start: datetime
    end: datetime
    opens: float = field(init=False, compare=False, repr=False)
    """When it starts, as a timestamp; a plan asks for it many times."""
    closes: float = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "opens", self.start.timestamp())
        object.__setattr__(self, "closes", self.end.timestamp())

    @property
    def seconds(self) -> int:
        """Seconds that really pass in the stretch, on a day the clocks change too."""
        return int(self.closes - self.opens)


def ahead(windows: Iterable[BenchWindow], now: datetime) -> Iterator[BenchWindow]:
    """What is left of these stretches from an instant on: those that are over are gone, one under way begins then."""
    moment = now.timestamp()
    for window in windows:
        if window.opens >= moment:
            yield window
        elif window.closes > moment:
            yield BenchWindow(start=now.astimezone(window.start.tzinfo), end=window.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnifeWork:
    """A knife that still needs the bench."""

    knife_id: int
    tag: str
    process: str
    seconds: int
    """Hands-on seconds at the bench, as far as the shop has learned them."""
    handling_minutes: int
    """Intake, test and wrap minutes, apart from the bench."""
    rework: bool = False
    begun: bool = False
    """True when it already stands on the bench."""
    run_id: int | None = None
    """The run under way that it belongs to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxWork:
    """A box with its unfinished knives and what decides its turn."""

    box_id: int
    number: int
    ship_by: datetime | None
    """The cut-off; None when nothing was promised."""
    label_by: datetime | None = None
    """The last moment at which using its return label still works."""
    promised_today: bool = False
    rush: bool = False
    this_next: bool = False
    never_slip: bool = False
    put_off: bool = False
    """True when its date was moved once already: it is not the one to disappoint a second time."""
    waiting: bool = False
    """True when the whole box cannot go on until somebody answers."""
    ready_to_fetch: bool = False
    """True for a pick-up whose knives are all ready: the shop's part is done, so it is never late."""
    handling_minutes: int = 0
    knives: tuple[KnifeWork, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class UnseenWork:
    """A box whose knives nobody has seen: promised and not in the door yet, or in the door and not opened."""

    box_id: int
    ship_by: datetime | None
    """None when nothing was promised."""
    knives: int | None
    """As announced, at least 1; None when nobody said."""
    knife_seconds: int
    """Expected for each."""
    here: bool
    """True when it is in the door, so that its work could be begun."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcessWork:
    """A process and what setting it up costs."""

    name: str
    set_up_seconds: int
    run_size: int
    """Most knives in one run; at least 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunUnderWay:
    """A run that somebody has begun at the bench; its knives stay together and with that person."""

    run_id: int
    by: str
    worked_seconds: int
    """Seconds spent on it so far, pauses left out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRules:
    """The shop's choices that bind the plan."""

    earliest_due_first: bool = False
    """True for shops that prefer to share the pain: nobody is given up so that others are on time."""
    saved_percent: int = 100
    """Share of a set-up that is saved when a run follows one of the same process."""
    people: int = 1
    """How many work at the bench at the same time, at least 1."""
    bench_share: float = 1.0
    """How much of the bench time turns into planned work, above 0: the shop's yield."""
    tight_permille: int = 200
    """From this chance of being late on, in thousandths, a box that the plan has on time is tight."""
    restarts: int = 0
    """More ways to try; for the day list, never on the way from a key to the screen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Knives of one process worked together."""

    process: str
    knife_ids: tuple[int, ...]
    why: RunReason
    """The rank that placed it."""
    set_up_seconds: int
    seconds: int
    """Hands-on seconds of its knives, without the set-up; of a run under way those that are left."""
    handling_minutes: int
    start_second: int
    """Bench seconds from now to its start."""
    end_second: int
    under_way: RunUnderWay | None = None
    start: datetime | None
    """Clock time; None beyond the horizon of the bench calendar."""
    end: datetime | None

    @property
    def minutes(self) -> int:
        """Hands-on minutes, half a minute up."""
        return (self.seconds + 30) // 60


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
    slack_minutes: int | None = None
    """Bench minutes between its finish and its ship-by, below 0 when it finishes after it; None where either lacks."""
    late_permille: int | None = None
    """Chance of being late, in thousandths; None when nothing was promised, or nothing can be said."""

    @property
    def is_without_end(self) -> bool:
        """True when work is left of which nobody knows when it is done: it waits, or lies beyond the days planned."""
        return self.finish is None and self.minutes_left > 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Overload:
    """A moment before which more was promised than the bench can bear, however it is ordered."""

    before: datetime
    minutes: int
    """Bench minutes too many."""


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
    """Minutes of work that the bench still bears today."""
    work_minutes_today: int
    """Those of them that runs and unopened boxes fill, set-ups included; all of them when work goes on tomorrow."""
    unopened_seconds: int = 0
    """What boxes in the door that are not opened should take; part of no run."""
    overloads: tuple[Overload, ...] = ()
    """Heavy ones only; where one is told, a chance would mislead."""
    changes: tuple[OrderChange, ...] = ()
    """What is different since the day list was fixed; empty when it stands or was never fixed."""
