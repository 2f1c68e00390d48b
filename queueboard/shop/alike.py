"""Knives that could be taken for each other: those of other boxes that look like one that is just typed."""

from queueboard.shop.picture import Picture
from queueboard.values.knife import Knife
from queueboard.values.new import NewKnife


def looks_like(picture: Picture, knife: NewKnife, *, in_box: int | None = None) -> tuple[Knife, ...]:
    """The knives on hand in other boxes with its kind and measured length, unless its mark tells it apart from them.

    in_box: the id of the box it is typed for, where that has one already.
    """
    if knife.length_mm is None:
        return ()
    twins = tuple(
        other
        for box in picture.boxes
        if box.box.id != in_box
        for other in box.on_hand
        if (other.kind, other.length_mm) == (knife.kind, knife.length_mm)
    )
    mark = knife.mark.strip().casefold()
    if mark and all(mark != twin.mark.strip().casefold() for twin in twins):
        return ()
    return twins
