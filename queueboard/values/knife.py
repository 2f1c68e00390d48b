"""One knife, and one thing that came with it."""

from datetime import datetime

from queueboard.priced_words import Finding
from queueboard.slotted import dataclass
from queueboard.words import Column, Condition, DeclineReason, Edge, ThingState, WaitingFor, WhyRead


@dataclass(frozen=True, slots=True, kw_only=True)
class Knife:
    """One piece with its tag."""

    id: int
    version: int
    """Rises with each change; an operation is refused when the stored one has moved on."""
    box_id: int
    box_number: int
    number: int
    """The second half of the tag: 3 in 417-3."""
    kind: str
    edge: Edge
    length_mm: int | None
    """Edge length, heel to tip; None where it was not measured."""
    condition: Condition
    column: Column
    mark: str = ""
    """What tells it apart: black handle, nick."""
    wish: str = ""
    note: str = ""
    rework: int = 0
    """How many times it came back from a test to the bench."""
    declined: DeclineReason | None = None
    waiting_for: WaitingFor | None = None
    waiting_since: datetime | None = None
    price_cents: int = 0
    looking_for: bool = False
    """True while nobody knows where it is."""
    moved_at: datetime
    """When it last came to where it stands."""
    moved_by: str
    """Initials of who put it there."""
    gauge: WhyRead | None = None
    """Why it is to be read with the gauge; None for the test by feel alone, and before it comes to the bench."""
    chips: int | None = None
    """How many chips the inspection counted, 1 to 99."""
    chip_um: int | None = None
    """Depth of the deepest chip in micrometres, 1 to 50,000."""
    tip_um: int | None = None
    """What is missing of the tip, in micrometres, 1 to 200,000."""
    findings: tuple[Finding, ...] = ()
    """The words of the inspection, in the order of the list."""
    apart: bool = False
    """True for a knife beyond what the customer's note says, priced apart until the customer has said yes."""
    agreed: bool = False
    """True for a knife beyond the note to which the customer has said yes."""
    added_at: datetime | None = None
    """When it was added later; None when it came with the box."""
    tax_ppm: int = 0
    """The tax on its price in millionths, as quoted: 7.25 % is 72,500."""

    @property
    def tag(self) -> str:
        """The tag on the handle: 417-3."""
        return f"{self.box_number}-{self.number}"

    @property
    def on_hand(self) -> bool:
        """True while the shop has to give it back."""
        return self.column is not Column.GONE

    @property
    def at_work(self) -> bool:
        """True while it is on the bench or at the test."""
        return self.column in (Column.ON_BENCH, Column.TESTING)

    @property
    def stops_at_test(self) -> bool:
        """True while a move to ready leads only as far as the test, since the gauge is asked for it."""
        return self.gauge is not None and self.at_work

    @property
    def charged_cents(self) -> int:
        """What it adds to the bill: nothing while it is free."""
        return 0 if self.free else self.price_cents

    @property
    def free(self) -> bool:
        """True when nothing is charged: declined, nobody can find it, or priced apart until the customer says yes."""
        return self.declined is not None or self.looking_for or self.apart

    @property
    def can_leave(self) -> bool:
        """True when it may go back now: found, ready (declined knives stand in ready), and not held apart."""
        return self.column is Column.READY and not self.looking_for and not self.apart

    @property
    def bench_is_done(self) -> bool:
        """True when it was worked and has left the bench forward; a declined one has not."""
        return self.column in (Column.TESTING, Column.READY, Column.GONE) and self.declined is None


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """Something that came with the box and must go back: sheath, roll, towel, block."""

    id: int
    version: int
    box_id: int
    name: str
    state: ThingState
