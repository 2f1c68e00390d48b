"""A box: what one customer handed over at one time; its promises, label, payments and close-out."""

from collections.abc import Sequence
from datetime import date, datetime, time
from itertools import pairwise

from queueboard.priced_words import ChargeSort, MoneySort
from queueboard.slotted import dataclass
from queueboard.words import (
    CameBy,
    CloseStep,
    GoesBy,
    LabelOwner,
    LabelState,
    Packing,
    PayWay,
    PromiseKind,
    Rounding,
    Settling,
    WaitingFor,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Promise:
    """The date told to the customer. A later date is a second promise, never a change of the first."""

    id: int
    box_id: int
    kind: PromiseKind
    day: date
    at: time | None = None
    """Time of day, for a promise by a time."""
    told_to: str = ""
    told_at: datetime
    told_by: str
    reason: str = ""
    reckoned: str = ""
    """The sum that stood beside the date when it was told; empty where none was worked out."""


def put_off(promises: Sequence[Promise]) -> bool:
    """True when a later day was told in place of an earlier one, in promises oldest first."""
    return any(later.day > earlier.day for earlier, later in pairwise(promises))


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnLabel:
    """The return label of a box, with what was typed from the label itself."""

    id: int
    version: int
    box_id: int
    owner: LabelOwner
    state: LabelState
    carrier: str = ""
    expires_on: date | None = None
    """Last day on which the carrier takes it; typed, never computed."""
    name_on: str = ""
    """The name printed on the label, where typed."""
    address_on: str = ""
    """The address printed on the label, where typed."""
    limit_g: int | None = None
    """The most that the parcel may weigh with it, 1 to 200,000 grams."""
    value_cents: int | None = None
    """What the parcel is insured for."""
    price_cents: int | None = None
    """What the shop paid for it; None for the customer's own."""
    note_name: str = ""
    """The name that the customer's note gives for the way back, where typed."""
    note_address: str = ""
    """The address that the customer's note gives for the way back, where typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Payment:
    """Money taken for a box."""

    id: int
    box_id: int
    cents: int
    way: PayWay
    at: datetime
    by: str
    sort: MoneySort = MoneySort.PAYMENT

    @property
    def in_cents(self) -> int:
        """What it adds to what is paid: less than nothing for a refund."""
        return -self.cents if self.sort is MoneySort.REFUND else self.cents


@dataclass(frozen=True, slots=True, kw_only=True)
class Charge:
    """What is charged beside the price of a knife, as it was quoted."""

    id: int
    version: int
    box_id: int
    knife_id: int | None = None
    """The knife whose add-on it is; None for what concerns the whole box."""
    sort: ChargeSort
    text: str
    cents: int
    """At least 0, also for a discount; of a minimum what the work comes to at least; 0 for a share."""
    ppm: int | None = None
    """A share of the work in millionths, for a rush or a discount in percent: 10 % is 100,000."""
    tax_ppm: int = 0
    """The tax on it in millionths, as quoted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """The box itself, without its knives."""

    id: int
    version: int
    number: int
    customer_id: int
    came_by: CameBy
    goes_by: GoesBy
    counted: int
    """Knives counted by hand before the note was read."""
    note_says: int | None = None
    """The number on the customer's note, where there was one."""
    received_at: datetime
    opened: bool = True
    packing: Packing | None = None
    carrier_days: int = 0
    """The carrier's working days; 0 for a pick-up."""
    rush: bool = False
    this_next: bool = False
    never_slip: bool = False
    waiting_for: WaitingFor | None = None
    waiting_since: datetime | None = None
    complaint: bool = False
    """True when it came back since an edge was not as it should be."""
    note: str = ""
    closed_at: datetime | None = None
    announced_at: datetime | None = None
    """When it was announced, as long as it is not in the door; received_at tells the same until it is."""
    expected_on: date | None = None
    """The day on which it was said to come."""
    expected_knives: int | None = None
    """The knives that it was said to hold, 1 to 999."""
    not_above_cents: int | None = None
    """The most that the customer has agreed to; above it the customer is asked first."""
    packed_g: int | None = None
    """What the packed parcel weighs, from the scale."""
    parcel_mm: tuple[int, ...] = ()
    """Length, width and height of the parcel in millimetres; empty until typed."""
    rounding: Rounding = Rounding.HALF_UP
    """The shop's rule for parts of a cent when it came in."""
    place: str = ""
    """Where it stands in the shop, such as C4; empty until typed."""

    @property
    def announced(self) -> bool:
        """True while it is announced and not in the door: nothing of it is on hand."""
        return self.announced_at is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseOut:
    """One close-out under way; each field is stored the moment it is known, so a power cut loses nothing."""

    id: int
    version: int
    box_id: int
    started_at: datetime
    counted: int | None = None
    """Knives counted blind; None until typed."""
    ticking: bool = False
    """True once tags are ticked one by one (the count did not agree, or the person prefers it)."""
    ticked: frozenset[int] = frozenset()
    """Ids of the knives in hand."""
    ticked_things: frozenset[int] = frozenset()
    """Ids of the things (sheath, roll) in hand."""
    ticks_done: bool = False
    things_done: bool = False
    missing_reason: str = ""
    names_ok: bool = False
    label_ok: bool = False
    handed_to: str = ""
    """Who collected it, for a pick-up."""
    settled: Settling | None = None
    settled_why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseCheck:
    """Where a close-out stands: the step to show, and what that step may show."""

    step: CloseStep
    going: tuple[int, ...] = ()
    """Ids of the knives that would leave. Empty before the count."""
    missing: tuple[int, ...] = ()
    """Ids of the knives that should be in hand and are not."""
    staying: tuple[int, ...] = ()
    """Ids of the knives that are not ready and stay on the board."""
    missing_things: tuple[int, ...] = ()
    trouble: str = ""
    """A sentence, where the step cannot go on as it stands."""
