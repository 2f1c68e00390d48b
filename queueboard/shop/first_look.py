"""What the plan says at a day's first look, kept, and all that was said and told, held against what came."""

from datetime import datetime

from queueboard.records import asking
from queueboard.shop.opening import Shop
from queueboard.shop.picture import Picture
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.actor import Actor
from queueboard.values.measured import SaidTenth


def first_look_due(shop: Shop, now: datetime) -> bool:
    """True while nothing was said of the day that *now* (aware) belongs to; asking takes no picture."""
    with shop.reading() as database:
        return not asking.boxes_said(database, now.astimezone(settings_in(database).zone).date())


def say_first_look(shop: Shop, actor: Actor, picture: Picture) -> None:
    """Keep the chance of being late of each box that is still to be ready, once a day."""
    from queueboard.shop.saying import is_said, say_chances

    said = tuple(
        (box.box.id, box.ship_by, box.forecast.late_permille)
        for box in picture.boxes
        if box.ship_by is not None and box.ship_by > picture.now and box.forecast.late_permille is not None
    )
    if said and not is_said(shop, picture.now.date()):
        say_chances(shop, actor, picture.now.date(), said)


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What was said of boxes and told to customers in the last year, where it is over."""

    tenths: tuple[SaidTenth, ...]
    told: int
    """Dates told to customers."""
    kept: int
    replaced: int
    """Of those told, how many a later date took the place of."""


def judged(shop: Shop, now: datetime) -> Judged:
    """The last year by now (aware)."""
    from queueboard.shop.saying import in_tenths, said_versus_seen, told_versus_seen

    told = told_versus_seen(shop, now)
    return Judged(
        tenths=in_tenths(said_versus_seen(shop, now)),
        told=len(told),
        kept=sum(one.kept for one in told),
        replaced=sum(one.replaced for one in told),
    )
