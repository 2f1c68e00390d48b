"""The keys of a run on the day list: begun with the clock, paused for the bell, finished with its time or without."""

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.desk import Desk
from queueboard.board.screens.day_cursor import NOT_UNDER_WAY, RunCursor, knives_of
from queueboard.board.screens.day_lines import run_id
from queueboard.phrases.bench import (
    at_the_test_words,
    begun_words,
    bench_run,
    finished_words,
    just_begun_words,
    wished_words,
)
from queueboard.phrases.dates import many
from queueboard.shop.moving import move_knives
from queueboard.shop.running import finish_run, finish_untimed, go_on_run, pause_run, start_run, throw_away
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.values.plan import Run
from queueboard.words import Column


class DayRuns(RunCursor):
    """Runs are begun and finished under the cursor, which goes with them."""

    BINDING_GROUP_TITLE = "Runs on the day list"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus",
            "go_on",
            "begin this run, or finish it to testing",
            tooltip="Begin the run with the clock; finish one under way, its knives go to testing.",
            id="run.on",
        ),
        Binding(
            "asterisk,g",
            "done",
            "finish this run straight to ready",
            tooltip="Finish the run, its knives go straight to ready.",
            id="run.done",
        ),
        Binding(
            "minus,b",
            "bell",
            "the bell: pause, then go on",
            tooltip="Stop the clock of the run while the bell rings; once more lets it go on.",
            id="run.bell",
        ),
        Binding(
            "n",
            "untimed",
            "done without timing",
            tooltip="Finish the run to testing; its time counts for nothing.",
            id="run.untimed",
        ),
        Binding(
            "x",
            "throw_away",
            "throw this time away",
            tooltip="The time of the run under the cursor, or of the one just finished, counts for nothing.",
            id="run.throw",
        ),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.last: BenchRun | None = None
        """The run that was finished last on this screen, while its time may still be thrown away."""

    def action_go_on(self) -> None:
        """Begin what is not begun; what is under way, or lies on the bench, goes on to testing."""
        run = self.run_here()
        if run is None:
            return
        bench = bench_run(run, self.desk.picture)
        if self.is_fresh(run):
            self.begin(run)
        elif bench is not None and self._is_own(bench) and (soon := just_begun_words(bench, self.desk.clock())):
            self.say(soon, trouble=True)
        else:
            self._off_the_bench(run, Column.TESTING)

    def action_done(self) -> None:
        """A run on the bench, tested knife in hand, goes straight to ready."""
        run = self.run_here()
        if run is None:
            return
        if any(knife.column is Column.ON_BENCH for knife in knives_of(run.knife_ids, self.desk.picture)):
            self._off_the_bench(run, Column.READY)
        else:
            self.say("This run is not begun. + begins it.", trouble=True)

    def action_bell(self) -> None:
        """Stop the clock of the run under way, or let it go on."""
        bench = self.bench_here()
        if bench is None:
            return
        paused = bench.paused_at is not None
        if self.attempt(go_on_run if paused else pause_run, bench) is not None:
            said = f"The run of {bench.process} goes on." if paused else "Paused. - or b lets it go on."
            self.say(f"{said}{self._whose(bench)}")

    def action_untimed(self) -> None:
        """Finish the run under way to testing without its time."""
        run = self.run_here()
        if run is not None and self.bench_here() is not None:
            self._off_the_bench(run, Column.TESTING, timed=False)

    def action_throw_away(self) -> None:
        """Let the time of the run under the cursor, or of the one finished last, count for nothing."""
        line = self.current()
        runs = self.desk.picture.plan.runs
        here = next((r for r in runs if line is not None and r.under_way is not None and run_id(r) == line.id), None)
        bench = self.last if here is None else bench_run(here, self.desk.picture)
        if bench is None:
            self.say(f"{NOT_UNDER_WAY} A time is thrown away here only right after its run.", trouble=True)
        elif self.attempt(throw_away, bench) is not None:
            self.last = None
            self.say(f"The time of that run of {bench.process} counts for nothing.{self._whose(bench)}")

    def begin(self, run: Run) -> None:
        """Begin a run with the clock, as the plan has it."""
        knives = knives_of(run.knife_ids, self.desk.picture)
        if self.attempt(start_run, run.process, knives, run.set_up_seconds, run.seconds) is not None:
            self.go_to_run_of(run.knife_ids)
            self.say(begun_words(run, len(knives)))

    def _is_own(self, bench: BenchRun) -> bool:
        return bench.started_by == self.desk.initials

    def _whose(self, bench: BenchRun) -> str:
        """A word more where somebody else's run was touched."""
        return "" if self._is_own(bench) else f" The run is {bench.started_by}'s; u takes this back."

    def _off_the_bench(self, run: Run, to: Column, *, timed: bool = True) -> None:
        """Finish a run; one of somebody else, or of several boxes without a clock, is asked about first."""
        bench = bench_run(run, self.desk.picture)
        knives = tuple(k for k in knives_of(run.knife_ids, self.desk.picture) if k.column is Column.ON_BENCH)
        alone = len({knife.box_id for knife in knives}) < 2 if bench is None else self._is_own(bench)

        def answered(go: bool | None) -> None:
            if go and bench is None:
                self._move(knives, to)
            elif go and bench is not None:
                self._finish(bench, to, timed=timed)

        if alone:
            answered(True)
            return
        from queueboard.board.screens.run_ask import RunDialog

        self.app.push_screen(RunDialog(self.desk, knives, to, "" if bench is None else bench.started_by), answered)

    def _finish(self, bench: BenchRun, to: Column, *, timed: bool) -> None:
        after = self.knife_ids_after()
        knives = [k for k in knives_of(bench.knife_ids, self.desk.picture) if k.column is Column.ON_BENCH]
        tags = ", ".join(knife.tag for knife in knives)
        answer = self.attempt(finish_run if timed else finish_untimed, bench, to)
        if answer is not None:
            self.last = answer[0]
            self.go_to_run_of(after)
            self.say(f"{finished_words(self.last, tags, to.value)}{_besides(knives, to)}")

    def _move(self, knives: tuple[Knife, ...], to: Column) -> None:
        after = self.knife_ids_after()
        if self.attempt(move_knives, knives, to) is not None:
            self.go_to_run_of((*(knife.id for knife in knives), *after))
            tags = ", ".join(knife.tag for knife in knives)
            self.say(f"{many(len(knives), 'knife')} to {to.value}: {tags}.{_besides(knives, to)}")


def _besides(knives: Sequence[Knife], to: Column) -> str:
    """Which knives stay at the test, and what was wished of those that are said OK."""
    return f"{at_the_test_words(knives, to)}{wished_words(knives, to)}"
