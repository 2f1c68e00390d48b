"""What the shop has measured at its own bench: timed runs, and days on which the work never ran out."""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from itertools import groupby
from operator import itemgetter

from queueboard.calendar.days import ShopCalendar, bench_windows
from queueboard.planning.learning import FullDay, MeasuredRun
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us, to_us
from queueboard.records.measuring import FinishedRun, WorkLeft, finished_runs, gone_forward, work_left
from queueboard.settings.rules import knife_minutes, knife_process
from queueboard.settings.shapes import Settings
from queueboard.values.knife import Knife
from queueboard.values.plan import BenchWindow

MOST_RUNS = 100
"""Newest runs of each process that are looked at: about a thousand knives, beyond which the minutes hardly change."""

LOOK_BACK_DAYS = 90
"""Days that are looked at for the shop's pace."""


def measured_runs(database: ShopDatabase, settings: Settings) -> tuple[MeasuredRun, ...]:
    """The newest finished runs of each process, those without a time as thrown away."""
    return tuple(
        _measured(place, run)
        for place, process in enumerate(settings.processes)
        for run in finished_runs(database, process.name, MOST_RUNS)
    )


def _measured(process: int, run: FinishedRun) -> MeasuredRun:
    """A run as it is learned from: by the knives that were worked in it, without the set-up.

    A run that took no longer than its set-up was begun and finished in one go: it measured nothing.
    """
    begun_with = run.nominal_seconds - run.set_up_seconds
    planned = run.planned_seconds - run.set_up_seconds
    hands_on = run.worked_seconds - run.set_up_seconds
    return MeasuredRun(
        process=process,
        knives=run.knives,
        boxes=run.boxes,
        starter_seconds=run.starter_seconds,
        estimated_seconds=max(1, planned * run.starter_seconds // begun_with),
        measured_seconds=max(0, hands_on),
        thrown_away=not run.timed or hands_on <= 0,
    )


def full_days(database: ShopDatabase, calendar: ShopCalendar, now: datetime) -> tuple[FullDay, ...]:
    """The days before today, of the last 90, on which something was done and the work at the bench never ran out.

    now: aware, in the shop's zone. A set-up is counted each time that the process of what was finished changed.
    """
    today = datetime.combine(now.date(), time(0), tzinfo=calendar.settings.zone)
    first = today - timedelta(days=LOOK_BACK_DAYS)
    since_us = to_us(first)
    left = _Left(work_left(database, since_us))
    windows: defaultdict[date, list[BenchWindow]] = defaultdict(list)
    for window in bench_windows(calendar, first, LOOK_BACK_DAYS):
        windows[window.start.date()].append(window)
    done: defaultdict[date, list[tuple[str, Knife]]] = defaultdict(list)
    for at_us, group, knife in gone_forward(database, since_us):
        done[from_us(at_us).astimezone(calendar.settings.zone).date()].append((group, knife))
    return tuple(
        _full_day(calendar.settings, done[day], bench)
        for day, bench in windows.items()
        if done[day] and left.lasts(bench)
    )


def _full_day(settings: Settings, done: list[tuple[str, Knife]], bench: Iterable[BenchWindow]) -> FullDay:
    seconds = dict.fromkeys((process.name for process in settings.processes), 0)
    for _, knife in done:
        seconds[knife_process(settings, knife).name] += 60 * knife_minutes(settings, knife)
    return FullDay(
        starter_seconds=tuple(seconds.values()),
        knives=len({knife.id for _, knife in done}),
        boxes=len({knife.box_id for _, knife in done}),
        set_up_seconds=sum(settings.process(name).set_up_seconds for name in _set_ups(settings, done)),
        bench_seconds=settings.planning.people * sum(window.seconds for window in bench),
    )


def _set_ups(settings: Settings, done: Iterable[tuple[str, Knife]]) -> list[str]:
    """The processes as they followed each other; what moved in one action was worked one process after the other."""
    order: list[str] = []
    for _, action in groupby(done, key=itemgetter(0)):
        met = {knife_process(settings, knife).name for _, knife in action}
        order += sorted(met, key=lambda name: ([name] != order[-1:], name))
    return [name for name, _ in groupby(order)]


class _Left:
    """How many knives needed the bench at each instant, worked back from what needs it now."""

    def __init__(self, work: WorkLeft) -> None:
        needing, waiting = work.needing.copy(), work.waiting.copy()
        knives = sum(count for box_id, count in needing.items() if not waiting[box_id])
        self._since: list[int] = []
        self._knives = [knives]
        for change in work.changes:
            before = 0 if waiting[change.box_id] else needing[change.box_id]
            needing[change.box_id] -= change.knives
            waiting[change.box_id] -= change.waiting
            knives += (0 if waiting[change.box_id] else needing[change.box_id]) - before
            self._since.append(change.at_us)
            self._knives.append(knives)
        self._since.reverse()
        self._knives.reverse()

    def lasts(self, windows: Iterable[BenchWindow]) -> bool:
        """True when somebody could have gone on with a knife in every minute of the bench time."""
        return all(min(self._between(window.start, window.end)) > 0 for window in windows)

    def _between(self, start: datetime, end: datetime) -> list[int]:
        """The knives at an instant, and after every change up to just before another."""
        return self._knives[bisect_right(self._since, to_us(start)) : bisect_right(self._since, to_us(end) - 1) + 1]
