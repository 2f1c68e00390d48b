"""What is really done in a day: runs in the order of the plan, until the day's seconds are used up.

A knife in hand at closing is not finished: what is left of it is worked another day.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from queueboard.planning.evaluation import Batch
from tests.year.world import Knife


@dataclass(slots=True)
class Bench:
    """The bench and what it is set up for."""

    set_ups: list[int]
    mounted: int | None = None
    owed_seconds: float = 0.0
    """What is left of a set-up that closing broke off."""


@dataclass(slots=True)
class DayDone:
    """A day at the bench."""

    runs: list[list[Knife]] = field(default_factory=list)
    """The knives finished, run by run; a run without any is left out."""
    finished_at: dict[int, float] = field(default_factory=dict)
    """By knife id the seconds of work before the end of its run, or before closing if that came first."""
    set_up_seconds: float = 0.0
    knife_seconds: float = 0.0


def work_off(bench: Bench, batches: Iterable[Batch], knives: Mapping[int, Knife], seconds: float) -> DayDone:
    """Work these runs in this order for so many seconds."""
    done = DayDone()
    clock = _set_up(bench, done, 0.0, seconds)
    for process, knife_ids in batches:
        if clock >= seconds:
            return done
        if process != bench.mounted:
            bench.mounted = process
            bench.owed_seconds = bench.set_ups[process]
            clock = _set_up(bench, done, clock, seconds)
        clock = _work(done, [knives[knife_id] for knife_id in knife_ids], clock, seconds)
    return done


def _set_up(bench: Bench, done: DayDone, clock: float, seconds: float) -> float:
    spent = min(bench.owed_seconds, seconds - clock)
    bench.owed_seconds -= spent
    done.set_up_seconds += spent
    return clock + spent


def _work(done: DayDone, run: list[Knife], clock: float, seconds: float) -> float:
    finished: list[Knife] = []
    for knife in run:
        left = knife.left_seconds
        spent = min(left, seconds - clock)
        # Set, not added up, so that a finished knife has exactly nothing left.
        knife.worked_seconds = knife.true_seconds if spent == left else knife.worked_seconds + spent
        done.knife_seconds += spent
        clock += spent
        if spent < left:
            break
        finished.append(knife)
    # The knives of a run go over its belts together, so that none is done before the others.
    done.finished_at.update((knife.id, clock) for knife in finished)
    if finished:
        done.runs.append(finished)
    return clock
