"""The frozen picture that every screen, paper and command shows; no reading or writing here."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime
from typing import TYPE_CHECKING

from queueboard.intake.adding_up import BoxSum, add_up
from queueboard.money.bill import Bill, totals
from queueboard.records.trials import DrawnKnife
from queueboard.settings.shapes import Settings
from queueboard.shop.bench_work import Minutes
from queueboard.slotted import dataclass
from queueboard.values.box import Box, Charge, CloseCheck, CloseOut, Payment, Promise, ReturnLabel, put_off
from queueboard.values.customer import Customer
from queueboard.values.found import FoundKnife, MovedKnife, Off
from queueboard.values.knife import Knife, Thing
from queueboard.values.label import LabelDue
from queueboard.values.measured import BenchRun
from queueboard.values.plan import BoxForecast, Plan
from queueboard.values.shelf import CallBack
from queueboard.values.totals import Totals
from queueboard.words import Column

if TYPE_CHECKING:
    from queueboard.planning.ledger import Ledger

NOTHING_OFF = Off()


def lost_only(knives: Iterable[Knife], forecast: BoxForecast) -> bool:
    """True when a knife of a box is looked for and the bench has nothing left to do: no day stands till it is found."""
    return not forecast.minutes_left and any(knife.on_hand and knife.looking_for for knife in knives)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxPicture:
    """One open box with everything known about it."""

    box: Box
    customer: Customer
    knives: tuple[Knife, ...]
    """By tag, gone and declined ones included."""
    things: tuple[Thing, ...]
    promises: tuple[Promise, ...]
    """Oldest first; the last one holds."""
    label: ReturnLabel | None
    """The label still to be used, or the last one used."""
    payments: tuple[Payment, ...]
    ship_by: datetime | None
    """Cut-off in the shop's zone: ship-by for a parcel, ready-by for a pick-up."""
    forecast: BoxForecast
    label_due: LabelDue | None
    honest_day: date | None = None
    """Where the promise will not hold: the first day that the day list itself would bear, with nothing kept free."""
    close_out: CloseOut | None = None
    close_check: CloseCheck | None = None
    moves: tuple[MovedKnife, ...] = ()
    """Every move of the knives that ever were in this box, oldest first."""
    off: Off = NOTHING_OFF
    """How many of its knives were taken off it again."""
    look_alikes: tuple[int, ...] = ()
    """Ids of this box's knives with a twin (same kind and length) in another open box."""
    charges: tuple[Charge, ...] = ()
    """What is charged beside the prices of its knives, oldest first."""
    call_back: CallBack | None = None
    """The box it was before it came back; None for one that did not."""

    @property
    def on_hand(self) -> tuple[Knife, ...]:
        """The knives the shop has to give back."""
        return tuple(knife for knife in self.knives if knife.on_hand)

    def in_column(self, column: Column) -> tuple[Knife, ...]:
        """The knives that stand in one column."""
        return tuple(knife for knife in self.knives if knife.column is column)

    @property
    def ready_count(self) -> int:
        """Knives that can leave; declined ones count, looked-for ones do not."""
        return sum(1 for k in self.on_hand if k.can_leave)

    @property
    def lost(self) -> tuple[Knife, ...]:
        """The knives still to be given back that nobody can find just now."""
        return tuple(knife for knife in self.on_hand if knife.looking_for)

    @property
    def only_lost_left(self) -> bool:
        """As lost_only says."""
        return lost_only(self.knives, self.forecast)

    @property
    def promise(self) -> Promise | None:
        """The promise that holds."""
        return self.promises[-1] if self.promises else None

    @property
    def put_off(self) -> bool:
        """True when its customer has been told a later day already: not again without asking."""
        return put_off(self.promises)

    @property
    def bill(self) -> Bill:
        """What it is charged for, and what was paid."""
        return Bill(knives=self.knives, charges=self.charges, payments=self.payments, rounding=self.box.rounding)

    @property
    def totals(self) -> Totals:
        """What it comes to."""
        return totals(self.bill)

    @property
    def price_cents(self) -> int:
        """What it comes to in all, with add-ons, shipping and tax; what is free is not in it."""
        return self.totals.total_cents

    @property
    def apart(self) -> tuple[Knife, ...]:
        """The knives beyond the note, held and priced apart until the customer says yes."""
        return tuple(knife for knife in self.on_hand if knife.apart)

    @property
    def agreed(self) -> tuple[Knife, ...]:
        """The knives beyond the note to which the customer has said yes."""
        return tuple(knife for knife in self.knives if knife.agreed)

    @property
    def before_the_yes(self) -> Totals:
        """What it came to without the knives to which the customer has said yes."""
        return totals(self.bill.without({knife.id for knife in self.agreed}))

    @property
    def sum(self) -> BoxSum:
        """Where its knives are: what came in, and what became of it."""
        return add_up(self.box, self.knives, self.moves, self.off)

    @property
    def paid_cents(self) -> int:
        """All money taken for this box, less what was given back."""
        return sum(payment.in_cents for payment in self.payments)

    @property
    def owed_cents(self) -> int:
        """What it comes to, less payments; negative when too much was paid."""
        return self.totals.owed_cents

    @property
    def above_limit(self) -> bool:
        """True when it comes to more than the customer has agreed to."""
        return self.box.not_above_cents is not None and self.price_cents > self.box.not_above_cents

    @property
    def without_missing(self) -> "BoxPicture":
        """The box as the close-out under way would leave it: without the knives that it misses."""
        missing = () if self.close_check is None else self.close_check.missing
        return replace(self, knives=tuple(knife for knife in self.knives if knife.id not in missing))

    @property
    def waiting(self) -> tuple[Knife, ...]:
        """Knives that wait for an answer."""
        return tuple(knife for knife in self.on_hand if knife.waiting_for is not None)


@dataclass(frozen=True, slots=True, kw_only=True)
class DayLine:
    """The line on top of the board."""

    bench_minutes_left: int
    work_minutes_today: int
    leaves_today: int
    """Boxes whose ship-by is today and that are still here."""
    labels_due: int
    late: int
    will_be_late: int
    tight: int
    waiting: int
    """Boxes that wait, or hold a knife that waits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """The whole shop at one instant."""

    now: datetime
    """Aware, in the shop's zone."""
    settings: Settings
    boxes: tuple[BoxPicture, ...]
    """Open boxes, by ship-by, then by number; boxes without a promise last."""
    plan: Plan
    day_line: DayLine
    labels_due: tuple[LabelDue, ...]
    """Worst first."""
    last_line: int
    """Id of the newest history line; it rises with every action."""
    saved_at: datetime | None
    """When the newest line was stored, in the shop's zone."""
    backup_at: datetime | None = None
    """When the newest verified copy was made."""
    minutes: Minutes
    """What the shop has learned of its own minutes."""
    ledger: "Ledger | None" = None
    """What the plan can be asked; None for a shop without bench time."""
    runs: tuple[BenchRun, ...] = ()
    """The runs under way, oldest first."""
    halves: tuple[DrawnKnife, ...] = ()
    """The knives drawn for the belt trials that go on."""
    found: tuple[FoundKnife, ...] = ()
    """The found knives that nobody has settled, oldest first."""
    closed_days: tuple[tuple[date, str], ...] = ()
    order_fixed: bool = False
    """True once today's day list has been given a fixed order."""
    plan_follows: bool = False
    """True while plan, ledger and forecasts are those of the picture before, until the plan has been worked out."""

    def box(self, number: int) -> BoxPicture | None:
        """The open box with this number, or None."""
        return next((b for b in self.boxes if b.box.number == number), None)

    def box_by_id(self, box_id: int) -> BoxPicture:
        """The open box with this id; KeyError when it is not on the board."""
        for candidate in self.boxes:
            if candidate.box.id == box_id:
                return candidate
        raise KeyError(box_id)

    def half_of(self, knife: Knife) -> DrawnKnife | None:
        """The half of a belt trial that a knife is in; None for one that is in none."""
        return next((one for one in self.halves if one.knife_id == knife.id), None)

    def knife(self, tag: str) -> Knife | None:
        """The knife with this tag on the board, or None."""
        return next((k for b in self.boxes for k in b.knives if k.tag == tag), None)
