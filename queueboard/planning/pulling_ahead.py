"""Pulling work ahead: done together with earlier work of its process, it saves a set-up or fills runs.

It costs slack from the earlier cut-off up to its own, and gives slack from its own on.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from queueboard.planning.buckets import EMPTY, Buckets, merged, parted


class Step(NamedTuple):
    """So many knives, the shortest left, that move ahead to a place where their process has work already."""

    ahead: int
    knives: int
    added: int
    """Seconds more to do from there on, up to the place they come from."""


class Pull(NamedTuple):
    """Knives of a bucket that could be worked with earlier ones of the same process."""

    process: int
    place: int
    """Where they come from."""
    steps: tuple[Step, ...]
    """Where they go to, the earliest place first."""
    seconds: int
    """Hands-on seconds moved."""
    saved: int
    """Seconds of set-up saved from their place on."""

    @property
    def ahead(self) -> int:
        """The earliest place of those they go to."""
        return self.steps[0].ahead

    def fits(self, room: Sequence[int]) -> bool:
        """True when the places between bear it."""
        added = 0
        ends = [step.ahead for step in self.steps[1:]] + [self.place]
        for step, end in zip(self.steps, ends, strict=True):
            added += step.added
            if min(room[step.ahead : end]) < added:
                return False
        return True


Taste = Callable[[Pull], tuple[float, ...]]
"""Which pull is liked best: the greatest."""

NEAR = 30
"""How many cut-offs back work is pulled ahead first, when room is needed."""

REACH = 4
"""How many buckets back a run with room for a part-filled run's knives is looked for."""


def by_minute(pull: Pull) -> tuple[float, ...]:
    """Most set-up saved for each minute pulled."""
    return (pull.saved / (pull.seconds + 1), -pull.ahead, -pull.place, -pull.process)


def by_wait(pull: Pull) -> tuple[float, ...]:
    """Most set-up saved for each minute pulled and each cut-off it is pulled over."""
    return (pull.saved / ((pull.seconds + 1) * (pull.place - pull.ahead)), -pull.ahead, -pull.place, -pull.process)


def by_saving(pull: Pull) -> tuple[float, ...]:
    """Most set-up saved, with the fewest minutes."""
    return (pull.saved, -pull.seconds, -pull.ahead, -pull.place, -pull.process)


TASTES: tuple[Taste, ...] = (by_minute, by_wait, by_saving)


def pulls(buckets: Buckets, first: int, last: int) -> Iterator[Pull]:
    """All pulls that save set-up, of buckets from the first place up to the last."""
    for process, row in enumerate(buckets.rows):
        places = sorted(row)
        begin = max(1, bisect_left(places, first))
        for turn in range(begin, bisect_right(places, last)):
            yield from _whole(buckets, process, places[turn - 1], places[turn])
            if buckets.work.repeats[process]:
                yield from _part(buckets, process, places[max(0, turn - REACH) : turn], places[turn])


def _whole(buckets: Buckets, process: int, ahead: int, place: int) -> Iterator[Pull]:
    """The whole bucket to the one before it."""
    work, host, bucket = buckets.work, buckets.rows[process][ahead], buckets.rows[process][place]
    alone = work.set_up(process, host.knives)
    together = work.set_up(process, host.knives + bucket.knives)
    saved = alone + work.set_up(process, bucket.knives) - together
    if saved > 0:
        step = Step(ahead, bucket.knives, bucket.seconds + together - alone)
        yield Pull(process, place, (step,), bucket.seconds, saved)


def _part(buckets: Buckets, process: int, hosts: Sequence[int], place: int) -> Iterator[Pull]:
    """The knives of the bucket's part-filled run to runs that have room: to one of them, or to several."""
    work, row = buckets.work, buckets.rows[process]
    size, bucket = work.queue.processes[process].run_size, row[place]
    part = bucket.knives % size
    if not part:
        return
    free = [(ahead, -row[ahead].knives % size) for ahead in hosts]
    ways = [[(ahead, part)] for ahead, room in free if room >= part]
    if len(ways) < len(free):
        shared: list[tuple[int, int]] = []
        left = part
        for ahead, room in reversed(free):
            if room and left:
                shared.insert(0, (ahead, min(room, left)))
                left -= min(room, left)
        if not left and len(shared) > 1:
            ways.append(shared)
    if not ways:
        return
    shortest = sorted(knife.seconds for lot in bucket.lots for knife in lot.knives)
    saved = work.set_up(process, bucket.knives) - work.set_up(process, bucket.knives - part)
    for way in ways:
        steps, done = [], 0
        for ahead, knives in way:
            steps.append(Step(ahead, knives, sum(shortest[done : done + knives])))
            done += knives
        yield Pull(process, place, tuple(steps), sum(shortest[:part]), saved)


def pull_ahead(buckets: Buckets, pull: Pull) -> None:
    """Work these knives with the earlier ones."""
    row = buckets.rows[pull.process]
    for step in pull.steps:
        bucket = row[pull.place]
        some, others = (bucket.lots, ()) if step.knives == bucket.knives else parted(bucket, step.knives)
        buckets.fill(pull.process, step.ahead, merged(row[step.ahead], some))
        buckets.fill(pull.process, pull.place, merged(EMPTY, others))


def make_room(buckets: Buckets, taste: Taste = by_minute) -> int | None:
    """Pull ahead until all work fits before its place; the first place where that fails, or None.

    What lies shortly before the place is looked at first: in a long queue that is nearly always enough.
    """
    while min(room := buckets.room()) < 0:
        short = next(place for place, left in enumerate(room) if left < 0)
        best = _best(buckets, room, taste, short - NEAR, short) or _best(buckets, room, taste, 0, short)
        if best is None:
            return short
        pull_ahead(buckets, best)
    return None


def _best(buckets: Buckets, room: Sequence[int], taste: Taste, first: int, last: int) -> Pull | None:
    """The best of the pulls that fit."""
    best: Pull | None = None
    for pull in pulls(buckets, first, last):
        if (best is None or taste(pull) > taste(best)) and pull.fits(room):
            best = pull
    return best


def save_set_ups(buckets: Buckets, taste: Taste = by_minute) -> None:
    """Pull ahead wherever it saves set-up and everything still fits, best first, until nothing is left to save.

    A pull can undo a link that other work lives on; then it is taken back.
    """
    refused: set[Pull] = set()
    moved = True
    while moved:
        moved = False
        touched: set[tuple[int, int]] = set()
        room = buckets.room()
        for pull in sorted(pulls(buckets, 0, len(room)), key=taste, reverse=True):
            ends = {(pull.process, place) for place in (pull.place, *(step.ahead for step in pull.steps))}
            if pull in refused or ends & touched or not pull.fits(room):
                continue
            before = buckets.copy() if room is not buckets.slack else None
            pull_ahead(buckets, pull)
            after = buckets.room()
            if before is not None and min(after) < 0:
                buckets.rows, buckets.slack, buckets.links = before.rows, before.slack, before.links
                refused.add(pull)
                continue
            room, moved = after, True
            touched |= ends
