"""What the shop has measured at its own bench: timed runs, and what was done on each day at the bench."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from itertools import groupby
from operator import itemgetter
from zoneinfo import ZoneInfo

from queueboard.calendar.days import ShopCalendar, bench_windows
from queueboard.planning.learning import MeasuredRun, WorkedDay, beyond_belief
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us, to_us
from queueboard.records.kept_days import KeptDays
from queueboard.records.measuring import (
    FinishedRun,
    MetKnife,
    WorkChange,
    WorkLeft,
    finished_runs,
    gone_forward,
    reaches_back,
    work_left,
)
from queueboard.settings.rules import knife_minutes, knife_process
from queueboard.settings.shapes import Settings
from queueboard.values.measured import BenchRun
from queueboard.values.plan import BenchWindow
from queueboard.words import Condition, Edge, StaysOut

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
    """A run as it is learned from: by the knives that were worked in it, without the set-up."""
    return MeasuredRun(
        process=process,
        knives=run.knives,
        boxes=run.boxes,
        starter_seconds=run.starter_seconds,
        estimated_seconds=estimated_seconds(run),
        measured_seconds=max(0, run.worked_seconds - run.set_up_seconds),
        thrown_away=not run.timed,
    )


def estimated_seconds(run: FinishedRun | BenchRun) -> int:
    """What the plan gave, when the run began, to those of its knives that are still counted; without the set-up."""
    begun_with, planned = run.nominal_seconds - run.set_up_seconds, run.planned_seconds - run.set_up_seconds
    return max(1, planned * run.starter_seconds // max(1, begun_with))


def off_by_its_length(run: BenchRun, now: datetime) -> StaysOut | None:
    """Why the time of a run would not be believed if it were over now, or is not; None when it would be."""
    return beyond_belief(max(0, run.worked_seconds(now) - run.set_up_seconds), estimated_seconds(run))


def worked_days(database: ShopDatabase, calendar: ShopCalendar, now: datetime) -> tuple[WorkedDay, ...]:
    """The days before today, of the last 90, on which something was done at the bench; worked out anew.

    now: aware, in the shop's zone. A set-up is counted each time that the process of what was finished changed.
    """
    return tuple(day for _, day in _days_between(database, calendar, _first_day(now.date()), now.date()))


def days_known(
    database: ShopDatabase, calendar: ShopCalendar, now: datetime, kept: KeptDays | None, at: tuple[int, int]
) -> KeptDays:
    """The worked days with their dates, from what was kept of them: only days that are over since are counted.

    All are, where that cannot be told from what is kept. at: the ids of the settings in force and of the newest line.
    """
    settings_id, line = at
    today = now.date()
    if kept is None or kept.settings_id != settings_id or not _still_true(database, kept, calendar, today, line):
        days = _days_between(database, calendar, _first_day(today), today)
    elif kept.until == today:
        return replace(kept, line=line)
    else:
        known = (one for one in kept.days if one[0] >= _first_day(today))
        days = (*known, *_days_between(database, calendar, kept.until, today))
    return KeptDays(settings_id=settings_id, line=line, until=today, days=days)


def _still_true(database: ShopDatabase, kept: KeptDays, calendar: ShopCalendar, today: date, line: int) -> bool:
    """True while the days kept are among those looked at, and nothing written since is about them."""
    if not _first_day(today) <= kept.until <= today:
        return False
    end_us = to_us(_midnight(kept.until, calendar.settings.zone))
    return kept.line == line or not reaches_back(database, kept.line, end_us)


def _first_day(today: date) -> date:
    return today - timedelta(days=LOOK_BACK_DAYS)


def _midnight(day: date, zone: ZoneInfo) -> datetime:
    return datetime.combine(day, time(0), tzinfo=zone)


def _days_between(
    database: ShopDatabase, calendar: ShopCalendar, first: date, today: date
) -> tuple[tuple[date, WorkedDay], ...]:
    """The days from the first on and before today on which something was done."""
    settings = calendar.settings
    since = _midnight(first, settings.zone)
    work = work_left(database, to_us(since))
    done: defaultdict[date, list[tuple[str, MetKnife]]] = defaultdict(list)
    for at_us, group, knife_id in gone_forward(database, to_us(since)):
        if knife_id in work.knives:
            done[from_us(at_us).astimezone(settings.zone).date()].append((group, work.knives[knife_id]))
    benches = {day: bench_windows(calendar, _midnight(day, settings.zone), 1) for day in sorted(done) if day < today}
    worked = {day: bench for day, bench in benches.items() if bench}
    mornings = _left_at(work, [bench[0].start for bench in worked.values()])
    return tuple(
        (day, _worked_day(settings, done[day], mornings[bench[0].start], bench)) for day, bench in worked.items()
    )


def _worked_day(
    settings: Settings, done: list[tuple[str, MetKnife]], morning: Iterable[MetKnife], bench: Iterable[BenchWindow]
) -> WorkedDay:
    return WorkedDay(
        open_seconds=_by_process(settings, morning),
        starter_seconds=_by_process(settings, (knife for _, knife in done)),
        knives=len({knife.id for _, knife in done}),
        boxes=len({knife.box_id for _, knife in done}),
        set_up_seconds=sum(settings.process(name).set_up_seconds for name in _set_ups(settings, done)),
        bench_seconds=settings.planning.people * sum(window.seconds for window in bench),
    )


def _by_process(settings: Settings, knives: Iterable[MetKnife]) -> tuple[int, ...]:
    """Starter seconds of knives, in the order of the shop's processes."""
    seconds = dict.fromkeys((process.name for process in settings.processes), 0)
    alike: dict[tuple[str, Edge, Condition], list[MetKnife]] = defaultdict(list)
    for knife in knives:
        alike[knife.kind, knife.edge, knife.condition].append(knife)
    for of_one_sort in alike.values():
        one = of_one_sort[0]
        seconds[knife_process(settings, one).name] += 60 * knife_minutes(settings, one) * len(of_one_sort)
    return tuple(seconds.values())


def _set_ups(settings: Settings, done: Iterable[tuple[str, MetKnife]]) -> list[str]:
    """The processes as they followed each other; what moved in one action was worked one process after the other."""
    order: list[str] = []
    for _, action in groupby(done, key=itemgetter(0)):
        met = {knife_process(settings, knife).name for _, knife in action}
        order += sorted(met, key=lambda name: ([name] != order[-1:], name))
    return [name for name, _ in groupby(order)]


def _left_at(work: WorkLeft, instants: Iterable[datetime]) -> dict[datetime, tuple[MetKnife, ...]]:
    """The knives that somebody could have gone on with at each instant, worked back from what needs the bench now."""
    needing, waiting = set(work.needing), set(work.waiting)
    changes = iter(work.changes)
    newest = next(changes, None)
    left = {}
    for instant in sorted(instants, reverse=True):
        while newest is not None and newest.at_us > to_us(instant):
            _take_back(newest, needing, waiting)
            newest = next(changes, None)
        free = (work.knives[knife_id] for knife_id in needing)
        left[instant] = tuple(knife for knife in free if knife.box_id not in waiting)
    return left


def _take_back(change: WorkChange, needing: set[int], waiting: set[int]) -> None:
    if change.knife_id is None:
        (waiting.add if change.more else waiting.discard)(change.box_id)
    else:
        (needing.discard if change.more else needing.add)(change.knife_id)
