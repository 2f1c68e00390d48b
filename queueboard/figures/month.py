"""The figures of a month, from what was done, told, tested, timed and paid in it."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from queueboard.figures.evening import Placed
from queueboard.money.bill import Bill, totals
from queueboard.slotted import dataclass
from queueboard.values.box import Payment
from queueboard.values.customer import Customer
from queueboard.values.measured import ToldSeen
from queueboard.words import Column, PayWay


@dataclass(frozen=True, slots=True, order=True)
class Month:
    """A month of the calendar."""

    first: date
    """Its first day."""

    @property
    def end(self) -> date:
        """The first day of the next one."""
        return (self.first + timedelta(days=31)).replace(day=1)

    @property
    def before(self) -> "Month":
        """The month before."""
        return month_of(self.first - timedelta(days=1))

    @property
    def after(self) -> "Month":
        """The next month."""
        return Month(self.end)

    @property
    def days(self) -> tuple[date, ...]:
        """All its days."""
        return tuple(self.first + timedelta(days=n) for n in range((self.end - self.first).days))


def month_of(day: date) -> Month:
    """The month that a day lies in."""
    return Month(day.replace(day=1))


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedRun:
    """A run that was timed and is believed."""

    hands_on_seconds: int
    """By the clock, without set-up and pauses; at least 0."""
    knives: tuple[tuple[str, int], ...]
    """Of each knife its kind and its seconds by the shop's own list."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Debt:
    """What a customer owes."""

    customer: Customer
    cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthSeen:
    """All that happened in a month, as the file has it."""

    month: Month
    ready: tuple[Placed, ...]
    """Each knife when it came to ready for the first time, in the shop's zone."""
    closed: tuple[Bill, ...]
    """The bills of the boxes of which the last was handed over."""
    told: tuple[ToldSeen, ...]
    """The dates told whose cut-off lies in the month and is over."""
    tested: tuple[tuple[int, bool], ...]
    """Each knife that was tested: its id, and True when every test of it was OK."""
    call_backs: int
    declined: int
    runs: tuple[TimedRun, ...]
    payments: tuple[tuple[Payment, Customer], ...]
    debts: tuple[Debt, ...]
    """What is owed at the month's end, or now, for what has left; one entry a box."""
    belts: tuple[tuple[str, int], ...]
    """New belts by process; worn ones that were moved to finer duty are none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """How many of the dates told were kept."""

    told: int
    kept: int


@dataclass(frozen=True, slots=True, kw_only=True)
class KindFigures:
    """One kind of knife."""

    kind: str
    knives: int
    """That came to ready."""
    timed: int
    """Knives in timed runs."""
    measured_seconds: float
    """Hands-on seconds of those by the clock, all together."""
    listed_seconds: int
    """The same by the shop's own list."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WaySum:
    """The money of one way."""

    way: PayWay
    in_cents: int
    back_cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthFigures:
    """What a month came to."""

    month: Month
    kinds: tuple[KindFigures, ...]
    """The kind with most knives first."""
    a_day: tuple[tuple[date, int], ...]
    """For each day the knives that came to ready."""
    boxes: int
    """Boxes of which the last was handed over."""
    box_knives: int
    """Knives that those gave back."""
    box_cents: int
    """What those came to."""
    first_told: Kept
    """By the date that was told first."""
    last_told: Kept
    """By the date that was told last."""
    tested: int
    not_ok: int
    """Knives of which a test was not OK."""
    call_backs: int
    declined: int
    ways: tuple[WaySum, ...]
    owed_cents: int
    best: Debt | None
    """Who paid most in the month."""
    worst: Debt | None
    """Who owes most at its end."""
    belts: tuple[tuple[str, int], ...]
    """New belts by process."""

    @property
    def belts_fitted(self) -> int:
        """All new belts."""
        return sum(count for _, count in self.belts)

    @property
    def knives(self) -> int:
        """All that came to ready."""
        return sum(kind.knives for kind in self.kinds)

    @property
    def in_cents(self) -> int:
        """All that came in, less what went back."""
        return sum(way.in_cents - way.back_cents for way in self.ways)


def month_figures(seen: MonthSeen) -> MonthFigures:
    """Work a month out."""
    days = Counter(placed.at.date() for placed in seen.ready)
    owed, paid = _by_customer(seen.debts), _by_customer(Debt(customer=c, cents=p.in_cents) for p, c in seen.payments)
    return MonthFigures(
        month=seen.month,
        kinds=_kinds(seen),
        a_day=tuple((day, days[day]) for day in seen.month.days),
        boxes=len(seen.closed),
        box_knives=sum(knife.column is Column.GONE for bill in seen.closed for knife in bill.knives),
        box_cents=sum(totals(bill).total_cents for bill in seen.closed),
        first_told=_kept(one for one in seen.told if one.first),
        last_told=_kept(one for one in seen.told if not one.replaced),
        tested=len(seen.tested),
        not_ok=sum(not ok for _, ok in seen.tested),
        call_backs=seen.call_backs,
        declined=seen.declined,
        ways=_ways([payment for payment, _ in seen.payments]),
        owed_cents=sum(debt.cents for debt in seen.debts),
        best=_most(paid),
        worst=_most(owed),
        belts=seen.belts,
    )


def _kinds(seen: MonthSeen) -> tuple[KindFigures, ...]:
    ready = Counter(placed.knife.kind for placed in seen.ready)
    timed: Counter[str] = Counter()
    listed: Counter[str] = Counter()
    measured: defaultdict[str, float] = defaultdict(float)
    for run in seen.runs:
        whole = sum(seconds for _, seconds in run.knives)
        for kind, seconds in run.knives:
            share = seconds / whole if whole else 1 / len(run.knives)
            timed[kind] += 1
            listed[kind] += seconds
            measured[kind] += run.hands_on_seconds * share
    figures = (
        KindFigures(
            kind=kind,
            knives=ready[kind],
            timed=timed[kind],
            measured_seconds=measured[kind],
            listed_seconds=listed[kind],
        )
        for kind in {**ready, **timed}
    )
    return tuple(sorted(figures, key=lambda one: (-one.knives, one.kind)))


def _kept(told: Iterable[ToldSeen]) -> Kept:
    judged = tuple(told)
    return Kept(told=len(judged), kept=sum(one.kept for one in judged))


def _ways(payments: Sequence[Payment]) -> tuple[WaySum, ...]:
    return tuple(
        WaySum(
            way=way,
            in_cents=sum(max(0, one.in_cents) for one in payments if one.way is way),
            back_cents=sum(max(0, -one.in_cents) for one in payments if one.way is way),
        )
        for way in PayWay
    )


def _by_customer(debts: Iterable[Debt]) -> dict[Customer, int]:
    sums: dict[Customer, int] = {}
    for debt in debts:
        sums[debt.customer] = sums.get(debt.customer, 0) + debt.cents
    return sums


def _most(sums: dict[Customer, int]) -> Debt | None:
    """The customer with most; of two with the same the one known longer; None where nobody has anything."""
    found = max(sums.items(), key=lambda one: (one[1], -one[0].id), default=None)
    return None if found is None or found[1] <= 0 else Debt(customer=found[0], cents=found[1])
