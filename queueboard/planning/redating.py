"""Honest dates: the earliest cut-off for each box that was given up, or was late before."""

from collections.abc import Iterable, Iterator
from itertools import islice, permutations

from queueboard.planning.promises import Promises, most_room, tail_of

TRIES = 8
"""How often the work is put together anew at most in one order of the boxes."""


def redated(promises: Promises, orders: int = 1) -> Promises:
    """The same with a place for everybody: each box without one gets the earliest cut-off that bears it.

    The shortest box first; then in other orders as well, if asked for, and the least tardiness is kept.
    """
    work, places = promises.buckets.work, promises.places
    gone = sorted((box for box, place in enumerate(places) if place is None), key=lambda box: (work.seconds[box], box))
    found = []
    for order in islice(permutations(gone), orders):
        trial = Promises(places[:], promises.buckets.copy(), 0 if work.is_long else TRIES)
        _redate(trial, order)
        found.append(trial)
    return min(found, key=_tardiness)


def _redate(promises: Promises, order: Iterable[int]) -> None:
    """Give these boxes the earliest cut-offs that bear them, one after the other.

    One that bears a box when enough is pulled ahead is looked for by halves: later ones nearly always bear it too.
    """
    work = promises.buckets.work
    for box in order:
        first = (work.boxes[box].due or 0) + 1
        place = min(work.beyond, promises.earliest(box, first))
        sooner = list(_thinkable(promises, box, first, place))
        promises.put(box, place)
        refused, given = 0, len(sooner)
        while refused < given:
            middle = (refused + given) // 2
            if promises.give(box, sooner[middle]):
                given = middle
            else:
                refused = middle + 1


def _thinkable(promises: Promises, box: int, first: int, last: int) -> Iterator[int]:
    """The places from one up to another, without it, that might bear the box if enough could be pulled ahead."""
    if first < last:
        tail = tail_of(most_room(promises.buckets))
        yield from (place for place in range(first, last) if tail[place] >= promises.buckets.work.seconds[box])


def _tardiness(promises: Promises) -> int:
    """Seconds from each late box's cut-off, or from now when it has passed, to the place it has."""
    work = promises.buckets.work
    at = ((box.due, place) for box, place in zip(work.boxes, promises.places, strict=True) if place is not None)
    return sum(
        work.ends[place] - (work.ends[due] if due >= 0 else 0) for due, place in at if due is not None and place > due
    )
