"""What else can be done where a return label dies, or cannot be used in time."""

from enum import StrEnum

from queueboard.slotted import dataclass


class OfferKind(StrEnum):
    """What can be done instead."""

    ALL_TODAY = "all of it today"
    PART_TODAY = "part today"
    ASK_NEW = "ask for a new label"
    SHOP_LABEL = "shop label"


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelOffer:
    """One way out."""

    kind: OfferKind
    ready: int = 0
    """Of what can go today: knives that are ready,"""
    here: int = 0
    """of so many on hand."""
    cents: int | None = None
    """What a label of the shop's usually costs for this parcel; None where nobody has written it."""
