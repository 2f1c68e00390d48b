"""The bench: belts, the tester, trials, before and after, and the charts; a digit goes to its section."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Key
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.screens.bench_lines import (
    belt_lines,
    change_lines,
    chart_section,
    tester_lines,
    trial_lines,
)
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.phrases import helping
from queueboard.phrases.edges import wobble_words
from queueboard.shop.belt_counts import BeltPlace, belt_places
from queueboard.shop.comparing import worked_seen
from queueboard.shop.edges_seen import ChartSeen, charts_seen
from queueboard.shop.fitting import fit_belt
from queueboard.shop.picture import Picture
from queueboard.shop.trial_results import TrialSeen, trials_seen
from queueboard.shop.trialling import end_trial
from queueboard.shop.wobbling import begin_study_over, study_now, wobble_now

SECTIONS = ("belts", "tester", "trials", "before and after", "chart")
CHART = SECTIONS.index("chart")
DOES = (
    "+ fit, or take off · / count spares",
    "+ study, next reading · - begin over",
    "+ begin a trial · - end this one",
    "nothing to do here",
    "s set the stable period",
)
"""What the keys do in each section."""


class BenchScreen(BoxListScreen):
    """What the shop knows of its belts, its tester and its edges."""

    HELP = helping.BENCH
    BINDING_GROUP_TITLE = "At the bench: belts, tester, trials"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus", "on", "fit or take off, study, begin a trial", id="bench.on"),
        Binding("minus", "back", "begin the study over, end the trial", id="bench.back"),
        Binding("slash", "spares", "count spares", id="bench.spares"),
        Binding("s", "stable", "set the stable period of a chart", id="bench.stable"),
        Binding("u", "undo", "undo", id="bench.undo"),
        Binding("k", "leave", "back", id="bench.leave", show=False),
    ]

    def __init__(self, desk: Desk, section: int = 0) -> None:
        """Section: the place among SECTIONS that is shown first."""
        super().__init__(desk)
        self.section = section
        self.places: tuple[BeltPlace, ...] = ()
        self.trials: tuple[TrialSeen, ...] = ()
        self.charts: tuple[ChartSeen, ...] = ()

    def first_show(self) -> None:
        """Belts are there at once; another section may take a while to be worked out."""
        if self.section:
            self.work(SECTIONS[self.section], super().first_show)
        else:
            super().first_show()

    def heading(self, picture: Picture) -> Content:
        """The sections, the one that is shown with the mark, and below them how much a figure is worth."""
        names = [f"{'▸' if n == self.section + 1 else ' '}{n} {name} " for n, name in enumerate(SECTIONS, 1)]
        wobble = "" if self.section < 2 else f"\n{wobble_words(wobble_now(self.desk.shop), picture.now)}"
        return Content.assemble(("bench ", "bold"), " ".join(names), wobble)

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """The lines of the section that is shown."""
        shop, now, width = self.desk.shop, picture.now, self.app.size.width - 4
        self.query_one("#keys", Static).update(f"{DOES[self.section]} · 1-5 section · u undo · ? keys · . back")
        match self.section:
            case 0:
                self.places = belt_places(shop)
                return tuple(belt_lines(self.places, now))
            case 1:
                return tuple(tester_lines(wobble_now(shop), study_now(shop), now, width))
            case 2:
                self.trials = trials_seen(shop)
                return tuple(trial_lines(self.trials, now, width))
            case 3:
                return tuple(change_lines(worked_seen(shop), width))
            case _:
                self.charts = charts_seen(shop, now)
                return tuple(chart_section(self.charts, now, width, max(8, self.app.size.height - 14)))

    def on_key(self, event: Key) -> None:
        """A digit goes to its section."""
        event.prevent_default()  # a list of boxes would take the digit for a box
        if event.character and event.character in "12345":
            event.stop()
            self.section = int(event.character) - 1
            self.begin_at_the_top()
            self.work(SECTIONS[self.section], lambda: self.show(self.desk.picture))

    def _here(self) -> str:
        line = self.current()
        return "" if line is None else line.id

    def _place(self) -> BeltPlace | None:
        here = self._here()
        return next((place for place in self.places if f"{place.process}/{place.step}" == here), None)

    def action_choose(self) -> None:
        """As plus."""
        self.action_on()

    def action_on(self) -> None:
        from queueboard.board.screens.dialogs.bench import BeginStudyDialog, StudyDialog, TrialDialog

        if self.section == 0:
            self._belt()
        elif self.section == 1:
            under_way = study_now(self.desk.shop) is not None
            self.app.push_screen(StudyDialog(self.desk) if under_way else BeginStudyDialog(self.desk))
        elif self.section == 2:
            self.app.push_screen(TrialDialog(self.desk))

    def _belt(self) -> None:
        """Fit a belt where none is up; else ask what becomes of the one that is."""
        from queueboard.board.screens.dialogs.bench import OffDialog

        place = self._place()
        if place is None:
            self.say("Put the cursor on a belt.", trouble=True)
        elif place.belt is not None:
            own = next(p.grit_um for p in self.places if (p.process, p.step) == (place.process, place.belt.step))
            free = [p for p in self.places if p.belt is None and p.grit_um <= own]
            self.say("")
            finer = sorted(free, key=lambda p: p.process != place.process)
            self.app.push_screen(OffDialog(self.desk, place.belt, tuple(finer)))
        elif self.attempt(fit_belt, place.process, place.step) is not None:
            low = next((p for p in self.places if p.step == place.step and p.to_order), None)
            order = f" Only {low.spares} left in the drawer: order others." if low is not None else ""
            self.say(f"{place.step} is up for {place.process}.{order}")

    def action_back(self) -> None:
        if self.section == 1:
            study = study_now(self.desk.shop)
            if study is not None and self.attempt(begin_study_over, study) is not None:
                self.say("The study begins at its first knife again. u takes that back.")
        elif self.section == 2:
            seen = next((seen for seen in self.trials if f"trial {seen.trial.id}" == self._here()), None)
            if seen is not None and self.attempt(end_trial, seen.trial) is not None:
                self.say(f"The trial of {seen.trial.belt} is ended: no more knives are drawn. u takes that back.")

    def action_spares(self) -> None:
        from queueboard.board.screens.dialogs.bench import SparesDialog

        place = self._place() if self.section == 0 else None
        if place is None:
            self.say("Go to a belt under 1 belts.", trouble=True)
        else:
            self.app.push_screen(SparesDialog(self.desk, place))

    def action_stable(self) -> None:
        from queueboard.board.screens.dialogs.bench import StableDialog

        chart = next((chart for chart in self.charts if f"chart {chart.process}" == self._here()), None)
        if self.section != 4 or chart is None:
            self.say("Go to a chart under 5 chart.", trouble=True)
        elif len(chart.readings_gf) < 2:
            self.say("One knife says nothing of what is usual; ten or more do.", trouble=True)
        else:
            self.app.push_screen(StableDialog(self.desk, chart))

    def action_undo(self) -> None:
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))
