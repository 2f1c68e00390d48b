"""What the proof card of a box rests on: each knife before and after at its spots, and what was done to it."""

from collections.abc import Sequence
from dataclasses import replace

from queueboard.edges.change import Change, change
from queueboard.edges.summary import mean
from queueboard.edges.trial import Half
from queueboard.records.database import ShopDatabase
from queueboard.records.edge_tests import edge_of, struck_of
from queueboard.records.reading import BOX, box_of, customer_by_id, knives_of, things_of
from queueboard.records.shelf import call_backs_of
from queueboard.records.trials import drawn_knives
from queueboard.settings.rules import knife_process
from queueboard.settings.shapes import Settings
from queueboard.shop.opening import Shop
from queueboard.shop.rows import box_now
from queueboard.shop.settings_now import settings_in
from queueboard.shop.wobbling import wobble_in
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.edge import KnifeEdge, Spot, StruckReading
from queueboard.values.knife import Knife, Thing
from queueboard.values.shelf import CallBack
from queueboard.words import Column, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSpot:
    """One spot of a knife."""

    spot: Spot
    before_gf: int | None
    """The newest before the work; None when it was not read."""
    after_gf: int | None
    """After the work, the higher where it was read twice; None when it was not read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CameBack:
    """What a knife that came back was when it had left."""

    old_number: int
    """The number of the box it left in."""
    old_tag: str
    """Its tag then; empty where it is not known which knife of that box it was."""
    days: int
    """Calendar days between."""
    free: bool
    """True where the work was done again for nothing."""
    spots: tuple[CardSpot, ...]
    """What was read of it then, heel first; empty when nothing was."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardKnife:
    """One knife of the card."""

    knife: Knife
    edge: KnifeEdge
    spots: tuple[CardSpot, ...]
    """Heel first; empty when nothing was ever read."""
    belts: tuple[str, ...]
    """The belts it was worked on; empty for one that was declined or is not worked yet."""
    struck: tuple[StruckReading, ...]
    """What was read wrong, with the reason."""
    back: CameBack | None = None
    """Of a box that came back, what it was before; else None."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """The proof card of a box."""

    settings: Settings
    box: Box
    customer: Customer
    knives: tuple[CardKnife, ...]
    change: Change | None
    """Of the knives read both times, one pair a knife; None for fewer than six."""
    things: tuple[Thing, ...] = ()
    """What it came with."""


def card_of(shop: Shop, number: int) -> Card | None:
    """The card of the newest box with this number, open or gone; None when there was none."""
    with shop.reading() as database:
        found = database.rows(f"{BOX} WHERE number = ? ORDER BY id DESC LIMIT 1", (number,))
        return _card_of(database, box_of(found[0])) if found else None


def card_of_box(shop: Shop, box_id: int) -> Card:
    """The card of one box, whatever boxes had its number since."""
    with shop.reading() as database:
        return _card_of(database, box_now(database, box_id))


def _card_of(database: ShopDatabase, box: Box) -> Card:
    settings = settings_in(database)
    customer = customer_by_id(database, box.customer_id)
    if customer is None:
        raise KeyError(box.customer_id)  # a box of a merged customer was given to the other one
    linked = next(iter(call_backs_of(database, "c.box_id = ?", box.id)), None)
    knives = tuple(
        replace(_card(database, knife, settings), back=_came_back(database, knife, linked))
        for knife in knives_of(database, "k.box_id = ?", box.id)
    )
    pairs = [pair for one in knives if (pair := _pair(one.spots)) is not None]
    together = change(pairs, wobble_in(database).gf)
    return Card(
        settings=settings,
        box=box,
        customer=customer,
        knives=knives,
        change=together,
        things=things_of(database, "box_id = ?", box.id),
    )


def _came_back(database: ShopDatabase, knife: Knife, linked: CallBack | None) -> CameBack | None:
    """The knife as it had left; of one that nobody could tell, only in which box."""
    if linked is None:
        return None
    old_id = dict(linked.knives).get(knife.id)
    old = None if old_id is None else next(iter(knives_of(database, "k.id = ?", old_id)))
    edge = None if old is None else edge_of(database, old.id)
    return CameBack(
        old_number=linked.old_number,
        old_tag="" if old is None else old.tag,
        days=linked.days,
        free=linked.free,
        spots=() if edge is None else tuple(_spot(edge, spot) for spot in edge.spots),
    )


def _card(database: ShopDatabase, knife: Knife, settings: Settings) -> CardKnife:
    edge = edge_of(database, knife.id)
    return CardKnife(
        knife=knife,
        edge=edge,
        spots=tuple(_spot(edge, spot) for spot in edge.spots),
        belts=_belts(database, knife, settings),
        struck=struck_of(database, knife.id),
    )


def _spot(edge: KnifeEdge, spot: Spot) -> CardSpot:
    before = [one.force_gf for one in edge.at(spot, Stage.BEFORE)]
    after = edge.finished_gf()[spot.name]
    return CardSpot(spot=spot, before_gf=before[-1] if before else None, after_gf=max(after, default=None))


def _belts(database: ShopDatabase, knife: Knife, settings: Settings) -> tuple[str, ...]:
    """Those of its process, but for one that a trial left out."""
    if knife.declined is not None or knife.column not in (Column.TESTING, Column.READY, Column.GONE):
        return ()
    drawn = drawn_knives(database, "k.knife_id = ?", knife.id)
    left_out = {one.belt for one in drawn if one.half is Half.WITHOUT}
    return tuple(step.label for step in knife_process(settings, knife).belts if step.label not in left_out)


def _pair(spots: Sequence[CardSpot]) -> tuple[float, float] | None:
    """The mean of the spots before and after; None unless every one of them was read both times."""
    both = [(one.before_gf, one.after_gf) for one in spots if one.before_gf is not None and one.after_gf is not None]
    return (mean([b for b, _ in both]), mean([a for _, a in both])) if both and len(both) == len(spots) else None
