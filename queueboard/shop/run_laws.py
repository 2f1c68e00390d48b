"""What holds for every run under way when an action ends, whatever the action was.

A knife that leaves the bench forward stays counted in its run. One that leaves it any other way (taken back, waiting,
declined, struck) is out of the run. When no knife of a run is at the bench any more the run is over: with its time
when something of it went forward, without when nothing did. A knife is at the bench in one run only.
"""

from queueboard.errors import RuleError
from queueboard.records.runs import open_runs, run_knife_rows
from queueboard.records.tables import BenchRunRow, RunKnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.words import Column


def at_the_bench(knife: Knife) -> bool:
    """True while somebody can go on with it there."""
    return (
        knife.column is Column.ON_BENCH
        and knife.declined is None
        and knife.waiting_for is None
        and not knife.looking_for
    )


def keep_runs(writing: Writing) -> None:
    """Put right, or refuse, every run under way."""
    taken: set[int] = set()
    for run in open_runs(writing.database):
        knives = rows.knives_of_run(writing.database, run.id)
        _take_out(writing, run, [knife for knife in knives if not at_the_bench(knife) and not knife.bench_is_done])
        here = [knife for knife in knives if at_the_bench(knife)]
        if not here:
            end_run(writing, run, timed=run.timed and any(knife.bench_is_done for knife in knives))
        for knife in here:
            if knife.id in taken:
                raise RuleError(f"{in_whose_run(knife, run)} Nothing was stored.")
            taken.add(knife.id)


def end_run(writing: Writing, run: BenchRun, *, timed: bool) -> None:
    """Stop the clock of a run; a pause under way ends with it."""
    going_on(writing, run, finished_us=writing.now_us, timed=int(timed))


def going_on(writing: Writing, run: BenchRun, **values: int) -> None:
    """End the pause of a run, where it is paused, and change what else is given."""
    row = writing.row(BenchRunRow, run.id) or {}
    paused_us, total_us = row.get("paused_us"), int(row.get("paused_total_us") or 0)
    if paused_us is not None:
        total_us += max(0, writing.now_us - int(paused_us))
    writing.change(BenchRunRow, run.id, None, paused_us=None, paused_total_us=total_us, **values)


def in_whose_run(knife: Knife, run: BenchRun) -> str:
    """The sentence that refuses a knife that somebody has in hand."""
    return f"{knife.tag} is in {run.started_by}'s run; finish that first, or leave it."


def _take_out(writing: Writing, run: BenchRun, knives: list[Knife]) -> None:
    out = {knife.id for knife in knives}
    for row_id, knife_id in run_knife_rows(writing.database, run.id) if out else ():
        if knife_id in out:
            writing.remove(RunKnifeRow, row_id)
