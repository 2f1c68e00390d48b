"""Questions at the bench: what becomes of a belt, spares, the study's readings, a trial's rule, a stable period."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Tick
from queueboard.board.forms.form import Dialog
from queueboard.edges.trial import Draw
from queueboard.errors import TypedError
from queueboard.phrases.typed import parse_count
from queueboard.phrases.typed_bench import parse_force, parse_row, parse_spares, parse_wobbles
from queueboard.settings.rules import process_of
from queueboard.shop.belt_counts import BeltPlace
from queueboard.shop.edges_seen import ChartSeen
from queueboard.shop.fitting import count_spares, move_belt, remove_belt
from queueboard.shop.picture import Picture
from queueboard.shop.stable import set_stable
from queueboard.shop.trialling import begin_trial
from queueboard.shop.wobbling import begin_study, finish_study, next_reading, read_study, study_now
from queueboard.values.fitted import FittedBelt
from queueboard.values.study import TIMES
from queueboard.words import BeltEnd


class OffDialog(Dialog):
    """Why a belt comes off, or where it goes for finer duty."""

    hint = "a digit takes its line · Enter on, at the end it is stored · Esc leaves it up"

    def __init__(self, desk: Desk, belt: FittedBelt, finer: tuple[BeltPlace, ...]) -> None:
        super().__init__(desk)
        self.belt = belt
        answers: list[tuple[str, BeltEnd | BeltPlace]] = [(end.value, end) for end in BeltEnd]
        answers += [(f"worn, moved to finer duty: {place.step} of {place.process}", place) for place in finer[:4]]
        self.what = Choice(answers, across=False)
        self.words = Field(hint="in your own words (may stay empty)")

    def heading(self) -> str:
        return f"Belt {self.belt.label}, {self.belt.step} of {self.belt.process}: what becomes of it?"

    def fields(self) -> ComposeResult:
        yield Static(Content("Isolate the machine and wait until it has stopped: off still coasts."))
        yield self.what
        yield Row(("words", self.words))

    def go(self) -> None:
        what = self.what.value
        if isinstance(what, BeltPlace):
            self.done(self.attempt(move_belt, self.belt, what.process, what.step))
        else:
            self.done(self.attempt(remove_belt, self.belt, what, self.words.value))


class SparesDialog(Dialog):
    """How many new belts of a label lie in the drawer."""

    hint = "Enter sets it · Esc leaves it as it was"

    def __init__(self, desk: Desk, place: BeltPlace) -> None:
        super().__init__(desk)
        self.place = place
        self.spares = Field("" if place.spares is None else str(place.spares), check=parse_spares)

    def heading(self) -> str:
        return f"New {self.place.step} belts in the drawer"

    def fields(self) -> ComposeResult:
        yield Row(("spares", self.spares))

    def go(self) -> None:
        self.done(self.attempt(count_spares, self.place.step, self.read(self.spares, parse_spares)))


class BeginStudyDialog(Dialog):
    """What was changed, and how many knives are read."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.what = Choice([("nothing", ""), ("filament", "filament"), ("tester", "tester")])
        self.knives = Field("10", check=parse_count)

    def heading(self) -> str:
        return "A study of the tester: finished knives, one marked spot on each, three readings of it"

    def fields(self) -> ComposeResult:
        yield Row(("changed", self.what))
        yield Row(("knives", self.knives))

    def go(self) -> None:
        self.done(self.attempt(begin_study, self.what.value, self.read(self.knives, parse_count)))


class StudyDialog(Dialog):
    """One reading after the other; the last one finishes the study."""

    hint = "digits, Enter: the next reading · Esc leaves, and the study waits"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.force = Field(hint="gf", check=parse_force)
        self.study = study_now(desk.shop)
        """As it stands in the heading: a reading goes only to the knife and number that were shown."""

    def heading(self) -> str:
        study, wanted = self.study, None if self.study is None else next_reading(self.study)
        if study is None:
            return "No study is under way any more; Esc leaves"
        if wanted is None:
            return "All readings are there: Enter finishes the study"
        return f"Knife {wanted.knife} of {study.knives}, reading {wanted.number} of {TIMES} at its marked spot"

    def fields(self) -> ComposeResult:
        yield Row(("push in gf", self.force))

    def show(self, picture: Picture) -> None:
        """Another window may have gone on with the study."""
        self.study = study_now(self.desk.shop)
        self.query_one("#heading", Static).update(Content(self.heading()))

    def go(self) -> None:
        if self.study is None:
            raise TypedError("No study is under way; Esc leaves.")
        if next_reading(self.study) is not None:
            force = self.read(self.force, parse_force)
            if self.attempt(read_study, self.study, force) is None:
                return
            self.say(f"{force} gf written down.")
            self.force.clear()
        if self.study is not None and next_reading(self.study) is None:
            self.done(self.attempt(finish_study, self.study))


class TrialDialog(Dialog):
    """The rule of a belt trial, written down before the first knife."""

    hint = "Enter on, at the end the trial begins · Esc leaves"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        kind = desk.picture.settings.kinds[0]
        belts = process_of(desk.picture.settings, kind, kind.edge).belts
        self.kind = Field(kind.name)
        self.belt = Field(belts[-1].label if belts else "")
        self.fall = Field("2", check=parse_wobbles)
        self.halves = Tick("if not OK at least halves", value=True)
        self.each = Field("20", check=parse_count)
        self.draw = Choice([("by lot", Draw.LOT), ("in turn", Draw.ALTERNATE)])

    def heading(self) -> str:
        return "A belt trial: like knives, one half with a belt and one without. The rule comes first."

    def fields(self) -> ComposeResult:
        yield Row(("kind", self.kind))
        yield Row(("belt", self.belt))
        yield Row(("stays if", self.fall), ("wobbles less at the worst spot", Static()))
        yield Row(("or", self.halves))
        yield Row(("each half", self.each))
        yield Row(("halves", self.draw))

    def go(self) -> None:
        settings = self.desk.picture.settings
        kind = settings.kind(self.kind.value)
        if kind is None:
            self.kind.focus()
            raise TypedError("The shop has no such kind. Type it as at receiving: chef.")
        self.done(
            self.attempt(
                begin_trial,
                kind=kind.name,
                process=process_of(settings, kind, kind.edge).name,
                belt=self.belt.value.strip(),
                fall_wobbles=self.read(self.fall, parse_wobbles),
                or_halves_not_ok=self.halves.value,
                each=self.read(self.each, parse_count),
                draw=self.draw.value,
            )
        )


class StableDialog(Dialog):
    """Which readings of a chart were good work."""

    hint = "Enter sets it · Esc leaves it as it was"

    def __init__(self, desk: Desk, chart: ChartSeen) -> None:
        super().__init__(desk)
        self.chart = chart
        self.row = Field(f"1-{min(20, len(chart.readings_gf))}")

    def heading(self) -> str:
        return f"{self.chart.process}: in which readings, counted from the left, was the work good?"

    def fields(self) -> ComposeResult:
        yield Row((f"of {len(self.chart.readings_gf)}", self.row))

    def go(self) -> None:
        first, last = self.read(self.row, lambda text: parse_row(text, len(self.chart.read_at)))
        read_at = self.chart.read_at
        self.done(self.attempt(set_stable, self.chart.process, read_at[first - 1], read_at[last - 1]))
