"""The shapes of what the shop knows of parcels: when they leave, what they weigh, what carriers ask for."""

from collections.abc import Mapping
from dataclasses import field
from datetime import date, time
from decimal import Decimal
from enum import StrEnum

from queueboard.slotted import dataclass

HEAVIEST_G = 200_000
"""The heaviest that a parcel can be, in grams."""

SHORTEST_SIDE_MM, LONGEST_SIDE_MM = 10, 2000
"""Of a parcel."""


class SideRounding(StrEnum):
    """What becomes of each side of a parcel before its volume is taken."""

    HALF_UP = "half up"
    UP = "up"
    AS_MEASURED = "as measured"


class WeightRounding(StrEnum):
    """What becomes of the weight that a volume stands for, in whole pounds or kilograms."""

    UP_TO_WHOLE = "up to whole"
    UP_TO_HALF = "up to half"
    NEAREST = "nearest"
    AS_IT_IS = "as it is"


@dataclass(frozen=True, slots=True, kw_only=True)
class Volume:
    """How a carrier turns the size of a parcel into a weight."""

    divisor: Decimal
    """Cubic inches for a pound where unit is in, cubic centimetres for a kilogram where it is cm."""
    unit: str
    """in or cm."""
    sides: SideRounding = SideRounding.HALF_UP
    weight: WeightRounding = WeightRounding.UP_TO_WHOLE


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxSize:
    """A box that the shop packs in."""

    knives: int
    """The most that go into it."""
    size_mm: tuple[int, int, int]
    """Outside: length, width and height."""
    weight_g: int
    """The empty box with what it is filled with."""
    label_cents: int | None = None
    """What a label bought by the shop usually costs for it; None where nobody has written it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What goes into the sum of a packed parcel, in grams; a shop that says nothing has what stands here."""

    guard_and_wrap_g: int = 25
    """For each knife. [from memory: 15 to 30]"""
    thing_g: int = 150
    """For each thing that came with the box: a sheath, a roll. [from memory]"""
    other_g: int = 180
    """A knife of a kind without a weight of its own. [from memory]"""
    handle_mm: int = 130
    """What a handle adds to the length of the edge. [from memory]"""
    kinds: Mapping[str, int] = field(default_factory=dict)
    """By the name of a kind, what one of it weighs."""

    def knife_g(self, kind: str) -> int:
        """What a knife of this kind weighs."""
        return self.kinds.get(kind, self.other_g)


@dataclass(frozen=True, slots=True, kw_only=True)
class LastShip:
    """A row of a carrier's table for busy weeks: what shall be there by a day leaves by another."""

    ship_on: date
    arrives_by: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Carrier:
    """What the shop has typed of one carrier; what it left out is as in [parcels]."""

    name: str
    carrier_days: int | None = None
    """Its working days on the way."""
    collection_weekdays: frozenset[int] | None = None
    cut_off: time | None = None
    last_ship: tuple[LastShip, ...] = ()
    """By the day of leaving."""
    last_checked: date | None = None
    """When somebody of the shop last read what the carrier says; None for never."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Parcels:
    """When parcels leave, what they weigh, and what their carriers ask for."""

    carrier_days: int
    """The carrier's working days, offered for a new box."""
    collection_weekdays: frozenset[int]
    """Weekdays on which the carrier collects, Monday 0."""
    cut_off: time
    """By when a box must be wrapped and labelled for that day's collection."""
    last_ship: tuple[LastShip, ...] = ()
    """For carriers without a table of their own, by the day of leaving."""
    last_checked: date | None = None
    """When somebody last read the carriers' rules, for knives too; None for never."""
    volume: Volume | None = None
    """None where size counts for nothing."""
    boxes: tuple[BoxSize, ...] = ()
    """The smallest first."""
    weights: Weights = Weights()
    carriers: tuple[Carrier, ...] = ()

    def carrier(self, name: str) -> Carrier | None:
        """The carrier with this name, whatever its case; None where the shop has written nothing of it."""
        wanted = name.strip().casefold()
        return next((one for one in self.carriers if one.name.casefold() == wanted), None)
