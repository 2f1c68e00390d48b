"""Links: a cut-off's work begins with the process that the one before ended with, and so saves a set-up."""

from collections.abc import Mapping, Sequence
from copy import copy
from operator import itemgetter

from queueboard.planning.work import Work

_Way = tuple[int, int, int | None]
"""Seconds saved so far, the process a place begins with, and the one the place before ends with if that matters."""

_Stage = tuple[int, list[int], dict[int, _Way]]
"""A place, its processes, and the best way to end it with each of them."""

_Ends = dict[int, int]
"""Seconds saved by the process a place ends with."""

Rows = Sequence[Mapping[int, object]]
_saved = itemgetter(0)


class Links:
    """For each place the most seconds of set-up that links save up to it, kept up to date as buckets come and go."""

    def __init__(self, work: Work, rows: Rows) -> None:
        """Find them for these buckets, by process and place."""
        self._linked = [work.linked(process) for process in range(len(work.set_ups))]
        self._start = _start(work)
        self.saved = [0] * len(work.ends)
        self.ends: list[_Ends | None] = [None] * len(work.ends)
        self.update(rows, 0)

    def copy(self) -> "Links":
        """The same links, to be updated apart from these."""
        other = copy(self)
        other.saved, other.ends = self.saved[:], self.ends[:]
        return other

    def update(self, rows: Rows, place: int) -> None:
        """Find them anew after a bucket of this place came or went; soon after it nothing changes any more."""
        ends = (self.ends[place - 1] if place else None) or self._start
        saved = self.saved[place - 1] if place else 0
        for at in range(place, len(self.saved)):
            processes = [process for process, row in enumerate(rows) if at in row]
            if processes:
                ways = _ways(self._linked, processes, ends)
                best = max(way[0] for way in ways.values())
                ends = {process: way[0] - best for process, way in ways.items()}
                saved += best
            if ends == self.ends[at]:
                more = saved - self.saved[at]
                self.saved[at:] = [seconds + more for seconds in self.saved[at:]]
                return
            self.ends[at], self.saved[at] = ends, saved


def linked_order(work: Work, rows: Rows, slack: Sequence[int]) -> list[tuple[int, list[int]]]:
    """The places with work in order, and the processes of each in the order that saves most.

    Slack is what each place has left without links; where that is below 0, links that make up for it go before others.
    """
    order: list[tuple[int, list[int]]] = []
    last: int | None = None
    for place, processes, ways in reversed(_stages(work, rows, slack)):
        if last is None:
            last = max(ways, key=lambda process: (ways[process][0], -process))
        _, first, before = ways[last]
        middle = [process for process in processes if process not in {first, last}]
        order.append((place, [first, *middle, last] if first != last else [last]))
        last = before
    return order[::-1]


def _stages(work: Work, rows: Rows, slack: Sequence[int]) -> list[_Stage]:
    """Each place with work, its processes, and by the process it ends with the best way to get there."""
    present: dict[int, list[int]] = {}
    for process, row in enumerate(rows):
        for place in row:
            present.setdefault(place, []).append(process)
    linked = [work.linked(process) for process in range(len(work.set_ups))]
    stages: list[_Stage] = []
    ends = _start(work)
    for place in sorted(present):
        processes = present[place]
        ways = _ways(linked, processes, ends)
        ways = {last: way for last, way in ways.items() if slack[place] + way[0] >= 0} or ways
        stages.append((place, processes, ways))
        ends = {process: way[0] for process, way in ways.items()}
    return stages


def _start(work: Work) -> _Ends:
    return {} if work.queue.set_up_now is None else {work.queue.set_up_now: 0}


def _ways(linked: Sequence[int], processes: list[int], ends: _Ends) -> dict[int, _Way]:
    """The best way to each last process, when the stage before can end with these at these savings."""
    anyhow = max(ends.values(), default=0)
    links = [(ends[process] + linked[process], process, process) for process in processes if process in ends]
    if len(processes) == 1:
        return {process: max([(anyhow, process, None), *links], key=_saved) for process in processes}
    links = sorted((link for link in links if link[0] > anyhow), key=_saved, reverse=True)
    first, second = processes[:2]
    ways: dict[int, _Way] = {}
    for last in processes:
        others = (link for link in links if link[1] != last)
        ways[last] = next(others, (anyhow, second if last == first else first, None))
    return ways
