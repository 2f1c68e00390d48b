"""What a parcel weighs: the sum of its parts, and what its size counts as."""

from collections.abc import Sequence
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

from queueboard.settings.parcel_shapes import (
    BoxSize,
    Parcels,
    SideRounding,
    Volume,
    WeightRounding,
    Weights,
)
from queueboard.values.parcel import BySize, PackedSum, ParcelWeight
from queueboard.values.units import GRAMS_PER_POUND, MM_PER_CM, MM_PER_INCH

GRAMS_PER_KG = Decimal(1000)
_TENTH, _HALF, _ONE = Decimal("0.1"), Decimal("0.5"), Decimal(1)

Packed = Sequence[tuple[str, int | None]]
"""What goes into a parcel: of each knife its kind and the length of its edge in millimetres, where it is known."""


def weigh(
    parcels: Parcels,
    knives: Packed,
    things: int,
    *,
    scale_g: int | None = None,
    size_mm: tuple[int, ...] = (),
    limit_g: int | None = None,
) -> ParcelWeight:
    """All about the weight of a parcel with these knives and so many things.

    scale_g wins over the sum; size_mm (length, width, height) over the size of the box that it should go into. What
    goes into several boxes has no size of its own until one is typed.
    """
    boxes = boxes_for(parcels, knives)
    size = size_mm or (boxes[0].size_mm if len(boxes) == 1 else ())
    return ParcelWeight(
        sum=packed_sum(parcels.weights, knives, things, boxes),
        scale_g=scale_g,
        size_mm=size,
        measured=bool(size_mm),
        by_size=None if parcels.volume is None or not size else by_size(parcels.volume, size),
        limit_g=limit_g,
        label_cents=boxes[0].label_cents if len(boxes) == 1 else None,
    )


def packed_sum(weights: Weights, knives: Packed, things: int, boxes: Sequence[BoxSize]) -> PackedSum:
    """The weight of the parts: each knife by its kind, with guard and wrapping; the things; the boxes."""
    return PackedSum(
        knives_g=sum(weights.knife_g(kind) for kind, _ in knives),
        wrap_g=weights.guard_and_wrap_g * len(knives),
        things_g=weights.thing_g * things,
        box_g=sum(box.weight_g for box in boxes),
        boxes=len(boxes),
    )


def boxes_for(parcels: Parcels, knives: Packed) -> tuple[BoxSize, ...]:
    """The smallest box that holds so many knives and is long enough; as many of the largest as they need, and the rest.

    Long enough is the longest edge with its handle, straight; empty where no box is, or the shop has written none.
    """
    longest = max((length for _, length in knives if length is not None), default=0)
    needed_mm = longest + parcels.weights.handle_mm if longest else 0
    fitting = [box for box in parcels.boxes if max(box.size_mm) >= needed_mm]
    if not fitting:
        return ()
    full, rest = divmod(len(knives), fitting[-1].knives)
    last = next((box for box in fitting if box.knives >= rest), fitting[-1])
    return (fitting[-1],) * full + ((last,) if rest or not full else ())


def by_size(volume: Volume, size_mm: Sequence[int]) -> BySize:
    """What a size counts as: length by width by height, over the divisor.

    Sides are stored in whole millimetres and typed in tenths at most, so that they are taken to tenths first: 14 inches
    are 356 mm and 14.0 inches again. Then each side is rounded, then the weight.
    """
    mm = MM_PER_INCH if volume.unit == "in" else MM_PER_CM
    length, width, height = (_side(Decimal(side) / mm, volume.sides) for side in size_mm)
    exact = length * width * height / volume.divisor
    billed = _weight(exact, volume.weight)
    grams = billed * (GRAMS_PER_POUND if volume.unit == "in" else GRAMS_PER_KG)
    return BySize(
        sides=(length, width, height),
        unit=volume.unit,
        billed=billed,
        grams=int(grams.quantize(_ONE, rounding=ROUND_HALF_UP)),
    )


def _side(exact: Decimal, how: SideRounding) -> Decimal:
    tenths = exact.quantize(_TENTH, rounding=ROUND_HALF_UP)
    if how is SideRounding.AS_MEASURED:
        return tenths
    return tenths.quantize(_ONE, rounding=ROUND_CEILING if how is SideRounding.UP else ROUND_HALF_UP)


def _weight(exact: Decimal, how: WeightRounding) -> Decimal:
    if how is WeightRounding.AS_IT_IS:
        return exact
    if how is WeightRounding.NEAREST:
        return max(_ONE, exact.quantize(_ONE, rounding=ROUND_HALF_UP))
    step = _HALF if how is WeightRounding.UP_TO_HALF else _ONE
    return (exact / step).quantize(_ONE, rounding=ROUND_CEILING) * step
