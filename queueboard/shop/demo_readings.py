"""Invented readings of the demo's knives: dull before, sharp after, and worse once the belt is at its end.

The finest belt makes no difference to them, so that the demo's trial mostly says so.
"""

from datetime import date, datetime, timedelta
from random import Random

from queueboard.records.reading import knives_of
from queueboard.settings.rules import line_of
from queueboard.shop.gauging import SERRATED, edge, mark_spots, read_spot, usual_spots
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_of
from queueboard.shop.testing import judge_edge
from queueboard.values.actor import Actor
from queueboard.values.edge import NewSpot
from queueboard.values.knife import Knife
from queueboard.words import Column, Condition, Stage

BEFORE_GF = {Condition.TIRED: (380, 60)}
"""What a knife needs as it comes in, and how far that strays; any but a tired one is duller."""
DULL_GF, SHARP_GF = (900, 180), 165
BELT_TIRES = timedelta(days=4)
"""Before today: from then on the demo's finest belt is worn, and everything needs more push."""
TIRED_GF = 45


def read_dull(shop: Shop, by: str, at: datetime, knife: Knife) -> None:
    """Read a knife for which the gauge is asked, before it is worked."""
    lots = Random(f"dull {knife.tag}")  # noqa: S311 invented readings, no secret
    level, strays = BEFORE_GF.get(knife.condition, DULL_GF)
    _mark_teeth(shop, Actor(initials=by, now=at), knife)
    for spot in usual_spots(knife):
        force = max(250, round(lots.gauss(level, strays)))
        read_spot(shop, Actor(initials=by, now=at), knife, spot.name, force, Stage.BEFORE)


def test_by_gauge(shop: Shop, by: str, at: datetime, knife: Knife, today: date) -> None:
    """Read a knife after its work and judge it; one that is over its line is worked and read once more."""
    lots = Random(f"sharp {knife.tag}")  # noqa: S311 invented readings, no secret
    with shop.reading() as database:
        line_gf = line_of(settings_of(database)[1], knife)
    level = SHARP_GF + (TIRED_GF if at.date() > today - BELT_TIRES else 0)
    move_knives(shop, Actor(initials=by, now=at), [knife], Column.TESTING)
    forces = [max(90, round(lots.gauss(level, 22))) for _ in usual_spots(knife)]
    if lots.random() < 0.06:
        forces[-1] += 120
    _read(shop, by, at, knife, forces)
    ok = line_gf is None or max(forces) <= line_gf
    judge_edge(shop, Actor(initials=by, now=at), _now(shop, knife), ok=ok)
    if not ok:
        again = at + timedelta(seconds=20)
        _read(shop, by, again, knife, [SHARP_GF - 10] * len(forces))
        judge_edge(shop, Actor(initials=by, now=again), _now(shop, knife), ok=True)


def _read(shop: Shop, by: str, at: datetime, knife: Knife, forces: list[int]) -> None:
    _mark_teeth(shop, Actor(initials=by, now=at), _now(shop, knife))
    for spot, force in zip(usual_spots(knife), forces, strict=True):
        read_spot(shop, Actor(initials=by, now=at), _now(shop, knife), spot.name, force)


def _mark_teeth(shop: Shop, actor: Actor, knife: Knife) -> None:
    """Say at which teeth an edge with teeth is read, once."""
    if knife.edge in SERRATED and not edge(shop, knife).spots:
        teeth = zip(usual_spots(knife), (3, 14, 26), strict=True)
        mark_spots(shop, actor, knife, [NewSpot(name=spot.name, tooth=tooth) for spot, tooth in teeth])


def _now(shop: Shop, knife: Knife) -> Knife:
    with shop.reading() as database:
        return knives_of(database, "k.id = ?", knife.id)[0]
