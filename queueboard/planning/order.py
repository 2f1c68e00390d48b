"""The plan of all open work. This one function is all that the rest of the shop knows of planning."""

from collections import Counter
from datetime import datetime

from queueboard.planning.clock import bench_clock
from queueboard.planning.errors import PlanError
from queueboard.planning.lateness import forecasts_of
from queueboard.planning.ranks import pieces_of
from queueboard.planning.runs import runs_of
from queueboard.planning.sequence import fresh_order, kept_order
from queueboard.values.plan import BenchWindow, BoxWork, Plan, ProcessWork


def plan_work(
    boxes: tuple[BoxWork, ...],
    processes: tuple[ProcessWork, ...],
    windows: tuple[BenchWindow, ...],
    now: datetime,
    fixed_order: tuple[int, ...] = (),
) -> Plan:
    """Runs in order with their clock, and when they finish each box.

    now: aware, in the shop's zone; it decides which day is today.
    windows: known bench time; the end of the last one is the horizon. Without any, every run is beyond the horizon
    and every unfinished box with a ship-by will be late.
    fixed_order: knife ids of a day list that was printed or begun; () orders afresh. Ids without open work are skipped.
    Knives of waiting boxes are in no run. Handling minutes are told apart and move no finish.
    Raises PlanError, with a sentence, for work that has no meaning.
    """
    _check(boxes, processes)
    clock = bench_clock(windows, now)
    pieces = pieces_of(boxes, now)
    order, changes = kept_order(pieces, fixed_order) if fixed_order else (fresh_order(pieces), ())
    runs = runs_of(order, {process.name: process for process in processes}, clock)
    bench_minutes_today = clock.minutes_on(now.date())
    return Plan(
        runs=runs,
        forecasts=forecasts_of(boxes, runs, clock, now),
        bench_minutes_today=bench_minutes_today,
        # Runs follow each other without a gap, so that the work fills today's bench up to its end or the bench's.
        work_minutes_today=min(bench_minutes_today, runs[-1].end_minute if runs else 0),
        changes=changes,
    )


def _check(boxes: tuple[BoxWork, ...], processes: tuple[ProcessWork, ...]) -> None:
    for process in processes:
        if process.run_size < 1:
            raise PlanError(
                f"Process {process.name} has a run size of {process.run_size}; at least 1 knife must fit in a run."
            )
    names = {process.name for process in processes}
    knives = [knife for box in boxes for knife in box.knives]
    for knife in knives:
        if knife.process not in names:
            raise PlanError(f"Knife {knife.tag} needs the process {knife.process}, which the shop does not have.")
    twice = [knife_id for knife_id, times in Counter(knife.knife_id for knife in knives).items() if times > 1]
    if twice:
        tags = ", ".join(sorted({knife.tag for knife in knives if knife.knife_id in twice}))
        raise PlanError(f"Knife {tags} is in the work twice; nothing was planned.")
