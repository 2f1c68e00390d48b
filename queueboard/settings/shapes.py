"""The shapes of the shop's own numbers. Every figure here is the shop's; none is a constant in code."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, time
from zoneinfo import ZoneInfo

from queueboard.words import Condition, Edge, PlanOrder

Span = tuple[time, time]
"""From and to on the wall clock of the shop, to after from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Belt:
    """One belt step: the text on its back, and its grit in micrometres."""

    label: str
    grit_um: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Process:
    """The ordered steps for a kind of edge."""

    name: str
    belts: tuple[Belt, ...]
    """In the order of use."""
    finish: str
    """Deburr and hone, in the shop's words."""
    set_up_seconds: int
    """Belts times the change time."""
    run_size: int
    """Most knives worked in one run."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """A kind of knife with its price and hands-on minutes."""

    name: str
    process: str
    edge: Edge
    """The edge it usually has."""
    price_cents: int
    minutes: Mapping[Condition, int]
    """Hands-on minutes; a condition that is missing is one the shop declines."""
    short: tuple[str, ...] = ()
    """Short forms that may be typed instead of the name."""
    length_mm: int | None = None
    """The usual edge length, offered when none is typed."""
    line_gf: int | None = None
    """No spot may need more push than this, in grams-force; None takes the gauge's own line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Handling:
    """Minutes off the bench."""

    intake_per_knife: int
    intake_per_box: int
    test_per_knife: int
    wrap_per_knife: int
    pack_per_parcel: int
    counter_per_box: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Closure:
    """Days on which the shop is shut, ends included."""

    first: date
    last: date
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketDay:
    """Days away from the bench, as an RFC 5545 rule."""

    name: str
    rule: str
    start: date
    """Where the rule counts from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Parcels:
    """When parcels leave."""

    carrier_days: int
    """The carrier's working days, offered for a new box."""
    collection_weekdays: frozenset[int]
    """Weekdays on which the carrier collects, Monday 0."""
    cut_off: time
    """By when a box must be wrapped and labelled for that day's collection."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Planning:
    """How the work is put in order and how carefully dates are told; a shop that says nothing has what stands here."""

    order: PlanOrder = PlanOrder.FEWEST_LATE
    people: int = 1
    """Who work at the bench at the same time, 1 to 3."""
    saved_percent: int = 100
    """Share of a set-up that is saved when a process follows itself, 0 to 100."""
    sure_percent: int = 97
    """How sure a told day must be, 50 to 99."""
    safety_days: int = 0
    """Working days put on top of every told day, 0 to 10."""
    walk_in_minutes: int = 30
    """Bench minutes a day kept back for people who are not yet in the door, 0 to 600."""
    tight_percent: int = 20
    """From this chance of being late on a box is tight, 1 to 99."""
    announced_minutes: int = 7
    """Bench minutes expected for each knife of an announced box, 1 to 120."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gauge:
    """Which knives are read with the gauge, and what they are held against; a shop that says nothing has this."""

    every: int = 10
    """Every so many knives of a kind one is read, 0 to 1000; 0 none."""
    fresh_belt: bool = True
    """The first knife on a fresh belt is read."""
    proof_card: bool = True
    """Knives of customers who get a proof card are read."""
    complaint: bool = True
    """Knives of a box that came back with a complaint are read."""
    always: frozenset[str] = frozenset()
    """Names of kinds that are always read."""
    by_material: frozenset[str] = frozenset()
    """Names of kinds tested by cutting what they are made for, never with the gauge."""
    line_gf: int = 250
    """The line of a kind without its own, 50 to 5000 grams-force."""
    edges: Mapping[Edge, int] = field(default_factory=lambda: {Edge.SERRATED: 400, Edge.SCALLOPED: 400})
    """The line of an edge that overrules the kind's: serrated edges have a scale of their own."""
    wobble_gf: int = 15
    """Standard deviation of a reading until a study is made, 0 to 500 grams-force."""
    most_apart_gf: int = 100
    """Spots further apart than this are looked at again, 0 to 5000 grams-force."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """All of the shop's own numbers, checked."""

    name: str
    currency: str
    """The sign or code printed behind an amount."""
    country: str
    """Two letters, for the public holidays; empty for none."""
    region: str
    zone: ZoneInfo
    length_unit: str
    """cm or in: how lengths are typed and shown."""
    hours: Mapping[int, tuple[Span, ...]]
    """Opening hours by weekday, Monday 0; a weekday that is missing is closed."""
    bench: Mapping[int, tuple[Span, ...]]
    """Bench hours by weekday, inside the opening hours."""
    ready_by: time
    """By when a box promised for a day at the counter must be ready."""
    closures: tuple[Closure, ...]
    markets: tuple[MarketDay, ...]
    kinds: tuple[Kind, ...]
    processes: tuple[Process, ...]
    edges: Mapping[Edge, str]
    """The process for an edge that overrules the kind's own (serrated never goes to a plain one)."""
    handling: Handling
    parcels: Parcels
    open_on_holidays: frozenset[str] = frozenset()
    """Public holidays, case-folded, on which the shop opens all the same; the carrier still rests."""
    planning: Planning = Planning()
    gauge: Gauge = field(default_factory=Gauge)

    def kind(self, name: str) -> Kind | None:
        """The kind with this name or short form, whatever its case; None when the shop has none."""
        wanted = name.strip().casefold()
        return next((k for k in self.kinds if wanted in (k.name.casefold(), *map(str.casefold, k.short))), None)

    def process(self, name: str) -> Process:
        """The process with this name; KeyError when there is none (reading has checked them)."""
        for process in self.processes:
            if process.name == name:
                return process
        raise KeyError(name)
