"""What a parcel weighs, stored from the scale."""

from queueboard.errors import RuleError, TypedError
from queueboard.records.tables import BoxRow
from queueboard.records.writing import Writing
from queueboard.settings.parcel_shapes import LONGEST_SIDE_MM, SHORTEST_SIDE_MM
from queueboard.shop import rows
from queueboard.shop.label_fields import checked_weight
from queueboard.shop.operation import operation
from queueboard.values.box import Box
from queueboard.words import GoesBy


@operation()
def weigh_parcel(writing: Writing, box: Box, packed_g: int | None, parcel_mm: tuple[int, ...] = ()) -> None:
    """Store what the packed parcel weighs on the scale and its length, width and height; None and () take it back."""
    if box.goes_by is not GoesBy.PARCEL:
        raise RuleError(f"Box {box.number} is picked up; no parcel of it is weighed. Correct how it goes back first.")
    rows.only_opened(box)
    if packed_g is not None:
        checked_weight(packed_g)
    if parcel_mm and not (len(parcel_mm) == 3 and all(_is_side(side) for side in parcel_mm)):
        told = " x ".join(f"{side}" for side in parcel_mm)
        raise TypedError(
            f"A parcel of {told} mm has no size; three sides of {SHORTEST_SIDE_MM} to {LONGEST_SIDE_MM} mm."
        )
    size = "x".join(f"{side}" for side in parcel_mm)
    parts = ("" if packed_g is None else f"{packed_g} g", size and f"{size} mm")
    writing.tell(number=box.number, to=", ".join(part for part in parts if part))
    rows.fresh_box(writing, box)
    writing.change(BoxRow, box.id, box.version, packed_g=packed_g, parcel_mm=size)


def _is_side(side: int) -> bool:
    return SHORTEST_SIDE_MM <= side <= LONGEST_SIDE_MM
