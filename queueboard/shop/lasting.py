"""How the edge lasted: what a knife was read at when it left, against what it was read at when it came back.

A knife that comes again is known by its customer, kind, edge, length and mark; without a mark of its own, or where two
of a box look alike, nothing is said of it.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from math import sqrt
from statistics import median

from queueboard.edges.change import FEWEST_PAIRS, Change, change
from queueboard.edges.halves import Difference, difference
from queueboard.edges.summary import mean
from queueboard.edges.trial import Half
from queueboard.records.database import ShopDatabase
from queueboard.records.edge_reads import ReadKnife, received
from queueboard.records.trials import drawn_knives
from queueboard.shop.wobbling import WobbleNow
from queueboard.slotted import dataclass

DAY_US = 86_400_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class LastedRow:
    """Some knives that came back."""

    name: str
    knives: int
    days: float
    """The middle time from the reading when it left to the day it came in again; 0 for no knives."""
    change: Change | None
    """Its fall is how much more push they need now, in grams-force; None for fewer than six."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LastedSeen:
    """All knives that came back, and those of each belt trial by half."""

    whole: LastedRow
    halves: tuple[tuple[LastedRow, LastedRow, Difference | None], ...]
    """For each trial of which knives came back: with the belt, without, and with less without from six each on."""
    wobble: WobbleNow


@dataclass(frozen=True, slots=True)
class _Again:
    """A knife that left and came back."""

    knife_id: int
    """As it left."""
    left_gf: float
    back_gf: float
    days: float

    @property
    def pair(self) -> tuple[float, float]:
        """What it needs now and needed then."""
        return self.back_gf, self.left_gf


def lasted_of(database: ShopDatabase, read: Sequence[ReadKnife], wobble: WobbleNow) -> LastedSeen:
    """How the edges lasted, by what was read of all knives."""
    boxes, drawn = received(database), drawn_knives(database)
    again = list(_again(read, boxes))
    by_half: defaultdict[tuple[int, str], dict[Half, set[int]]] = defaultdict(lambda: {half: set() for half in Half})
    for one in drawn:
        by_half[one.trial_id, one.belt][one.half].add(one.knife_id)
    halves = []
    for (_, belt), ids in sorted(by_half.items(), reverse=True):
        own = {half: [one for one in again if one.knife_id in ids[half]] for half in Half}
        if any(own.values()):
            rows = [_row(f"{half.name.lower()} {belt}", own[half], wobble.gf) for half in Half]
            rises = [[one.back_gf - one.left_gf for one in own[half]] for half in Half]
            enough = min(map(len, rises)) >= FEWEST_PAIRS
            apart = difference(rises[0], rises[1], sqrt(2) * wobble.gf) if enough else None
            halves.append((rows[0], rows[1], apart))
    return LastedSeen(whole=_row("all knives", again, wobble.gf), halves=tuple(halves), wobble=wobble)


def _row(name: str, again: Sequence[_Again], wobble_gf: float) -> LastedRow:
    return LastedRow(
        name=name,
        knives=len(again),
        days=median([one.days for one in again]) if again else 0.0,
        change=change([one.pair for one in again], wobble_gf),
    )


def _again(read: Sequence[ReadKnife], boxes: Mapping[int, tuple[int, int]]) -> Iterator[_Again]:
    """Each knife from one visit to the next at which it was read, by the spots read both times."""
    visits: defaultdict[tuple[object, ...], list[ReadKnife]] = defaultdict(list)
    looks = Counter((one.knife.box_id, _looks(one)) for one in read)
    for one in read:
        if one.knife.mark and looks[one.knife.box_id, _looks(one)] == 1:
            visits[boxes[one.knife.box_id][0], *_looks(one)].append(one)
    for row in visits.values():
        row.sort(key=lambda one: boxes[one.knife.box_id][1])
        for left, back in pairwise(row):
            spots = [spot for spot in left.last_after if spot in back.before]
            if spots and left.knife.box_id != back.knife.box_id:
                yield _Again(
                    knife_id=left.knife.id,
                    left_gf=mean([left.last_after[spot] for spot in spots]),
                    back_gf=mean([back.before[spot] for spot in spots]),
                    days=(boxes[back.knife.box_id][1] - left.read_us) / DAY_US,
                )


def _looks(one: ReadKnife) -> tuple[object, ...]:
    knife = one.knife
    return knife.kind, knife.edge, knife.length_mm, knife.mark.casefold()
