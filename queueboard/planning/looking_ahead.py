"""Set-ups saved by looking ahead: cut-off by cut-off, the most hopeful ways of being there are kept side by side.

Inside a process the knives are worked by place, so that a way is told by how many of each process are done, and which
process the bench ends with. Of two ways that are equally far the one with less set-up is also the earlier one.
"""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from itertools import accumulate
from typing import NamedTuple

from queueboard.planning.buckets import Buckets, Places, filled
from queueboard.planning.work import Knife, Lot, Work

NONE = -1


class _Go(NamedTuple):
    """Knives of a process worked in one go: up to which one, and what that takes after the first set-up."""

    upto: int
    seconds: int
    """Hands-on, with the set-ups of the runs after the first."""
    set_up: int
    """Of the runs after the first."""


class _Step(NamedTuple):
    """Knives of a process worked in one go, by their place in its line."""

    process: int
    start: int
    upto: int


class _Way(NamedTuple):
    """A way to be done with all that is due by a place."""

    hope: float
    """Set-up so far and a guess of what will follow; smaller is better."""
    set_up: int
    clock: int
    done: tuple[int, ...]
    """Knives done, by process."""
    last: int
    """The process that the bench is set up for, as far as that may save anything; else NONE."""
    now: tuple[_Step, ...]
    """Steps for the place in hand."""
    past: "_Past | None"


class _Past(NamedTuple):
    """Steps for a place, and those before them."""

    before: "_Past | None"
    place: int
    steps: tuple[_Step, ...]


class _Line:
    """The knives of one process in the order they are worked."""

    def __init__(self, work: Work, process: int, knives: list[tuple[int, int, Knife]]) -> None:
        self.work, self.process = work, process
        self.knives = sorted(knives, key=lambda entry: (entry[0], entry[2].seconds, entry[1], entry[2].id))
        self.places = [place for place, _, _ in self.knives]
        self.seconds = [0, *accumulate(knife.seconds for _, _, knife in self.knives)]
        self.ends = [bisect_right(self.places, place) for place in sorted(set(self.places))]
        self.rest = [self._rest(done) for done in range(len(self.knives) + 1)]
        self._known: dict[tuple[int, int], list[_Go]] = {}

    def _rest(self, done: int) -> int:
        """Set-up of all buckets after these knives, when nothing is pulled ahead any more."""
        total = 0
        for end in self.ends:
            total += self.work.set_up(self.process, max(0, end - done))
            done = max(done, end)
        return total

    def due_by(self, place: int) -> int:
        """How many knives are due by a place."""
        return bisect_right(self.places, place)

    def goes(self, done: int, least: int) -> list[_Go]:
        """What can be worked in one go from here, at least up to this knife: to a bucket's or a full run's end."""
        known = self._known.get((done, least))
        if known is None:
            known = self._known[done, least] = [self._go(done, upto) for upto in self._stops(done, least)]
        return known

    def _stops(self, done: int, least: int) -> list[int]:
        stops = {end for end in self.ends if end >= least}
        if self.work.repeats[self.process]:
            size = self.work.queue.processes[self.process].run_size
            full = done + size * -(-(least - done) // size)
            stops.update(range(full, len(self.knives) + 1, size))
        return sorted(stops)

    def _go(self, done: int, upto: int) -> _Go:
        again = self.work.set_up(self.process, upto - done) - self.work.set_ups[self.process]
        return _Go(upto, self.seconds[upto] - self.seconds[done] + again, again)


def look_ahead(work: Work, places: Places, width: int) -> Buckets | None:
    """Buckets that keep these places with little set-up; None when no way kept gets through.

    Width: how many ways are kept. Boxes without a place are left out.
    """
    lines = _lines_of(work, places)
    mounted = NONE if work.queue.set_up_now is None else work.queue.set_up_now
    ways = [_Way(sum(line.rest[0] for line in lines), 0, 0, (0,) * len(lines), mounted, (), None)]
    for place in sorted({place for line in lines for place in line.places}):
        ways = _reach(work, lines, ways, place, width)
    if not ways:
        return None
    return _buckets_of(work, lines, min(ways, key=lambda way: (way.set_up, way.clock)))


def _lines_of(work: Work, places: Places) -> list[_Line]:
    knives: list[list[tuple[int, int, Knife]]] = [[] for _ in work.set_ups]
    for parts, place in zip(work.lots, places, strict=True):
        for lot in parts:
            knives[lot.process].extend((place, lot.box, knife) for knife in lot.knives if place is not None)
    return [_Line(work, process, some) for process, some in enumerate(knives)]


def _reach(work: Work, lines: list[_Line], ways: list[_Way], place: int, width: int) -> list[_Way]:
    """The best ways to be done with this place, from those to be done with the one before."""
    end = work.ends[place]
    least = [line.due_by(place) for line in lines]
    after = min((line.places[due] for line, due in zip(lines, least, strict=True) if due < len(line.places)), default=0)
    soon = [line.due_by(after) for line in lines]
    begun = [on for way in ways for on in (way, *_gone_on(work, lines, way, least, end))]
    for process, line in enumerate(lines):
        found: dict[tuple[tuple[int, ...], tuple[int, ...], int], _Way] = {}
        for way in begun:
            for on in _choices(work, way, line, least[process], soon[process], end):
                key = on.done, tuple(step.process for step in on.now), on.last
                if key not in found or on.set_up < found[key].set_up:
                    found[key] = on
        begun = sorted(found.values(), key=lambda way: way[:6])[: 3 * width]
    ended: dict[tuple[tuple[int, ...], int], _Way] = {}
    for way in begun:
        for on in _ended(work, lines, way, place):
            if (on.done, on.last) not in ended or on.set_up < ended[on.done, on.last].set_up:
                ended[on.done, on.last] = on
    return sorted(ended.values(), key=lambda way: _promise(work, way))[:width]


def _choices(work: Work, way: _Way, line: _Line, least: int, soon: int, end: int) -> Sequence[_Way]:
    """What can be done with a process at a place: what is due must be worked.

    What is due next may be, too: out of the way, it lets another process go on from this place to the one after.
    """
    process = line.process
    if way.done[process] < least:
        return _worked(way, line, least, work.set_ups[process], end)
    if way.done[process] >= soon or not work.linked(process) or any(step.process == process for step in way.now):
        return (way,)
    return (way, *_worked(way, line, soon, work.set_ups[process], end)[:1])


def _promise(work: Work, way: _Way) -> tuple[float, int, tuple[int, ...], int]:
    """How good a way looks: the process it ends with may save a set-up, every other time."""
    linked = 0 if way.last == NONE else work.linked(way.last)
    return way.hope - linked / 2, way.set_up, way.done, way.last


def _gone_on(work: Work, lines: list[_Line], way: _Way, least: list[int], end: int) -> list[_Way]:
    """The ways that begin a place by going on with the process before."""
    if way.last == NONE or not work.linked(way.last) or way.done[way.last] == len(lines[way.last].places):
        return []
    upto = max(least[way.last], way.done[way.last] + 1)
    return _worked(way, lines[way.last], upto, work.repeats[way.last], end)


def _worked(way: _Way, line: _Line, least: int, set_up: int, end: int) -> list[_Way]:
    """The ways to work this process next, at least up to this knife, that are done before the end."""
    process, ways = line.process, []
    start = way.done[process]
    for go in line.goes(start, least):
        clock = way.clock + set_up + go.seconds
        if clock > end:
            break
        hope = way.hope + set_up + go.set_up + line.rest[go.upto] - line.rest[start]
        done = (*way.done[:process], go.upto, *way.done[process + 1 :])
        now = (*way.now, _Step(process, start, go.upto))
        ways.append(_Way(hope, way.set_up + set_up + go.set_up, clock, done, way.last, now, way.past))
    return ways


def _ended(work: Work, lines: list[_Line], way: _Way, place: int) -> Iterator[_Way]:
    """The way with a place behind it, once for each process worth ending with."""
    if not way.now:
        yield way
        return
    # What began the place by going on can end it only when it is all that was worked.
    began = way.now[0] if len(way.now) > 1 and way.now[0].process == way.last else None
    past = _Past(way.past, place, way.now)
    lasts = [
        step.process
        for step in way.now
        if step is not began and step.upto < len(lines[step.process].places) and work.linked(step.process)
    ]
    for last in lasts or [NONE]:
        yield way._replace(last=last, now=(), past=past)


def _buckets_of(work: Work, lines: list[_Line], way: _Way) -> Buckets:
    lots: list[dict[int, list[Lot]]] = [{} for _ in lines]
    past = way.past
    while past is not None:
        for process, start, upto in past.steps:
            knives = lines[process].knives[start:upto]
            lots[process][past.place] = [Lot(box, process, (knife,), knife.seconds) for _, box, knife in knives]
        past = past.before
    return filled(work, lots)
