"""A kitchen's swap sets as they are stored."""

from collections.abc import Mapping
from datetime import date, datetime

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapSet:
    """A set of knives that goes round between a kitchen and the shop."""

    id: int
    version: int
    customer_id: int
    name: str
    every_days: int
    """The kitchen is visited so often, 1 to 60."""
    whole: Mapping[str, int]
    """How many of each kind it has when it is whole, each at least 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapRound:
    """One visit to a kitchen."""

    id: int
    sharp_set_id: int | None
    """The set that was brought; None where none was."""
    dull_set_id: int | None
    """The set that was taken along; None where none was."""
    box_id: int | None
    """What the dull set is on the board; None exactly where none was taken along."""
    noted_at: datetime
    noted_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MissingKnife:
    """A knife that was not in a set that came back."""

    id: int
    version: int
    set_id: int
    kind: str
    missed_at: datetime
    found_at: datetime | None
    """When it was there again; None while it is missing."""
    charged_cents: int | None
    """What it was charged with; None while it was not, or no more."""
    charge_id: int | None
    charged_box_id: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SetCheck:
    """How a set stood when it was looked through for its next round."""

    set_id: int
    for_day: date
    missing: int
    not_clean: int
    """Knives that were here and not ready yet."""
    checked_at: datetime
    checked_by: str

    @property
    def complete(self) -> bool:
        """True when every knife was here and clean."""
        return self.missing == 0 and self.not_clean == 0


@dataclass(frozen=True, slots=True, kw_only=True)
class NewRound:
    """A visit as typed."""

    sharp_set_id: int | None
    dull_set_id: int | None
    dull: str = ""
    """What came back, as knives are typed at receiving: `4 chef, 3 paring, 1 bread tip`."""
