"""What a parcel weighs: asked of a picture, and stored from the scale."""

from collections.abc import Collection

from queueboard.errors import RuleError, TypedError
from queueboard.parcels.weighing import weigh
from queueboard.records.tables import BoxRow
from queueboard.records.writing import Writing
from queueboard.settings.parcel_shapes import LONGEST_SIDE_MM, SHORTEST_SIDE_MM
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.label_fields import checked_weight
from queueboard.shop.operation import operation
from queueboard.shop.picture import BoxPicture
from queueboard.values.box import Box
from queueboard.values.parcel import ParcelWeight
from queueboard.words import GoesBy, LabelState, ThingState


def parcel_weight(box: BoxPicture, settings: Settings, going: Collection[int] | None = None) -> ParcelWeight | None:
    """What the parcel of a box weighs with all that is on hand, or with the knives *going* (by id) alone.

    None for what is picked up, and for a box that nobody has opened. Knives that are looked for are in no parcel.
    """
    if box.box.goes_by is not GoesBy.PARCEL or not box.box.opened:
        return None
    knives = [k for k in box.on_hand if not k.looking_for and (going is None or k.id in going)]
    return weigh(
        settings.parcels,
        tuple((knife.kind, knife.length_mm) for knife in knives),
        sum(thing.state is ThingState.HERE for thing in box.things),
        scale_g=box.box.packed_g,
        size_mm=box.box.parcel_mm,
        limit_g=None if box.label is None or box.label.state is LabelState.USED else box.label.limit_g,
    )


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
