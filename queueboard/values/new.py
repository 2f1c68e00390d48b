"""What is typed before it is stored: a box coming in, its knives, a promise, a label, a payment."""

from datetime import date, time

from queueboard.priced_words import ChargeSort, Finding, MoneySort
from queueboard.slotted import dataclass
from queueboard.words import (
    CameBy,
    Condition,
    Edge,
    GoesBy,
    LabelOwner,
    LabelState,
    PayWay,
    PromiseKind,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NewKnife:
    """A knife as typed at receiving."""

    kind: str
    edge: Edge
    condition: Condition = Condition.DULL
    length_mm: int | None = None
    mark: str = ""
    wish: str = ""
    price_cents: int | None = None
    """None takes the price of its kind."""
    chips: int | None = None
    """How many chips, 1 to 99."""
    chip_um: int | None = None
    """Depth of the deepest chip in micrometres, 1 to 50,000."""
    tip_um: int | None = None
    """What is missing of the tip, in micrometres, 1 to 200,000."""
    findings: tuple[Finding, ...] = ()
    """The words of the inspection."""
    apart: bool = False
    """True for a knife beyond what the customer's note says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPromise:
    """A date told to the customer."""

    kind: PromiseKind
    day: date
    at: time | None = None
    """Needed for a promise by a time, refused for the others."""
    told_to: str = ""
    reason: str = ""
    """Why it differs from the one before; needed for a second promise."""
    reckoned: str = ""
    """The sum that stands beside the date now: open minutes, this box, what is to spare."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewLabel:
    """A return label as typed."""

    owner: LabelOwner
    state: LabelState
    carrier: str = ""
    expires_on: date | None = None
    name_on: str = ""
    address_on: str = ""
    limit_g: int | None = None
    """1 to 200,000 grams."""
    value_cents: int | None = None
    price_cents: int | None = None
    note_name: str = ""
    """As the customer's note has it."""
    note_address: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPayment:
    """Money taken, as typed."""

    cents: int
    """At least 1."""
    way: PayWay
    paid_before_cents: int
    """What had been paid for the box when this was typed; refused when other money has come in since."""
    sort: MoneySort = MoneySort.PAYMENT


@dataclass(frozen=True, slots=True, kw_only=True)
class NewCharge:
    """What is charged beside the price of a knife, as typed or as the price list says."""

    sort: ChargeSort
    cents: int = 0
    """At least 0, also for a discount; 0 for a share."""
    ppm: int | None = None
    """A share of the work in millionths; for a rush or a discount in percent."""
    text: str = ""
    tax_ppm: int | None = None
    """None takes the shop's rate for its sort."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewCustomer:
    """A customer as typed; all but the name may stay empty."""

    name: str
    phone: str = ""
    town: str = ""
    address: str = ""
    notes: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewBox:
    """A box as typed at receiving."""

    customer_id: int | None = None
    """Whose it is. Either this or new_customer is given, never both."""
    new_customer: NewCustomer | None = None
    """Somebody who is not known yet, stored together with the box."""
    came_by: CameBy
    goes_by: GoesBy
    counted: int
    """1 to 999; 0 only for a box that is not opened."""
    knives: tuple[NewKnife, ...]
    things: tuple[str, ...] = ()
    note_says: int | None = None
    number: int | None = None
    """None takes the next free number."""
    carrier_days: int = 0
    """0 to 60."""
    promise: NewPromise | None = None
    label: NewLabel | None = None
    opened: bool = True
    rush: bool = False
    note: str = ""
    free: bool = False
    """True for a box that nothing is charged for as a whole: no minimum, no way back."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unseen:
    """What is known of the inside of a box that is only announced, or not opened."""

    knives: int | None
    """1 to 999; None when nobody said."""
    comes_on: date | None
    """None when nobody said; such a box is asked about as if it came today."""
    here: bool = False
    """True when it is in the door."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewAnnounced:
    """A box that somebody says will come by mail, as typed."""

    customer_id: int | None = None
    """Whose it is. Either this or new_customer is given, never both."""
    new_customer: NewCustomer | None = None
    expected_knives: int | None = None
    """1 to 999; None when nobody said."""
    expected_on: date | None = None
    """Today or later; None when nobody knows."""
    goes_by: GoesBy = GoesBy.PARCEL
    number: int | None = None
    """None takes the next free number, which may be told to the customer to write on it."""
    carrier_days: int = 0
    """0 to 60."""
    promise: NewPromise | None = None
    label: NewLabel | None = None
    rush: bool = False
    note: str = ""
