"""Where a kitchen's set is by its last round and its box on the board, and when the next round is."""

from collections import Counter
from collections.abc import Iterable, Mapping
from datetime import date, timedelta

from queueboard.intake.swap_sets import KindOfSet, where_it_is
from queueboard.records.database import ShopDatabase
from queueboard.records.swaps import missing_knives, rounds_of, sets_of
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.values.swap import SwapSet
from queueboard.words import Column


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a set is, as a whole."""

    with_kitchen: bool
    """True when the last that is known of it is that it was brought there."""
    box: Box | None
    """The box that it came back as the last time, open or gone; None before its first time."""
    is_new: bool
    """True before its first round: clean and here."""


def place_of_set(database: ShopDatabase, one: SwapSet) -> Place:
    """Where a set is by the newest round that names it."""
    named = [x for x in rounds_of(database, one.customer_id) if one.id in (x.sharp_set_id, x.dull_set_id)]
    boxes = [x.box_id for x in named if x.dull_set_id == one.id and x.box_id is not None]
    return Place(
        with_kitchen=bool(named) and named[-1].sharp_set_id == one.id,
        box=rows.box_now(database, boxes[-1]) if boxes else None,
        is_new=not named,
    )


def kinds_of_set(database: ShopDatabase, one: SwapSet, place: Place) -> tuple[KindOfSet, ...]:
    """Each kind of a set with its knives by where they are.

    With the kitchen is what was brought: all but what is missing. Here it is the knives of its box by their column; a
    knife of a box that is looked for is nowhere.
    """
    missing = Counter(x.kind for x in missing_knives(database, "m.set_id = ? AND m.found_us IS NULL", one.id))
    known = {kind: max(0, count - missing[kind]) for kind, count in one.whole.items()}
    if place.with_kitchen or place.box is None:
        here, there = ({}, known) if place.with_kitchen else (known, {})
        return where_it_is(one.whole, with_kitchen=there, dull_here={}, clean_here=here)
    knives = rows.knives_of_box(database, place.box.id)
    gone = _up_to(one.whole, (k for k in knives if k.column is Column.GONE))
    left = {kind: count - gone.get(kind, 0) for kind, count in one.whole.items()}
    clean = _up_to(left, (k for k in knives if _is_here(k) and k.column is Column.READY))
    rest = {kind: count - clean.get(kind, 0) for kind, count in left.items()}
    dull = _up_to(rest, (k for k in knives if _is_here(k) and k.column is not Column.READY))
    return where_it_is(one.whole, with_kitchen=gone, dull_here=dull, clean_here=clean)


def _is_here(knife: Knife) -> bool:
    return knife.on_hand and not knife.looking_for


def _up_to(most: Mapping[str, int], knives: Iterable[Knife]) -> dict[str, int]:
    """How many of each kind; a knife whose kind was corrected on the board since is none of the set's."""
    counted = Counter(knife.kind for knife in knives)
    return {kind: min(count, counted[kind]) for kind, count in most.items() if counted[kind]}


def next_round(database: ShopDatabase, customer_id: int, settings: Settings) -> date | None:
    """The day on which a kitchen is visited next; None before its first round."""
    rounds, sets = rounds_of(database, customer_id), sets_of(database, "s.customer_id = ?", customer_id)
    if not rounds:
        return None
    every = min(one.every_days for one in sets)
    return rounds[-1].noted_at.astimezone(settings.zone).date() + timedelta(days=every)
