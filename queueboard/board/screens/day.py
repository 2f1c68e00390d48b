"""The day list: today's work in order, begun and finished from here, printed from here."""

from datetime import date
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.desk import Desk
from queueboard.board.screens.box_list import Line
from queueboard.board.screens.day_lines import day_heading, day_lines
from queueboard.board.screens.day_runs import DayRuns
from queueboard.board.screens.paper_out import write_paper
from queueboard.board.screens.papers import day_paper
from queueboard.board.sheets import keep_order
from queueboard.errors import FileError
from queueboard.phrases import helping
from queueboard.shop.numbers import fix_day_list
from queueboard.shop.picture import Picture


class DayScreen(DayRuns):
    """Runs in order. The order stands until it is asked for again; the first look of a day fixes it."""

    HELP = helping.DAY
    BINDING_GROUP_TITLE = "On the day list"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("o", "sort", "sort again", id="day.sort"),
        Binding("h", "week", "the week ahead", id="day.week"),
        Binding("u", "undo", "undo", id="day.undo"),
        Binding("v", "write", "write to a file, to print it", id="day.write"),
        Binding("B", "type_back", "type a sheet back", id="day.type-back"),
        Binding("d", "leave", "back to the board", id="day.leave", show=False),
    ]
    KEYS = "+ begin, finish · * ready · - bell · n untimed · h week · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.day: date | None = None

    def on_mount(self) -> None:
        """Begin at the run that is one's own, else at the next that is free."""
        super().on_mount()
        self.go_to_own()

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
        """On a run: begin it. Elsewhere: to the box."""
        line = self.current()
        on_a_run = line is not None and line.number is None and line.stops
        run = self.run_here() if on_a_run and not self.typed else None
        if run is None:
            super().action_choose()
        elif self.is_fresh(run):
            self.begin(run)
        else:
            self.say("This run is on the bench. + moves it on to testing, * straight to ready.")

    def action_week(self) -> None:
        """Show how full today and the days after are."""
        from queueboard.board.screens.week import WeekScreen

        self.app.push_screen(WeekScreen(self.desk))

    def action_undo(self) -> None:
        """Take back a step."""
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))

    def action_type_back(self) -> None:
        """Type the newest sheet back, after a power cut."""
        from queueboard.board.screens.type_back import TypeBackScreen

        self.app.push_screen(TypeBackScreen(self.desk))

    def action_write(self) -> None:
        """Write the sheet beside the shop file, as text and as a page, and say where."""
        name, text, page = day_paper(self.desk.picture)
        try:
            path = write_paper(self.desk, f"{name}.txt", text)
            write_paper(self.desk, f"{name}.html", page)
            keep_order(self.desk)
        except FileError as error:
            self.say(str(error), trouble=True)
        else:
            self.say(f"Written to {path}, and as a page beside it. Print it from there.")
