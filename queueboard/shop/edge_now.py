"""One edge as it stands at the test: its spots and readings, the line it is held against, and what they say."""

from queueboard.edges.verdict import Judged, Line, judge
from queueboard.records.database import ShopDatabase
from queueboard.records.edge_tests import edge_of
from queueboard.settings.rules import knife_process, line_of
from queueboard.shop.gauging import usual_spots
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.shop.wobbling import WobbleNow, wobble_in
from queueboard.slotted import dataclass
from queueboard.values.edge import KnifeEdge, Spot
from queueboard.values.knife import Knife


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeNow:
    """What the test of a knife rests on."""

    knife: Knife
    edge: KnifeEdge
    spots: tuple[Spot, ...]
    """The marked spots; while none is marked those that the first reading will mark, each with an id below 0."""
    line: Line | None
    """None for what is tested by cutting the real material."""
    judged: Judged | None
    """What is read after the work says; None while nothing is."""
    whole: bool
    """True when every spot is read after the work."""
    wobble: WobbleNow
    belts: tuple[str, ...]
    """The belts of its process, in their order."""


def edge_now(shop: Shop, knife: Knife) -> EdgeNow:
    """The edge of a knife as it stands."""
    with shop.reading() as database:
        return edge_in(database, knife)


def edge_in(database: ShopDatabase, knife: Knife) -> EdgeNow:
    """As edge_now, inside an operation."""
    settings, wobble = settings_in(database), wobble_in(database)
    edge, most_gf = edge_of(database, knife.id), line_of(settings, knife)
    line = None if most_gf is None else Line(most_gf=most_gf, most_apart_gf=settings.gauge.most_apart_gf)
    found = edge.finished_gf()
    usual = (
        Spot(id=-place, name=spot.name, from_heel_mm=spot.from_heel_mm, tooth=None)
        for place, spot in enumerate(usual_spots(knife), 1)
    )
    return EdgeNow(
        knife=knife,
        edge=edge,
        spots=edge.spots or tuple(usual),
        line=line,
        judged=None if line is None else judge(found, line, wobble.gf),
        whole=bool(found) and all(found.values()),
        wobble=wobble,
        belts=tuple(step.label for step in knife_process(settings, knife).belts),
    )
