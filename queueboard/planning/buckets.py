"""Work put together by process and cut-off, and the seconds left before each cut-off.

Whether everybody can be on time is then one comparison a cut-off: the work due by it, set-ups included, against the
bench seconds before it.
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import accumulate
from typing import NamedTuple

from queueboard.planning.linking import Links
from queueboard.planning.queue import Queue
from queueboard.planning.work import Knife, Lot, Work, work_of
from queueboard.slotted import dataclass

Places = list[int | None]
"""For each box the place by which it is worked; None when it has none."""


class Bucket(NamedTuple):
    """Knives of one process that are worked together for one cut-off."""

    lots: tuple[Lot, ...]
    knives: int
    seconds: int
    """Hands-on seconds, without set-ups."""


EMPTY = Bucket((), 0, 0)


@dataclass(slots=True)
class Buckets:
    """What is worked for each place, by process, and the slack that this leaves."""

    work: Work
    rows: list[dict[int, Bucket]]
    """Per process its buckets by place; no empty ones."""
    slack: list[int]
    """Per place the bench seconds before it less all work up to it, set-ups without links included."""
    links: Links | None = None
    """Only worked out when somebody needs them."""

    def copy(self) -> "Buckets":
        """The same buckets, to be changed apart from these."""
        links = self.links and self.links.copy()
        return Buckets(self.work, [dict(row) for row in self.rows], self.slack[:], links)

    def fill(self, process: int, place: int, bucket: Bucket) -> None:
        """Put this in the place of what is in the bucket."""
        row = self.rows[process]
        before = row.get(place, EMPTY)
        more = bucket.seconds + self.work.set_up(process, bucket.knives)
        more -= before.seconds + self.work.set_up(process, before.knives)
        if bucket.knives:
            row[place] = bucket
        else:
            row.pop(place, None)
        self.slack[place:] = [left - more for left in self.slack[place:]]
        if self.links and bool(before.knives) != bool(bucket.knives):
            self.links.update(self.rows, place)

    def put(self, box: int, place: int) -> None:
        """Work all knives of a box for this place."""
        for lot in self.work.lots[box]:
            self.fill(lot.process, place, merged(self.rows[lot.process].get(place, EMPTY), (lot,)))

    def take(self, box: int, place: int) -> None:
        """Work no knife of a box that has this place; some or all may have been pulled ahead of it."""
        for lot in self.work.lots[box]:
            left, at = len(lot.knives), place
            while left:
                bucket = self.rows[lot.process].get(at, EMPTY)
                if any(other.box == box for other in bucket.lots):
                    rest = merged(EMPTY, tuple(other for other in bucket.lots if other.box != box))
                    left -= bucket.knives - rest.knives
                    self.fill(lot.process, at, rest)
                at -= 1

    def room(self) -> list[int]:
        """Slack with the set-ups that links save."""
        if min(self.slack) >= 0 or self.work.set_ups == self.work.repeats:
            return self.slack
        self.links = self.links or Links(self.work, self.rows)
        return [left + saved for left, saved in zip(self.slack, self.links.saved, strict=True)]


def merged(bucket: Bucket, lots: tuple[Lot, ...]) -> Bucket:
    """The bucket with these lots in it as well."""
    return Bucket(
        bucket.lots + lots,
        bucket.knives + sum(len(lot.knives) for lot in lots),
        bucket.seconds + sum(lot.seconds for lot in lots),
    )


def parted(bucket: Bucket, count: int) -> tuple[tuple[Lot, ...], tuple[Lot, ...]]:
    """The shortest knives of a bucket, so many of them, and the others; of equals the box that stands first."""
    knives = ((knife, lot.box) for lot in bucket.lots for knife in lot.knives)
    order = sorted(knives, key=lambda pair: (pair[0].seconds, pair[1], pair[0]))
    return _lots(bucket, order[:count]), _lots(bucket, order[count:])


def _lots(bucket: Bucket, knives: Iterable[tuple[Knife, int]]) -> tuple[Lot, ...]:
    by_box: dict[int, list[Knife]] = {}
    for knife, box in knives:
        by_box.setdefault(box, []).append(knife)
    process = bucket.lots[0].process
    return tuple(Lot(box, process, tuple(some), sum(k.seconds for k in some)) for box, some in by_box.items())


def buckets_of(work: Work, places: Places) -> Buckets:
    """The buckets of the boxes at their places, nothing pulled ahead."""
    lots: list[dict[int, list[Lot]]] = [{} for _ in work.set_ups]
    for parts, place in zip(work.lots, places, strict=True):
        if place is not None:
            for lot in parts:
                lots[lot.process].setdefault(place, []).append(lot)
    return filled(work, lots)


def filled(work: Work, lots: Sequence[Mapping[int, Sequence[Lot]]]) -> Buckets:
    """Buckets with these lots in them, by process and place."""
    rows = [{place: merged(EMPTY, tuple(row[place])) for place in sorted(row)} for row in lots]
    load = [0] * len(work.ends)
    for process, row in enumerate(rows):
        for place, bucket in row.items():
            load[place] += bucket.seconds + work.set_up(process, bucket.knives)
    slack = [end - done for end, done in zip(work.ends, accumulate(load), strict=True)]
    return Buckets(work, rows, slack)


def slack(queue: Queue, dues: Mapping[int, int]) -> tuple[int, ...]:
    """Bench seconds left before each cut-off when the work due by it is done, set-ups included; below 0: too much work.

    dues: index into the cut-offs by box id, below 0 taken for the first cut-off. Boxes that are not in it, or are due
    beyond the last cut-off, take no time. Every process is set up once for each cut-off that it has work for: nothing
    is pulled ahead.
    """
    work = work_of(queue)
    last = len(queue.cutoffs)
    places = [dues.get(box.id, last) for box in work.boxes]
    return tuple(buckets_of(work, [max(0, place) if place < last else None for place in places]).slack[:last])
