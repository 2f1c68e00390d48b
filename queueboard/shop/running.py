"""Runs at the bench: begun, paused when the bell rings, finished with their time or without it."""

from collections.abc import Sequence

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.records.runs import open_runs, run_by_id
from queueboard.records.tables import BenchRunRow, RunKnifeRow
from queueboard.records.writing import Writing
from queueboard.settings.rules import knife_minutes
from queueboard.shop import rows
from queueboard.shop.moving import pass_on, place_knives
from queueboard.shop.operation import operation
from queueboard.shop.run_laws import at_the_bench, end_run, going_on, in_whose_run
from queueboard.shop.settings_now import settings_in
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.words import Column

LONGEST_SET_UP = 14_400
"""Seconds, as in the settings."""


@operation()
def start_run(
    writing: Writing, process: str, knives: Sequence[Knife], set_up_seconds: int, planned_seconds: int | None = None
) -> int:
    """Begin a run: its knives go to the bench, and the clock runs; returns the run's id.

    set_up_seconds: 0 to 14,400, as planned. planned_seconds: what the plan gives the knives, without the set-up; None
    takes the starter minutes. Refused when a knife is in another run under way, or the person has a run going on.
    """
    settings = settings_in(writing.database)
    if process not in [known.name for known in settings.processes]:
        raise TypedError(f"The shop has no process called {clean(process, field='process')!r}.")
    if not knives:
        raise TypedError("No knife is chosen for the run.")
    if not 0 <= set_up_seconds <= LONGEST_SET_UP:
        raise TypedError(f"A set-up of {set_up_seconds} seconds is outside 0 to {LONGEST_SET_UP}.")
    if planned_seconds is not None and planned_seconds < 0:
        raise TypedError(f"The plan cannot give the knives {planned_seconds} seconds.")
    _one_at_a_time(writing, writing.actor.initials)
    _free_for_a_run(writing, knives)
    seconds = {knife.id: 60 * knife_minutes(settings, knife) for knife in knives}
    nominal = sum(seconds.values())
    writing.tell(tags=[knife.tag for knife in knives], to=process)
    run_id = writing.insert(
        BenchRunRow,
        process=process,
        started_us=writing.now_us,
        started_by=writing.actor.initials,
        nominal_seconds=nominal + set_up_seconds,
        planned_seconds=(nominal if planned_seconds is None else planned_seconds) + set_up_seconds,
        set_up_seconds=set_up_seconds,
        paused_us=None,
        paused_total_us=0,
        finished_us=None,
        timed=1,
    )
    for knife in knives:
        writing.insert(RunKnifeRow, run_id=run_id, knife_id=knife.id, nominal_seconds=seconds[knife.id])
    place_knives(writing, knives, Column.ON_BENCH)
    return run_id


@operation()
def pause_run(writing: Writing, run: BenchRun) -> None:
    """Stop the clock of a run for a while: the bell rings."""
    if _under_way(writing, run).paused_at is not None:
        raise RuleError("That run is paused already.")
    _tell(writing, run)
    writing.change(BenchRunRow, run.id, run.version, paused_us=writing.now_us)


@operation()
def go_on_run(writing: Writing, run: BenchRun) -> None:
    """Let the clock of a paused run go on."""
    if _under_way(writing, run).paused_at is None:
        raise RuleError("That run is not paused.")
    _one_at_a_time(writing, run.started_by)
    _tell(writing, run)
    going_on(writing, run)


@operation()
def finish_run(writing: Writing, run: BenchRun, to: Column = Column.TESTING) -> BenchRun:
    """Finish a run: the clock stops, and its knives at the bench go to testing or ready; returns the run with its time.

    A run that somebody paused is finished as of its pause.
    """
    return _finish(writing, run, to, timed=True)


@operation()
def finish_untimed(writing: Writing, run: BenchRun, to: Column = Column.TESTING) -> BenchRun:
    """Finish a run without timing: its knives go on, its time counts for nothing."""
    return _finish(writing, run, to, timed=False)


@operation()
def throw_away(writing: Writing, run: BenchRun) -> None:
    """Throw the time of a run away, under way or finished; its work stays."""
    stored = run_by_id(writing.database, run.id)
    if stored is not None and not stored.timed:
        raise RuleError("The time of that run counts for nothing already.")
    _tell(writing, run)
    writing.change(BenchRunRow, run.id, run.version, timed=0)


@operation()
def leave_run(writing: Writing, run: BenchRun) -> None:
    """Leave a run: its knives at the bench are received again, as if not begun; what went forward stays done."""
    _under_way(writing, run)
    _tell(writing, run)
    writing.change(BenchRunRow, run.id, run.version, timed=0)
    place_knives(writing, _at_the_bench(writing, run), Column.RECEIVED)


def _finish(writing: Writing, run: BenchRun, to: Column, *, timed: bool) -> BenchRun:
    if to not in (Column.TESTING, Column.READY):
        raise RuleError("The knives of a finished run go to testing or to ready.")
    stored = _under_way(writing, run)
    _tell(writing, run)
    end_run(writing, run, timed=timed and stored.timed)
    pass_on(writing, _at_the_bench(writing, run), to)
    return run_by_id(writing.database, run.id) or stored


def _at_the_bench(writing: Writing, run: BenchRun) -> list[Knife]:
    return [knife for knife in rows.knives_of_run(writing.database, run.id) if at_the_bench(knife)]


def _under_way(writing: Writing, run: BenchRun) -> BenchRun:
    """The run as it is stored now; refused when it is over."""
    stored = run_by_id(writing.database, run.id)
    if stored is None or stored.finished_at is not None:
        raise RuleError(f"That run of {run.started_by}'s is over already; nothing was stored. Look again.")
    return stored


def _one_at_a_time(writing: Writing, initials: str) -> None:
    for run in open_runs(writing.database):
        if run.started_by == initials and run.paused_at is None:
            raise RuleError(
                f"{initials} has a run of {run.process} going on: "
                "finish it, pause it, or say done without timing first."
            )


def _free_for_a_run(writing: Writing, knives: Sequence[Knife]) -> None:
    run_of = {knife_id: run for run in open_runs(writing.database) for knife_id in run.knife_ids}
    for knife in knives:
        if knife.id in run_of:
            raise RuleError(in_whose_run(knife, run_of[knife.id]))


def _tell(writing: Writing, run: BenchRun) -> None:
    writing.tell(tags=[knife.tag for knife in rows.knives_of_run(writing.database, run.id)], to=run.process)
