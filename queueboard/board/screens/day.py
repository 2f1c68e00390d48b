"""The day list: today's work in order, started from here, printed from here."""

from datetime import date
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widgets import OptionList

from queueboard.board.desk import Desk
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.day_lines import day_heading, day_lines, run_id
from queueboard.board.screens.paper_out import write_paper
from queueboard.errors import FileError
from queueboard.papers.day_sheet import day_sheet
from queueboard.phrases.dates import many
from queueboard.shop.moving import move_knives
from queueboard.shop.numbers import fix_day_list
from queueboard.shop.picture import Picture
from queueboard.values.knife import Knife
from queueboard.words import Column


class DayScreen(BoxListScreen):
    """Runs in order. The order stands until it is asked for again; the first look of a day fixes it."""

    BINDING_GROUP_TITLE = "On the day list"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus", "start", "start this run, or on to testing", id="day.start"),
        Binding("asterisk,g", "done", "this run straight to ready", id="day.done"),
        Binding("o", "sort", "sort again", id="day.sort"),
        Binding("u", "undo", "undo", id="day.undo"),
        Binding("v", "write", "write to a file, to print it", id="day.write"),
        Binding("d", "leave", "back to the board", id="day.leave", show=False),
    ]
    KEYS = "Enter or + start, + on · * to ready · o sort again · u undo · v file · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.day: date | None = None

    def show(self, picture: Picture) -> None:
        """Show a new picture; the first one of a day fixes the order."""
        super().show(picture)
        if self.children and picture.now.date() != self.day:
            self.day = picture.now.date()
            if not picture.order_fixed:
                self._fix()

    def heading(self, picture: Picture) -> Content:
        """What the day holds."""
        return day_heading(picture)

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Runs, what leaves, labels, who is waited for."""
        return day_lines(picture)

    def _fix(self) -> None:
        picture = self.desk.look_for_a_day_list()
        order = tuple(run.knife_ids for run in picture.plan.runs)
        if order:
            self.attempt(fix_day_list, picture.now.date(), order)

    def action_sort(self) -> None:
        """Forget the order, sort afresh, and fix what comes out."""
        if self.attempt(fix_day_list, self.desk.picture.now.date(), ()) is not None:
            self._fix()
            self.say("Sorted again.")

    def action_choose(self) -> None:
        """On a run: put it on the bench. Elsewhere: to the box."""
        knives = self._run_knives()
        if self.typed or knives is None:
            super().action_choose()
        elif any(knife.column is Column.RECEIVED for knife in knives):
            self.action_start()
        else:
            self.say("This run is on the bench. + moves it on to testing, * straight to ready.")

    def _run_knives(self) -> tuple[Knife, ...] | None:
        """The knives of the run under the cursor, in its order; None on another line."""
        line = self.current()
        run = next((r for r in self.desk.picture.plan.runs if line is not None and run_id(r) == line.id), None)
        if run is None:
            return None
        by_id = {knife.id: knife for box in self.desk.picture.boxes for knife in box.knives}
        return tuple(by_id[knife_id] for knife_id in run.knife_ids if knife_id in by_id)

    def action_start(self) -> None:
        """Knives not begun go to the bench; a run that is on the bench goes on to testing."""
        knives = self._run_knives()
        if knives is None:
            self.say("Put the cursor on a run.", trouble=True)
            return
        fresh = tuple(knife for knife in knives if knife.column is Column.RECEIVED)
        if fresh:
            self._move(fresh, Column.ON_BENCH)
        else:
            self._off_the_bench(knives, Column.TESTING)

    def action_done(self) -> None:
        """A run on the bench, tested knife in hand, goes straight to ready."""
        knives = self._run_knives()
        if knives is None:
            self.say("Put the cursor on a run.", trouble=True)
            return
        begun = tuple(knife for knife in knives if knife.column is Column.ON_BENCH)
        if not begun:
            self.say("This run is not begun. + puts it on the bench.", trouble=True)
            return
        self._off_the_bench(begun, Column.READY)

    def _off_the_bench(self, knives: tuple[Knife, ...], to: Column) -> None:
        """Move what lies on the bench; knives of several boxes may be several people's work, so that is asked."""
        if len({knife.box_id for knife in knives}) < 2:
            self._move(knives, to)
            return
        from queueboard.board.screens.run_ask import RunDialog

        def answered(go: bool | None) -> None:
            if go:
                self._move(knives, to)

        self.app.push_screen(RunDialog(self.desk, knives, to), answered)

    def _move(self, knives: tuple[Knife, ...], to: Column) -> None:
        after = self._knife_ids_after()
        if self.attempt(move_knives, knives, to) is not None:
            self._go_to_run_of((knives[0].id, *after))
            tags = ", ".join(knife.tag for knife in knives)
            self.say(f"{many(len(knives), 'knife')} to {to.value}: {tags}")

    def _knife_ids_after(self) -> tuple[int, ...]:
        """The knives of the runs below the cursor, in their order."""
        line, runs = self.current(), self.desk.picture.plan.runs
        place = next((at for at, run in enumerate(runs) if line is not None and run_id(run) == line.id), len(runs))
        return tuple(knife_id for run in runs[place + 1 :] for knife_id in run.knife_ids)

    def _go_to_run_of(self, knife_ids: tuple[int, ...]) -> None:
        """Put the cursor on the run that holds the first of these knives which is still in one."""
        holder = {knife_id: run_id(run) for run in self.desk.picture.plan.runs for knife_id in run.knife_ids}
        wanted = next((holder[knife_id] for knife_id in knife_ids if knife_id in holder), None)
        place = next((index for index, line in enumerate(self.shown) if line.id == wanted), None)
        if place is not None:
            options = self.query_one(OptionList)
            options.highlighted = place
            # The lines are new: how tall they are is known only once they have been drawn.
            self.call_after_refresh(options.scroll_to_highlight)

    def action_undo(self) -> None:
        """Take back a step."""
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))

    def action_write(self) -> None:
        """Write the sheet beside the shop file and say where."""
        picture = self.desk.picture
        try:
            path = write_paper(self.desk, f"day-{picture.now.date().isoformat()}.txt", day_sheet(picture))
        except FileError as error:
            self.say(str(error), trouble=True)
        else:
            self.say(f"Written to {path}. Print it from there.")
