"""Whom to disappoint when not everybody can be helped, and the earliest cut-off that is honest instead."""

from dataclasses import dataclass
from itertools import accumulate
from typing import Self

from queueboard.planning.buckets import EMPTY, Buckets, buckets_of
from queueboard.planning.pulling_ahead import TASTES, Taste, by_minute, make_room
from queueboard.planning.work import Work

Places = list[int | None]
"""For each box the place by which it is worked; None while it has none."""


def fitting(work: Work, places: Places) -> Buckets | None:
    """Buckets in which every box keeps its place, pulled ahead where they must be; None when no taste finds any."""
    plain = buckets_of(work, places)
    if not _thinkable(plain):
        return None
    for taste in TASTES:
        buckets = plain.copy()
        if make_room(buckets, taste) is None:
            return buckets
    return None


def _thinkable(buckets: Buckets) -> bool:
    """False when the work does not fit even with all knives of a process that are due so far worked in one go."""
    work = buckets.work
    if min(buckets.slack) >= 0:
        return True
    load = [0] * len(work.ends)
    for process, row in enumerate(buckets.rows):
        knives, paid = 0, work.linked(process) if process == work.queue.set_up_now else 0
        for place, bucket in row.items():
            knives += bucket.knives
            set_up = work.set_up(process, knives)
            load[place] += bucket.seconds + set_up - paid
            paid = set_up
    return all(done <= end for done, end in zip(accumulate(load), work.ends, strict=True))


@dataclass(slots=True)
class Promises:
    """The places that boxes hold, and buckets that keep them all."""

    places: Places
    buckets: Buckets

    @classmethod
    def of(cls, work: Work, taste: Taste = by_minute) -> Self:
        """As many boxes on time as are found; those given up have no place yet.

        Cut-off by cut-off, where the work does not fit and nothing can be pulled ahead any more, the box goes that
        frees most seconds for its weight. Then those that went are tried again, the shortest first.
        """
        places = first_places(work)
        promises = cls(places, buckets_of(work, places))
        gone: list[int] = []
        while (short := make_room(promises.buckets, taste)) is not None:
            box = promises.most_freeing(short)
            promises.give_up(box)
            gone.append(box)
        for box in sorted(gone, key=lambda box: (work.seconds[box] / work.boxes[box].weight, box)):
            place = work.due(box)
            if place is not None and (promises.bears(box, place) or not work.is_long):
                promises.give(box, place)
        return promises

    def most_freeing(self, short: int) -> int:
        """The box with a place up to this one that frees most seconds for its weight."""
        boxes = self.buckets.work.boxes
        due_by = ((box, place) for box, place in enumerate(self.places) if place is not None and place <= short)
        return max(due_by, key=lambda at: (self._freed(*at) / boxes[at[0]].weight, -at[0]))[0]

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
        room = self.buckets.room()
        tail = list(accumulate(reversed(room), min))[::-1]
        last = len(room) - 1
        return next((place for place in range(first, last) if tail[place] >= self._added(box, place)), last)

    def give(self, box: int, place: int) -> bool:
        """Give a box this place, if it can be kept together with all others; the work is put together anew."""
        more: Places = [*self.places[:box], place, *self.places[box + 1 :]]
        buckets = fitting(self.buckets.work, more)
        if buckets is None:
            return False
        self.places, self.buckets = more, buckets
        return True

    def put(self, box: int, place: int) -> None:
        """Give a box a place that bears it."""
        self.buckets.put(box, place)
        self.places[box] = place

    def redate(self) -> None:
        """Give each box without a place the earliest cut-off that bears it, the shortest box first.

        In a short queue earlier ones are tried as well, where work must be pulled ahead.
        """
        work = self.buckets.work
        gone = [box for box, place in enumerate(self.places) if place is None]
        for box in sorted(gone, key=lambda box: (work.seconds[box], box)):
            first = (work.boxes[box].due or 0) + 1
            place = min(work.beyond, self.earliest(box, first))
            if work.is_long or not any(self.give(box, earlier) for earlier in range(first, place)):
                self.put(box, place)


def first_places(work: Work) -> Places:
    """Every box where it is due; boxes that are late already have none yet."""
    return [work.unpromised if box.due is None else work.due(index) for index, box in enumerate(work.boxes)]
