"""What was written down at a market stall, a line for each customer."""

from queueboard.slotted import dataclass
from queueboard.values.new import NewKnife
from queueboard.words import PayWay


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketLine:
    """One customer of the stall, as typed in from its paper."""

    tag: int | None
    """The printed tag; None where none was given out, or it was torn: the box gets another number."""
    knives: tuple[NewKnife, ...]
    """As many as were counted; those that come back at the next market stand last."""
    name: str
    """Empty where only a tag was typed to add to its line."""
    phone: str = ""
    paid_cents: int | None = 0
    """What was paid at the stall; None for what the list says, whatever that comes to."""
    way: PayWay = PayWay.CASH
    stays: int = 0
    """So many of the knives were taken along, and are brought to the next market."""

    @property
    def gone(self) -> int:
        """How many were given back at the stall."""
        return len(self.knives) - self.stays


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketBox:
    """A line, and whose it is."""

    line: MarketLine
    customer_id: int | None = None
    """A customer who is known already; None for somebody new."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketTaken:
    """What came of it when the lines were taken in."""

    numbers: tuple[int, ...]
    """The number of each box, in the order of the lines."""
    knives: int
    cents: int
    """What was paid."""
