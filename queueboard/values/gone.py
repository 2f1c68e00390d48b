"""What has left, as the summary tells it."""

from datetime import datetime

from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife, Thing
from queueboard.values.totals import Totals
from queueboard.words import Settling


@dataclass(frozen=True, slots=True, kw_only=True)
class GoneBox:
    """A box, or the part of it, that was just closed out."""

    box: Box
    customer: Customer
    knives: tuple[Knife, ...]
    """The knives that left."""
    things: tuple[Thing, ...]
    """What it came with and left with."""
    missing: tuple[Knife, ...]
    """Knives now looked for."""
    missing_things: tuple[Thing, ...]
    missing_reason: str
    staying: tuple[Knife, ...]
    """Knives that were not ready and stay on the board."""
    totals: Totals
    """What it comes to without what is missing."""
    settled: Settling
    settled_why: str
    handed_to: str
    at: datetime
    by: str
    closed: bool
    """True when nothing of the box is left in the shop."""
