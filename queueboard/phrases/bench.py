"""The runs at the bench in words: whose, since when, how long so far, whether the bell rang; and which comes next."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from queueboard.phrases.dates import many, minutes_words, time_words, when_words
from queueboard.phrases.day import knife_by_id, run_words
from queueboard.phrases.knives import wishes_words
from queueboard.settings.rules import knife_process
from queueboard.settings.shapes import Settings
from queueboard.shop.measuring import off_by_its_length
from queueboard.shop.picture import Picture
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.values.plan import Run
from queueboard.words import Column, StaysOut


def bench_run(run: Run, picture: Picture) -> BenchRun | None:
    """The run under way that stands behind a run of the plan; None for one that nobody has begun."""
    if run.under_way is None:
        return None
    return next((bench for bench in picture.runs if bench.id == run.under_way.run_id), None)


def next_free_run(picture: Picture) -> Run | None:
    """The first run that nobody has begun: whoever is free takes it."""
    return next((run for run in picture.plan.runs if run.under_way is None), None)


def own_run(picture: Picture, initials: str) -> Run | None:
    """The run of the plan that a person has going on, before one of theirs that is paused; None when they are free."""
    own = [run for run in picture.plan.runs if run.under_way is not None and run.under_way.by == initials]
    going = [run for run in own if (bench := bench_run(run, picture)) is not None and bench.paused_at is None]
    return next(iter((*going, *own)), None)


def run_head_words(run: Run, picture: Picture) -> str:
    """The first line of a run: UNDER WAY plain, 3 knives: MB since 09:12, 14 of 28 min; else clock, process and why."""
    bench = bench_run(run, picture)
    if bench is None:
        return run_words(run, picture)
    word = "UNDER WAY" if bench.paused_at is None else "PAUSED"
    return f"{word} {run.process}, {many(len(run.knife_ids), 'knife')}: {clock_of_run_words(bench, picture.now)}"


def clock_of_run_words(bench: BenchRun, now: datetime) -> str:
    """MB since 09:12, 14 of 28 min; MB since 09:12, paused since 09:30, 18 of 28 min; not timed, once that is so."""
    started = bench.started_at.astimezone(now.tzinfo)
    began = time_words(started) if started.date() == now.date() else when_words(started, now)
    parts = [f"{bench.started_by} since {began}"]
    if bench.paused_at is not None:
        parts.append(f"paused since {time_words(bench.paused_at.astimezone(now.tzinfo))}")
    parts.append(f"{bench.worked_seconds(now) // 60} of {_planned_minutes(bench)} min")
    if not bench.timed:
        parts.append("its time does not count")
    return ", ".join(parts)


def begun_words(run: Run, knives: int) -> str:
    """Run of plain begun, 3 knives on the bench. The clock runs: + done, to testing; - the bell; n without timing."""
    begun = f"Run of {run.process} begun, {many(knives, 'knife')} on the bench."
    return f"{begun} The clock runs:   + done, to testing   - the bell   n done without timing"


def finished_words(bench: BenchRun, tags: str, to: str) -> str:
    """What is said when a run is finished: run of plain finished after 24 min, to testing: 417-1, 417-2."""
    if bench.finished_at is None or not bench.timed:
        return f"Run of {bench.process} done without timing, to {to}: {tags}"
    said = f"Run of {bench.process} finished after {_worked_words(bench, bench.finished_at)}"
    if off := off_words(bench, bench.finished_at):
        return f"{said}, {off}: nothing is learned from its time. To {to}: {tags}"
    return f"{said}, to {to}: {tags}. x throws its time away."


def ended_words(before: Picture, after: Picture, told: int | None = None) -> str:
    """The runs that were under way and are over: The run of plain is over with that, after 24 min, its clock stopped.

    told: the id of a run whose end is told by who asked for it.
    """
    going = {run.id for run in after.runs}
    return " ".join(_ended_words(run, after) for run in before.runs if run.id not in going and run.id != told)


def _ended_words(bench: BenchRun, after: Picture) -> str:
    here = knife_by_id(after)
    done = any(knife_id not in here or here[knife_id].bench_is_done for knife_id in bench.knife_ids)
    off = off_words(bench, after.now)
    if not done or not bench.timed:
        learned = ": its time counts for nothing"
    else:
        learned = f", {off}: nothing is learned from its time" if off else ": its time counts"
    return f"The run of {bench.process} is over with that, after {_worked_words(bench, after.now)}{learned}."


def off_words(bench: BenchRun, now: datetime) -> str:
    """What is wrong with so long a run: under a fifth of its 25 min; over twice its 25 min; empty when nothing is."""
    off = off_by_its_length(bench, now)
    return "" if off is None else f"{off.value} its {_planned_minutes(bench)} min"


def just_begun_words(bench: BenchRun, now: datetime) -> str:
    """What is said instead of finishing a run that nobody can have worked yet; empty once somebody can have."""
    if off_by_its_length(bench, now) is not StaysOut.TOO_SHORT:
        return ""
    return (
        f"Only just begun: {_worked_words(bench, now)} of {_planned_minutes(bench)}, and the clock runs. "
        "n finishes it now, without its time."
    )


def _worked_words(bench: BenchRun, now: datetime) -> str:
    return minutes_words(bench.worked_seconds(now) // 60)


def _planned_minutes(bench: BenchRun) -> int:
    return -(-bench.planned_seconds // 60)


def tested_words(ok: Sequence[Knife], back: Sequence[Knife], settings: Settings) -> str:
    """A tray that was tested: 5 knives OK, to ready; 417-7 (to 16 um) not OK, back on the bench. 417-3 waits."""
    ready = [knife for knife in ok if knife.gauge is None]
    again = ", ".join(f"{knife.tag}{_to_belt(knife, settings)}" for knife in back)
    parts = (
        f"{many(len(ready), 'knife')} OK, to ready" if ready else "",
        f"{again} not OK, back on the bench" if back else "",
    )
    return f"{'; '.join(part for part in parts if part)}.{at_the_test_words(ok, Column.READY)}"


def _to_belt(knife: Knife, settings: Settings) -> str:
    belts = knife_process(settings, knife).belts
    return f" (to {belts[-1].label})" if belts else ""


def wished_words(knives: Iterable[Knife], to: Column) -> str:
    """What was wished of knives that are said OK, behind the sentence that they are ready; else empty."""
    wishes = wishes_words(knives) if to is Column.READY else ""
    return f"   {wishes}" if wishes else ""


def at_the_test_words(knives: Iterable[Knife], to: Column) -> str:
    """What is said of knives that were to go to ready and stay at the test: " 417-3 waits for the gauge."; else empty.

    knives: as they stood before they moved.
    """
    asked = [knife.tag for knife in knives if to is Column.READY and knife.stops_at_test]
    waits = "waits" if len(asked) == 1 else "wait"
    return f" {', '.join(asked)} {waits} at the test for the gauge: E." if asked else ""
