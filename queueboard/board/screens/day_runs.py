"""The keys of a run on the day list: begun with the clock, paused for the bell, finished with its time or without."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.widgets import OptionList

from queueboard.board.desk import Desk
from queueboard.board.screens.box_list import BoxListScreen
from queueboard.board.screens.day_lines import run_id
from queueboard.phrases.bench import bench_run, finished_words, next_free_run, own_run
from queueboard.phrases.dates import many
from queueboard.phrases.day import knife_by_id
from queueboard.shop.moving import move_knives
from queueboard.shop.picture import Picture
from queueboard.shop.running import finish_run, finish_untimed, go_on_run, pause_run, start_run, throw_away
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.values.plan import Run
from queueboard.words import Column

NOT_ON_A_RUN = "Put the cursor on a run."
NOT_UNDER_WAY = "This run is not under way. + or Enter begins it."


class DayRuns(BoxListScreen):
    """Runs are begun and finished under the cursor; it goes with them, and first to the run that is one's own."""

    BINDING_GROUP_TITLE = "Runs on the day list"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus",
            "go_on",
            "begin this run, or finish it to testing",
            tooltip="Begin the run with the clock; a run under way is finished, its knives go to testing.",
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

    def run_here(self) -> Run | None:
        """The run under the cursor; None, and a sentence, on another line."""
        line = self.current()
        run = next((r for r in self.desk.picture.plan.runs if line is not None and run_id(r) == line.id), None)
        if run is None:
            self.say(NOT_ON_A_RUN, trouble=True)
        return run

    def bench_here(self) -> BenchRun | None:
        """The run under way under the cursor; None, and a sentence, where there is none."""
        run = self.run_here()
        bench = None if run is None else bench_run(run, self.desk.picture)
        if run is not None and bench is None:
            self.say(NOT_UNDER_WAY, trouble=True)
        return bench

    def action_go_on(self) -> None:
        """Begin what is not begun; what is under way, or lies on the bench, goes on to testing."""
        run = self.run_here()
        if run is None:
            return
        if self.is_fresh(run):
            self.begin(run)
        else:
            self._off_the_bench(run, Column.TESTING)

    def action_done(self) -> None:
        """A run on the bench, tested knife in hand, goes straight to ready."""
        run = self.run_here()
        if run is None:
            return
        if any(knife.column is Column.ON_BENCH for knife in _knives(run.knife_ids, self.desk.picture)):
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
            self.say(f"The run of {bench.process} goes on." if paused else "Paused. - or b lets it go on.")

    def action_untimed(self) -> None:
        """Finish the run under way to testing without its time."""
        bench = self.bench_here()
        if bench is not None:
            self._finish(bench, Column.TESTING, timed=False)

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
            self.say(f"The time of that run of {bench.process} counts for nothing.")

    def is_fresh(self, run: Run) -> bool:
        """True for a run that nobody has begun and of which a knife is not on the bench yet."""
        knives = _knives(run.knife_ids, self.desk.picture)
        return run.under_way is None and any(knife.column is Column.RECEIVED for knife in knives)

    def begin(self, run: Run) -> None:
        """Begin a run with the clock, as the plan has it."""
        knives = _knives(run.knife_ids, self.desk.picture)
        if self.attempt(start_run, run.process, knives, run.set_up_seconds, run.seconds) is not None:
            self._go_to_run_of(run.knife_ids)
            self.say(f"Run of {run.process} begun, {many(len(knives), 'knife')} on the bench. The clock runs.")

    def _off_the_bench(self, run: Run, to: Column) -> None:
        """Finish a run; one of somebody else, or of several boxes without a clock, is asked about first."""
        bench = bench_run(run, self.desk.picture)
        knives = tuple(k for k in _knives(run.knife_ids, self.desk.picture) if k.column is Column.ON_BENCH)
        alone = len({knife.box_id for knife in knives}) < 2 if bench is None else bench.started_by == self.desk.initials

        def answered(go: bool | None) -> None:
            if go and bench is None:
                self._move(knives, to)
            elif go and bench is not None:
                self._finish(bench, to)

        if alone:
            answered(True)
            return
        from queueboard.board.screens.run_ask import RunDialog

        self.app.push_screen(RunDialog(self.desk, knives, to, "" if bench is None else bench.started_by), answered)

    def _finish(self, bench: BenchRun, to: Column, *, timed: bool = True) -> None:
        after = self._knife_ids_after()
        tags = ", ".join(k.tag for k in _knives(bench.knife_ids, self.desk.picture) if k.column is Column.ON_BENCH)
        answer = self.attempt(finish_run if timed else finish_untimed, bench, to)
        if answer is not None:
            self.last = answer[0]
            self._go_to_run_of(after)
            self.say(finished_words(self.last, tags, to.value))

    def _move(self, knives: tuple[Knife, ...], to: Column) -> None:
        after = self._knife_ids_after()
        if self.attempt(move_knives, knives, to) is not None:
            self._go_to_run_of((*(knife.id for knife in knives), *after))
            tags = ", ".join(knife.tag for knife in knives)
            self.say(f"{many(len(knives), 'knife')} to {to.value}: {tags}")

    def _knife_ids_after(self) -> tuple[int, ...]:
        """The knives of the runs below the cursor that nobody has begun, in their order."""
        line, runs = self.current(), self.desk.picture.plan.runs
        place = next((at for at, run in enumerate(runs) if line is not None and run_id(run) == line.id), len(runs))
        return tuple(k for run in runs[place + 1 :] if run.under_way is None for k in run.knife_ids)

    def _go_to_run_of(self, knife_ids: tuple[int, ...]) -> None:
        """Put the cursor on the run that holds the first of these knives which is still in one."""
        holder = {knife_id: run for run in self.desk.picture.plan.runs for knife_id in run.knife_ids}
        self.go_to_run(next((holder[knife_id] for knife_id in knife_ids if knife_id in holder), None))

    def go_to_own(self) -> None:
        """Put the cursor on the run that is one's own, else on the next that nobody has begun."""
        picture = self.desk.picture
        self.go_to_run(own_run(picture, self.desk.initials) or next_free_run(picture))

    def go_to_run(self, run: Run | None) -> None:
        """Put the cursor on a run, in sight."""
        wanted = None if run is None else run_id(run)
        place = next((index for index, line in enumerate(self.shown) if line.id == wanted), None)
        if place is not None:
            options = self.query_one(OptionList)
            options.highlighted = place
            # The lines are new: how tall they are is known only once they have been drawn.
            self.call_after_refresh(options.scroll_to_highlight)


def _knives(knife_ids: tuple[int, ...], picture: Picture) -> tuple[Knife, ...]:
    by_id = knife_by_id(picture)
    return tuple(by_id[knife_id] for knife_id in knife_ids if knife_id in by_id)
