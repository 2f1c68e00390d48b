"""What a packed parcel weighs: by its parts, by the scale, and by its size."""

from decimal import Decimal

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class PackedSum:
    """The weight of a parcel by its parts, in grams."""

    knives_g: int
    wrap_g: int
    """Guards and wrapping."""
    things_g: int
    box_g: int
    """The box or boxes with what fills them."""
    boxes: int
    """How many boxes; 0 where none of the shop's is long enough, or it has written none."""

    @property
    def all_g(self) -> int:
        """All of it."""
        return self.knives_g + self.wrap_g + self.things_g + self.box_g


@dataclass(frozen=True, slots=True, kw_only=True)
class BySize:
    """What the size of a parcel counts as."""

    sides: tuple[Decimal, Decimal, Decimal]
    """Rounded as the shop says, in unit."""
    unit: str
    """in or cm."""
    billed: Decimal
    """Pounds where unit is in, kilograms where it is cm; rounded as the shop says."""
    grams: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ParcelWeight:
    """Everything known of the weight of one parcel."""

    sum: PackedSum
    scale_g: int | None
    """From the scale, which wins over the sum."""
    size_mm: tuple[int, ...]
    """As typed, else that of the box it should go into; empty where neither is known."""
    measured: bool
    """True when the size was typed."""
    by_size: BySize | None
    limit_g: int | None
    """Of its label; None where none is typed."""
    label_cents: int | None
    """What a label bought by the shop usually costs for it; None where nobody has written it, or in several boxes."""

    @property
    def weight_g(self) -> int:
        """What it weighs, by the scale or by the sum."""
        return self.sum.all_g if self.scale_g is None else self.scale_g

    @property
    def billable_g(self) -> int:
        """What counts: its weight, or what its size counts as where that is more."""
        return self.weight_g if self.by_size is None else max(self.weight_g, self.by_size.grams)

    @property
    def size_counts(self) -> bool:
        """True when its size counts for more than its weight."""
        return self.billable_g > self.weight_g

    @property
    def over_g(self) -> int:
        """How much it is above the limit of its label; 0 where it is not."""
        return 0 if self.limit_g is None else max(0, self.billable_g - self.limit_g)
