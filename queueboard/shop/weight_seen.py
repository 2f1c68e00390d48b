"""What a parcel weighs, asked of a picture."""

from collections.abc import Collection

from queueboard.parcels.weighing import weigh
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture
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
