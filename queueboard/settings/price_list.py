"""What the shop asks beside the flat price of a kind; a shop that says nothing asks nothing more."""

from collections.abc import Mapping
from dataclasses import field
from decimal import Decimal

from queueboard.priced_words import ChargeSort
from queueboard.slotted import dataclass
from queueboard.words import Edge, Rounding, Taxed


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthPrice:
    """A price by the length of the edge: so much to begin with, and so much for each unit."""

    base_cents: int
    each_cents: int
    """For each cm or inch, as the shop measures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShippingBand:
    """What the way back costs up to a number of knives."""

    knives: int
    """The most it holds for, 1 to 999."""
    cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """The shop's price list beside the flat prices of its kinds."""

    rounding: Rounding = Rounding.HALF_UP
    by_length: Mapping[str, LengthPrice] = field(default_factory=dict)
    """By the name of a kind; it takes the place of the kind's flat price where the length is known."""
    length_step: Decimal = Decimal(1)
    """Lengths count up to the next multiple of this, in the shop's unit."""
    edge_percent: Mapping[Edge, int] = field(default_factory=dict)
    """What an edge costs that its kind does not usually have, in percent of the price: 150 is half as much again."""
    chip_mm_cents: int = 0
    """For each millimetre of the deepest chip."""
    add_on_cents: Mapping[ChargeSort, int] = field(default_factory=dict)
    """Flat, for tip, rust, thinning, bolster, straightening and handle."""
    rush_percent: int = 0
    """On top of the work."""
    minimum_cents: int = 0
    """What the work of a box comes to at least."""
    mail_minimum_cents: int | None = None
    """The same for a box that came by mail; None takes minimum_cents."""
    shipping: tuple[ShippingBand, ...] = ()
    """By rising number of knives; beyond the last band it is typed by hand."""
    free_shipping_cents: int | None = None
    """From this work on the way back is free; None never."""
    tax_ppm: Mapping[Taxed, int] = field(default_factory=dict)
    """What is put on top, in millionths; nothing unless typed."""
    hold_after_days: int = 0
    """An account that is open longer is on hold; 0 never."""
