"""The cut-offs that boxes are worked for, and whether everybody's can be kept."""

from itertools import accumulate

from queueboard.planning.buckets import EMPTY, Buckets, Places, buckets_of
from queueboard.planning.looking_ahead import look_ahead
from queueboard.planning.pulling_ahead import TASTES, make_room
from queueboard.planning.work import Work
from queueboard.slotted import dataclass

TRIES_TO_LOOK_AHEAD = 5
"""What looking ahead costs of a promise's tries."""


def fitting(work: Work, places: Places, width: int = 0) -> Buckets | None:
    """Buckets in which every box keeps its place, pulled ahead where they must be; None when none are found.

    Each taste is tried in turn; then, with a width, looking ahead.
    """
    plain = buckets_of(work, places)
    if min(plain.slack) < 0 and min(most_room(plain)) < 0:
        return None
    for taste in TASTES:
        buckets = plain.copy()
        if make_room(buckets, taste) is None:
            return buckets
    return look_ahead(work, places, width) if width else None


def most_room(buckets: Buckets) -> list[int]:
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


def tail_of(room: list[int]) -> list[int]:
    """For each place the least of the room from there on."""
    return list(accumulate(reversed(room), min))[::-1]


@dataclass(slots=True)
class Promises:
    """The places that boxes hold, and buckets that keep them all."""

    places: Places
    buckets: Buckets
    tries: int
    """How often the work may still be put together anew; in an overloaded shop it would never end."""

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
        tail = tail_of(self.buckets.room())
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
