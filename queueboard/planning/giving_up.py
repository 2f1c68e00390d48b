"""Whom to disappoint when not everybody can be helped, and the earliest cut-off that is honest instead."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import accumulate, islice, permutations
from typing import Self

from queueboard.planning.buckets import EMPTY, Buckets, Places, buckets_of
from queueboard.planning.looking_ahead import look_ahead
from queueboard.planning.pulling_ahead import TASTES, make_room
from queueboard.planning.work import Work


def fitting(work: Work, places: Places, width: int = 0) -> Buckets | None:
    """Buckets in which every box keeps its place, pulled ahead where they must be; None when none are found.

    Each taste is tried in turn; then, with a width, looking ahead.
    """
    plain = buckets_of(work, places)
    if min(plain.slack) < 0 and min(_most_room(plain)) < 0:
        return None
    for taste in TASTES:
        buckets = plain.copy()
        if make_room(buckets, taste) is None:
            return buckets
    return look_ahead(work, places, width) if width else None


def _most_room(buckets: Buckets) -> list[int]:
    """Slack before each place if all knives of a process due so far were worked in one go: no plan has more."""
    work = buckets.work
    load = [0] * len(work.ends)
    for process, row in enumerate(buckets.rows):
        knives, paid = 0, work.linked(process) if process == work.queue.set_up_now else 0
        for place, bucket in sorted(row.items()):
            knives += bucket.knives
            set_up = work.set_up(process, knives)
            load[place] += bucket.seconds + set_up - paid
            paid = set_up
    return [end - done for end, done in zip(work.ends, accumulate(load), strict=True)]


def _tail(room: list[int]) -> list[int]:
    """For each place the least of the room from there on."""
    return list(accumulate(reversed(room), min))[::-1]


TRIES = 8
"""How often the work is put together anew at most, when nothing is followed side by side."""

TRIES_FOR_A_WAY = 2
"""How often more for each way that is followed side by side."""

TRIES_TO_LOOK_AHEAD = 5
"""What looking ahead costs of these."""


@dataclass(slots=True)
class Promises:
    """The places that boxes hold, and buckets that keep them all."""

    places: Places
    buckets: Buckets
    tries: int
    """How often the work may still be put together anew; in an overloaded shop it would never end."""

    @classmethod
    def of(cls, work: Work, width: int = 0) -> Self:
        """As many boxes on time as are found; those given up have no place yet.

        Cut-off by cut-off, where the work does not fit and nothing can be pulled ahead any more, the box goes that
        frees most seconds for its weight. Then those that went are tried again, the shortest first; width: looking
        ahead with so many ways, if at all.
        """
        places = first_places(work)
        tries = 0 if work.is_long else TRIES + TRIES_FOR_A_WAY * width
        promises = cls(places, buckets_of(work, places), tries)
        gone: list[int] = []
        while (short := make_room(promises.buckets)) is not None and (box := promises.most_freeing(short)) is not None:
            promises.give_up(box)
            gone.append(box)
        for box in sorted(gone, key=lambda box: (work.seconds[box] / work.boxes[box].weight, box)):
            place = work.due(box)
            if place is not None and promises.bears(box, place):
                promises.put(box, place)
            elif place is not None:
                promises.give(box, place, width)
        return promises

    def exchange(self) -> None:
        """Give up boxes that are on time wherever others can be on time instead and weigh more, until none are left."""
        while any(self._instead_of(box) for box in self._on_time()) or any(self._forced(box) for box in self._gone()):
            pass

    def _on_time(self) -> list[int]:
        due = self.buckets.work.due
        return [box for box, place in enumerate(self.places) if place is not None and place == due(box)]

    def _gone(self) -> list[int]:
        """The boxes that were given up, the shortest for its weight first."""
        work = self.buckets.work
        gone = [box for box, place in enumerate(self.places) if place is None and work.due(box) is not None]
        return sorted(gone, key=lambda box: (work.seconds[box] / work.boxes[box].weight, box))

    def _instead_of(self, box: int) -> bool:
        """Put boxes that were given up in the place of this one; False, and nothing changed, when that is no gain."""
        work = self.buckets.work
        gone = self._gone()
        gain, hope = -work.boxes[box].weight, sum(work.boxes[other].weight for other in gone)
        trial = replace(self, places=[*self.places[:box], None, *self.places[box + 1 :]])
        for other in gone:
            if gain + hope <= 0:
                break
            place, weight = work.due(other), work.boxes[other].weight
            hope -= weight
            gain += weight if place is not None and trial.give(other, place) else 0
        self.tries = trial.tries
        if gain > 0:
            self.places, self.buckets = trial.places, trial.buckets
        return gain > 0

    def _forced(self, box: int) -> bool:
        """Put this box in the place of lighter ones; False, and nothing changed, when they weigh as much together."""
        work = self.buckets.work
        places: Places = [*self.places[:box], work.due(box), *self.places[box + 1 :]]
        if not self.tries:
            return False
        self.tries -= 1
        trial = Promises(places, buckets_of(work, places), self.tries)
        gain = work.boxes[box].weight
        while (short := make_room(trial.buckets)) is not None:
            other = trial.most_freeing(short, but=box)
            if other is None or gain <= work.boxes[other].weight:
                return False
            gain -= work.boxes[other].weight
            trial.give_up(other)
        self.places, self.buckets = trial.places, trial.buckets
        return True

    def most_freeing(self, short: int, but: int | None = None) -> int | None:
        """The box with a place up to this one, but for one box, that frees most seconds for its weight."""
        boxes = self.buckets.work.boxes
        due_by = (
            (box, place) for box, place in enumerate(self.places) if place is not None and place <= short and box != but
        )
        best = max(due_by, key=lambda at: (self._freed(*at) / boxes[at[0]].weight, -at[0]), default=None)
        return best and best[0]

    def _freed(self, box: int, place: int) -> int:
        """Seconds the bench is free sooner without a box; where its knives were pulled ahead, as if they were not."""
        work, freed = self.buckets.work, 0
        for lot in work.lots[box]:
            knives = len(lot.knives)
            others = max(0, self.buckets.rows[lot.process].get(place, EMPTY).knives - knives)
            freed += lot.seconds + work.set_up(lot.process, others + knives) - work.set_up(lot.process, others)
        return freed

    def give_up(self, box: int) -> None:
        """Take a box's place from it."""
        self.buckets.take(box, self.places[box] or 0)
        self.places[box] = None

    def bears(self, box: int, place: int) -> bool:
        """True when everybody keeps their place with this box in it, and nothing more need be pulled ahead."""
        return min(self.buckets.room()[place:]) >= self._added(box, place)

    def _added(self, box: int, place: int) -> int:
        work = self.buckets.work
        added = work.seconds[box]
        for lot in work.lots[box]:
            there = self.buckets.rows[lot.process].get(place, EMPTY).knives
            added += work.set_up(lot.process, there + len(lot.knives)) - work.set_up(lot.process, there)
        return added

    def earliest(self, box: int, first: int) -> int:
        """The earliest place from this one on that bears the box."""
        tail = _tail(self.buckets.room())
        last = len(tail) - 1
        return next((place for place in range(first, last) if tail[place] >= self._added(box, place)), last)

    def give(self, box: int, place: int, width: int = 0) -> bool:
        """Give a box this place, if the work can be put together anew so that everybody keeps theirs."""
        cost = TRIES_TO_LOOK_AHEAD if width else 1
        if self.tries < cost:
            return False
        self.tries -= cost
        more: Places = [*self.places[:box], place, *self.places[box + 1 :]]
        buckets = fitting(self.buckets.work, more, width)
        if buckets is None:
            return False
        self.places, self.buckets = more, buckets
        return True

    def put(self, box: int, place: int) -> None:
        """Give a box a place that bears it."""
        self.buckets.put(box, place)
        self.places[box] = place

    def redated(self, orders: int = 1) -> "Promises":
        """These with a place for everybody: each box without one gets the earliest cut-off that bears it.

        The shortest box first; then in other orders as well, if asked for, and the least tardiness is kept.
        """
        work = self.buckets.work
        gone = sorted((b for b, place in enumerate(self.places) if place is None), key=lambda b: (work.seconds[b], b))
        found = []
        for order in islice(permutations(gone), orders):
            promises = Promises(self.places[:], self.buckets.copy(), 0 if work.is_long else TRIES)
            promises.redate(order)
            found.append(promises)
        return min(found, key=Promises._tardiness)

    def redate(self, order: Iterable[int]) -> None:
        """Give these boxes the earliest cut-offs that bear them, one after the other.

        One that bears a box when enough is pulled ahead is looked for by halves: later ones nearly always bear it too.
        """
        work = self.buckets.work
        for box in order:
            first = (work.boxes[box].due or 0) + 1
            place = min(work.beyond, self.earliest(box, first))
            sooner = list(self._thinkable(box, first, place))
            self.put(box, place)
            refused, given = 0, len(sooner)
            while refused < given:
                middle = (refused + given) // 2
                if self.give(box, sooner[middle]):
                    given = middle
                else:
                    refused = middle + 1

    def _tardiness(self) -> int:
        work = self.buckets.work
        ends = work.ends
        at = ((box.due, place) for box, place in zip(work.boxes, self.places, strict=True) if place is not None)
        return sum(ends[place] - (ends[due] if due >= 0 else 0) for due, place in at if due is not None and place > due)

    def _thinkable(self, box: int, first: int, last: int) -> Iterator[int]:
        """The places from one up to another, without it, that might bear the box if enough could be pulled ahead."""
        if first < last:
            tail = _tail(_most_room(self.buckets))
            yield from (place for place in range(first, last) if tail[place] >= self.buckets.work.seconds[box])


def first_places(work: Work) -> Places:
    """Every box where it is due; boxes that are late already have none yet."""
    return [work.unpromised if box.due is None else work.due(index) for index, box in enumerate(work.boxes)]
