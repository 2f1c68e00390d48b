"""The shapes of the shop's own numbers. Every figure here is the shop's; none is a constant in code."""

from collections.abc import Mapping
from dataclasses import field
from datetime import date, time
from zoneinfo import ZoneInfo

from queueboard.settings.market_shape import Market
from queueboard.settings.parcel_shapes import Parcels
from queueboard.settings.price_list import Prices
from queueboard.settings.shelf_shape import Shelf
from queueboard.settings.swaps_shape import Swaps
from queueboard.slotted import dataclass
from queueboard.words import Condition, Edge, PaperSize, PlanOrder

MOST_CENTS = 9_999_999
"""The largest amount anywhere, a price or a payment: 99999.99."""

Span = tuple[time, time]
"""From and to on the wall clock of the shop, to after from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Belt:
    """One belt step: the text on its back, and its grit in micrometres."""

    label: str
    grit_um: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BeltKind:
    """What the shop knows of the belts with one text on their back."""

    label: str
    life_knives: int
    """Knives that it usually does."""
    cost_cents: int
    """Of one belt."""
    reorder_at: int
    """With so many spares, or fewer, others are ordered."""

    @property
    def knife_cents(self) -> float:
        """What it costs for each knife, in cents."""
        return self.cost_cents / self.life_knives


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
    """When the gauge is asked for, and what an edge is held against; a shop that says nothing has what stands here."""

    every: int = 10
    """Every so many knives of a kind one is read, 0 to 999; 0 none."""
    fresh_belt: bool = True
    """True when the first knife on a fresh belt is read."""
    proof_card: bool = True
    """True when every knife of a customer who gets proof cards is read."""
    complaint: bool = True
    """True when every knife of a box that came back with a complaint is read."""
    always: frozenset[str] = frozenset()
    """Names of kinds that are always read."""
    by_cutting: frozenset[str] = frozenset()
    """Names of kinds that are tested by cutting the real material, and never read."""
    wobble_gf: int = 15
    """What the tester wobbles until a study has shown it, 1 to 200 grams-force: a standard deviation."""
    most_apart_gf: int = 100
    """From this difference between the spots on an edge is looked at again, in grams-force."""
    lines: Mapping[str, int] = field(default_factory=dict)
    """By the name of a kind, the most push any spot of it may need, in grams-force."""
    edges: Mapping[Edge, int] = field(
        default_factory=lambda: {
            Edge.PLAIN: 250,
            Edge.SERRATED: 400,
            Edge.SCALLOPED: 400,
            Edge.SINGLE_RIGHT: 250,
            Edge.SINGLE_LEFT: 250,
        }
    )
    """The same by edge, for kinds without a line and for knives whose edge is not the usual one of their kind."""

    def line_gf(self, kind: Kind, edge: Edge) -> int | None:
        """The most push that any spot may need, in grams-force; None for what is tested by cutting."""
        if kind.name in self.by_cutting:
            return None
        return self.lines.get(kind.name, self.edges[edge]) if edge is kind.edge else self.edges[edge]


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeping:
    """How the shop's data are kept."""

    second_folder: str = ""
    """A folder on another disk, such as a stick, that also takes the copy of the day; empty for none."""
    erase_after_days: int = 730
    """So many days after a customer's last box has gone all that is known of them may be erased, 0 to 4000."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """How a day is closed."""

    second_look_minutes: int = 20
    """So many minutes after the dust tray was emptied it is looked at again, 5 to 240."""
    change_cents: int = 0
    """What lies in the till in the morning, for change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """When somebody of the shop last looked its numbers through, part by part."""

    after_days: int = 365
    """A part that was checked longer ago is old, 1 to 4000. [a choice, no source]"""
    on: Mapping[str, date] = field(default_factory=dict)
    """By part; one that is missing was never checked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Papers:
    """What papers are printed on, and what the shop puts on them."""

    size: PaperSize = PaperSize.A4
    """The sheet for packing slip, proof card and day sheet: A4 or letter."""
    slips: PaperSize = PaperSize.A4
    """What tags and stub are printed on; sheets are cut apart."""
    phone: str = ""
    """The shop's own phone on the customer's stub; empty for none."""


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
    gauge: Gauge = Gauge()
    belt_kinds: tuple[BeltKind, ...] = ()
    prices: Prices = field(default_factory=Prices)
    keeping: Keeping = Keeping()
    shelf: Shelf = field(default_factory=Shelf)
    evening: Evening = Evening()
    checked: Checked = field(default_factory=Checked)
    papers: Papers = Papers()
    swaps: Swaps = field(default_factory=Swaps)
    market: Market = field(default_factory=Market)
    asked: dict[str, Kind | None] = field(default_factory=dict, init=False, compare=False, repr=False)
    """What kind() has said so far: it is asked of every knife, and there are few names."""

    def belt_kind(self, label: str) -> BeltKind | None:
        """What is known of belts with this label, whatever its case; None where the shop has written nothing."""
        wanted = label.strip().casefold()
        return next((kind for kind in self.belt_kinds if kind.label.casefold() == wanted), None)

    def kind(self, name: str) -> Kind | None:
        """The kind with this name or short form, whatever its case; None when the shop has none."""
        if name not in self.asked:
            wanted = name.strip().casefold()
            self.asked[name] = next(
                (k for k in self.kinds if wanted in (k.name.casefold(), *map(str.casefold, k.short))), None
            )
        return self.asked[name]

    def process(self, name: str) -> Process:
        """The process with this name; KeyError when there is none (reading has checked them)."""
        for process in self.processes:
            if process.name == name:
                return process
        raise KeyError(name)
