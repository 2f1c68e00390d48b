"""Whom to disappoint when not everybody can be helped."""

from dataclasses import replace

from queueboard.planning.buckets import Places, buckets_of
from queueboard.planning.promises import Promises
from queueboard.planning.pulling_ahead import make_room
from queueboard.planning.work import Work

TRIES = 8
"""How often the work is put together anew at most, when nothing is followed side by side."""

TRIES_FOR_A_WAY = 2
"""How often more for each way that is followed side by side."""


def give_up(work: Work, width: int = 0) -> Promises:
    """As many boxes on time as are found; those given up have no place yet.

    Cut-off by cut-off, where the work does not fit and nothing can be pulled ahead any more, the box goes that frees
    most seconds for its weight. Then those that went are tried again, the shortest first; width: looking ahead with
    so many ways, if at all.
    """
    places = first_places(work)
    tries = 0 if work.is_long else TRIES + TRIES_FOR_A_WAY * width
    promises = Promises(places, buckets_of(work, places), tries)
    while (short := make_room(promises.buckets)) is not None and (box := promises.most_freeing(short)) is not None:
        promises.give_up(box)
    for box in _gone(promises):
        place = work.due(box)
        if place is not None and promises.bears(box, place):
            promises.put(box, place)
        elif place is not None:
            promises.give(box, place, width)
    return promises


def first_places(work: Work) -> Places:
    """Every box where it is due; boxes that are late already have none yet."""
    return [work.unpromised if box.due is None else work.due(index) for index, box in enumerate(work.boxes)]


def exchange(promises: Promises) -> None:
    """Give up boxes that are on time wherever others can be on time instead and weigh more, until none are left."""
    while any(_instead_of(promises, box) for box in _on_time(promises)) or any(
        _forced(promises, box) for box in _gone(promises)
    ):
        pass


def _on_time(promises: Promises) -> list[int]:
    due = promises.buckets.work.due
    return [box for box, place in enumerate(promises.places) if place is not None and place == due(box)]


def _gone(promises: Promises) -> list[int]:
    """The boxes that were given up, the shortest for its weight first."""
    work = promises.buckets.work
    gone = [box for box, place in enumerate(promises.places) if place is None and work.due(box) is not None]
    return sorted(gone, key=lambda box: (work.seconds[box] / work.boxes[box].weight, box))


def _instead_of(promises: Promises, box: int) -> bool:
    """Put boxes that were given up in the place of this one; False, and nothing changed, when that is no gain."""
    work = promises.buckets.work
    gone = _gone(promises)
    gain, hope = -work.boxes[box].weight, sum(work.boxes[other].weight for other in gone)
    trial = replace(promises, places=_with(promises.places, box, None))
    for other in gone:
        if gain + hope <= 0:
            break
        place, weight = work.due(other), work.boxes[other].weight
        hope -= weight
        gain += weight if place is not None and trial.give(other, place) else 0
    promises.tries = trial.tries
    if gain > 0:
        promises.places, promises.buckets = trial.places, trial.buckets
    return gain > 0


def _forced(promises: Promises, box: int) -> bool:
    """Put this box in the place of lighter ones; False, and nothing changed, when they weigh as much together."""
    work = promises.buckets.work
    if not promises.tries:
        return False
    promises.tries -= 1
    places = _with(promises.places, box, work.due(box))
    trial = Promises(places, buckets_of(work, places), promises.tries)
    gain = work.boxes[box].weight
    while (short := make_room(trial.buckets)) is not None:
        other = trial.most_freeing(short, but=box)
        if other is None or gain <= work.boxes[other].weight:
            return False
        gain -= work.boxes[other].weight
        trial.give_up(other)
    promises.places, promises.buckets = trial.places, trial.buckets
    return True


def _with(places: Places, box: int, place: int | None) -> Places:
    return [*places[:box], place, *places[box + 1 :]]
