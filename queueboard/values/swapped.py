"""Sets that kitchens swap, and market days: as they stand."""

from dataclasses import dataclass
from datetime import date, datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class SetKind:
    """The knives of one kind in a set; each is in exactly one place."""

    id: int
    kind: str
    owned: int
    kitchen: int
    dull: int
    """Here, and not worked yet."""
    clean: int
    """Here, and ready."""
    missing: int

    @property
    def complete(self) -> bool:
        """True when all are clean and here."""
        return self.clean == self.owned


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapSet:
    """A set by kind."""

    id: int
    name: str
    kinds: tuple[SetKind, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """Knives of a kind that did not come back."""

    id: int
    kind_id: int
    set_name: str
    kind: str
    knives: int
    since: datetime
    charged: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """A visit at a kitchen."""

    brought_id: int | None
    taken_id: int | None
    box_number: int | None
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedTags:
    """Tags printed for a market day, first and last included."""

    id: int
    market_on: date
    first: int
    last: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketEntry:
    """A box by the tag that was given out for it."""

    tag: int
    number: int
    """Of the box; another than the tag where that was given out twice."""
    knives: int
    name: str
    open: bool
    due: date | None
