"""Where a missing knife was last, and what lay beside it then."""

from queueboard.records.instants import to_us
from queueboard.records.whereabouts import at_work_beside
from queueboard.shop.opening import Shop
from queueboard.values.knife import Knife


def beside(shop: Shop, knife: Knife) -> tuple[Knife, ...]:
    """The knives of its kind in other open boxes that were at work when it was last moved: it may lie in their tray."""
    with shop.reading() as database:
        return at_work_beside(database, knife, to_us(knife.moved_at))
