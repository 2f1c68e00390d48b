"""Which run of the day list is under the cursor, and where the cursor goes when runs are begun and finished."""

from textual.widgets import OptionList

from queueboard.board.screens.box_list import BoxListScreen
from queueboard.board.screens.day_lines import run_id
from queueboard.phrases.bench import bench_run, next_free_run, own_run
from queueboard.phrases.day import knife_by_id
from queueboard.shop.picture import Picture
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.values.plan import Run
from queueboard.words import Column

NOT_ON_A_RUN = "Put the cursor on a run."
NOT_UNDER_WAY = "This run is not under way. + or Enter begins it."


class RunCursor(BoxListScreen):
    """A list with runs among its lines."""

    def run_here(self) -> Run | None:
        """The run under the cursor, and no number typed any more; None, and a sentence, on another line."""
        self.typed = ""
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

    def is_fresh(self, run: Run) -> bool:
        """True for a run that nobody has begun and of which a knife is not on the bench yet."""
        knives = knives_of(run.knife_ids, self.desk.picture)
        return run.under_way is None and any(knife.column is Column.RECEIVED for knife in knives)

    def knife_ids_after(self) -> tuple[int, ...]:
        """The knives of the runs below the cursor that nobody has begun, in their order."""
        line, runs = self.current(), self.desk.picture.plan.runs
        place = next((at for at, run in enumerate(runs) if line is not None and run_id(run) == line.id), len(runs))
        return tuple(k for run in runs[place + 1 :] if run.under_way is None for k in run.knife_ids)

    def go_to_run_of(self, knife_ids: tuple[int, ...]) -> None:
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


def knives_of(knife_ids: tuple[int, ...], picture: Picture) -> tuple[Knife, ...]:
    """The knives with these ids that are on the board, in the order of the ids."""
    by_id = knife_by_id(picture)
    return tuple(by_id[knife_id] for knife_id in knife_ids if knife_id in by_id)
