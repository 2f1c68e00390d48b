"""What was told to customers, boxes that came back, and boxes that are gone."""

from datetime import datetime

from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife
from queueboard.words import Column, GoesBy, Settling


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """What a customer was told of a box, by a person's own means."""

    id: int
    box_id: int
    sort: MessageSort
    way: NoticeWay
    text: str
    """As it was shown when it was noted; empty once the customer was erased."""
    told_at: datetime
    told_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CallBack:
    """A box that came back, linked to the one that had gone."""

    id: int
    box_id: int
    old_box_id: int
    old_number: int
    free: bool
    """True where nothing is charged for the work again."""
    days: int
    """Calendar days from the day the old box left to the day it came back."""
    why: str
    knives: tuple[tuple[int, int], ...] = ()
    """Ids of the knives whose old one is known, each with the id it had."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewCallBack:
    """A call-back as typed."""

    old_box_id: int
    old_knife_ids: tuple[int, ...]
    """The knives that came back, as they had gone; at least one."""
    why: str
    """What the customer says of the edge."""
    free: bool | None = None
    """Whether the work is done again for nothing; None lets the shop's own days say, and is refused beyond them."""
    goes_by: GoesBy = GoesBy.PICK_UP
    carrier_days: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class GoneSeen:
    """A box that is gone, as one asks for it on the phone."""

    box: Box
    customer: Customer
    knives: tuple[Knife, ...]
    """All its knives."""
    left_at: datetime
    """When the last of it left, in the shop's zone."""
    handed_to: str
    """Who fetched it; empty for a parcel."""
    carrier: str
    """Who carried it, where that was typed; empty for a pick-up."""
    settled: Settling | None
    """How the money stood when it left; None for a box that left through no close-out."""
    owed_cents: int

    @property
    def left(self) -> tuple[Knife, ...]:
        """The knives that left."""
        return tuple(knife for knife in self.knives if knife.column is Column.GONE)
