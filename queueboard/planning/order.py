"""The plan of all open work. This one function is all that the rest of the shop knows of planning."""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from functools import partial

from queueboard.planning.announcing import guessed_seconds
from queueboard.planning.batches import Bench, fresh_batches
from queueboard.planning.begun import with_what_is_left
from queueboard.planning.clock import bench_clock
from queueboard.planning.errors import PlanError
from queueboard.planning.keeping import kept_batches
from queueboard.planning.lateness import finishes_of, forecasts_of
from queueboard.planning.learning import YIELD_SD, Factor, learn
from queueboard.planning.ledger import chances_of, ledger_of, overloads_of
from queueboard.planning.planned import Planned
from queueboard.planning.ranks import pieces_of
from queueboard.planning.reasons import with_reasons
from queueboard.planning.timing import Batch, runs_of
from queueboard.values.plan import (
    BenchWindow,
    BoxWork,
    OrderChange,
    Plan,
    PlanRules,
    ProcessWork,
    Run,
    RunUnderWay,
    UnseenWork,
)

USUAL = PlanRules()
"""One person, fewest late, set-ups saved on repeats."""


def plan_work(
    boxes: tuple[BoxWork, ...],
    processes: tuple[ProcessWork, ...],
    windows: tuple[BenchWindow, ...],
    now: datetime,
    fixed_order: Sequence[Sequence[int]] = (),
    *,
    under_way: tuple[RunUnderWay, ...] = (),
    leaves: tuple[datetime, ...] = (),
    unseen: tuple[UnseenWork, ...] = (),
    rules: PlanRules = USUAL,
    factors: tuple[Factor, ...] | None = None,
    yield_sd: float = YIELD_SD,
) -> Planned:
    """Runs in order with their clock, when they finish each box, and how sure that is.

    now: aware, in the shop's zone. windows: known bench time; without any, every unfinished box with a ship-by will be
    late. fixed_order: knife ids, run by run, of a day list that was printed or begun; () orders afresh.
    unseen: promised boxes not in the door yet, and those not opened; they bind what can be promised, and no run.
    leaves: the coming moments at which boxes can leave; how late a box is counts to the next one.
    factors: how sure the seconds of each process are, in their order; None when nothing was measured.
    yield_sd: how far the bench time of a day strays, as a share of it.
    Knives of waiting boxes are in no run.
    Raises PlanError, with a sentence, for work that has no meaning.
    """
    _check(boxes, processes, rules)
    clock = bench_clock(windows, now, rules.bench_share)
    bench = Bench(processes=processes, clock=clock, now=now, rules=rules, leaves=leaves)
    timed = partial(
        runs_of, processes=bench.by_name, under_way={run.run_id: run for run in under_way}, clock=clock, rules=rules
    )
    sure = (factors or learn((), len(processes)).processes, yield_sd)
    return _planned(with_what_is_left(boxes, under_way), bench, timed, fixed_order, unseen, sure)


def _planned(
    boxes: tuple[BoxWork, ...],
    bench: Bench,
    timed: Callable[[Iterable[Batch]], tuple[Run, ...]],
    fixed_order: Sequence[Sequence[int]],
    unseen: tuple[UnseenWork, ...],
    sure: tuple[tuple[Factor, ...], float],
) -> Planned:
    def late(batches: Iterable[Batch]) -> frozenset[int]:
        return _late(boxes, timed(batches), bench)

    order = fresh_batches(pieces_of(boxes, bench.now), bench, lambda some: sum(map(_seconds, timed(some))))
    changes: tuple[OrderChange, ...] = ()
    if fixed_order:
        order, changes = kept_batches(order, fixed_order, late, bench.now)
    runs = with_reasons(timed(order), order, late(order), bench.now)
    ledger = ledger_of(order, runs, bench, unseen, *sure)
    unopened = sum(guessed_seconds(work) for work in unseen if work.here)
    today = bench.clock.seconds_on(bench.now.date()) * bench.rules.people
    plan = Plan(
        runs=runs,
        forecasts=forecasts_of(boxes, runs, bench, chances_of(ledger)),
        bench_minutes_today=today // 60,
        # Runs follow each other without a gap, so that the work fills today's bench up to its end or the bench's; in
        # whole minutes no more than the bench has of them, for a full day is full and not a minute over.
        work_minutes_today=min(today // 60, (sum(map(_seconds, runs)) + unopened + 30) // 60),
        unopened_seconds=unopened,
        overloads=overloads_of(ledger),
        changes=changes,
    )
    return Planned(plan=plan, ledger=ledger)


def _seconds(run: Run) -> int:
    return run.end_second - run.start_second


def _late(boxes: Iterable[BoxWork], runs: tuple[Run, ...], bench: Bench) -> frozenset[int]:
    """The boxes that these runs finish after their ship-by, or whose ship-by has passed."""
    last = finishes_of(boxes, runs)
    return frozenset(
        box.box_id
        for box in boxes
        if box.ship_by is not None
        and box.box_id in last
        and (box.ship_by < bench.now or last[box.box_id].end_second > bench.clock.seconds_before(box.ship_by))
    )


def _check(boxes: tuple[BoxWork, ...], processes: tuple[ProcessWork, ...], rules: PlanRules) -> None:
    for process in processes:
        if process.run_size < 1:
            raise PlanError(
                f"Process {process.name} has a run size of {process.run_size}; at least 1 knife must fit in a run."
            )
    if rules.people < 1:
        raise PlanError(f"{rules.people} people work at the bench; at least 1 must.")
    names = {process.name for process in processes}
    knives = [knife for box in boxes for knife in box.knives]
    for knife in knives:
        if knife.process not in names:
            raise PlanError(f"Knife {knife.tag} needs the process {knife.process}, which the shop does not have.")
    twice = [knife_id for knife_id, times in Counter(knife.knife_id for knife in knives).items() if times > 1]
    if twice:
        tags = ", ".join(sorted({knife.tag for knife in knives if knife.knife_id in twice}))
        raise PlanError(f"Knife {tags} is in the work twice; nothing was planned.")
