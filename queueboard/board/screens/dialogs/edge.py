"""Questions at the test of an edge: where its spots are, what a wrong reading should have been, the second look."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.errors import RuleError
from queueboard.phrases.testing import both_sets_lines, choice_words, test_words
from queueboard.phrases.typed_bench import parse_force, parse_spots
from queueboard.shop.edge_now import EdgeNow
from queueboard.shop.gauging import SERRATED, correct_reading, mark_spots
from queueboard.shop.testing import look_twice
from queueboard.values.edge import NewSpot, Reading, Spot
from queueboard.words import SecondLook, Stage


def edge_dialog(what: str, desk: Desk, seen: EdgeNow, spot: Spot, stage: Stage) -> Dialog:
    """The question with this name; RuleError where there is nothing to ask about."""
    if what == "spots":
        return SpotsDialog(desk, seen)
    if what == "twice":
        return SecondLookDialog(desk, seen)
    here = seen.edge.at(spot, stage)
    if not here:
        raise RuleError(f"Nothing was read at the {spot.name} {stage.value} yet, so nothing can be wrong there.")
    return WrongDialog(desk, seen, spot, here[-1])


class SpotsDialog(Dialog):
    """Which spots are read, before and after."""

    hint = "Enter marks them · Esc leaves them as they are"

    def __init__(self, desk: Desk, seen: EdgeNow) -> None:
        super().__init__(desk)
        self.knife = seen.knife
        self.teeth = self.knife.edge in SERRATED
        self.spots = Field(", ".join(map(self._typed, seen.spots)), typed_over=False)

    def _typed(self, spot: Spot) -> str:
        place = spot.tooth if self.teeth else spot.from_heel_mm
        tooth = "tooth " if self.teeth else ""
        return spot.name if place is None else f"{spot.name} {tooth}{place}"

    def heading(self) -> str:
        return f"{self.knife.tag}: which spots are read, the same ones before and after?"

    def fields(self) -> ComposeResult:
        what = "its tooth, counted from the heel: heel tooth 3" if self.teeth else "its distance from the heel in mm"
        yield Static(Content(f"Heel first, a comma between; behind each name {what}."))
        yield Row(("spots", self.spots))

    def go(self) -> None:
        self.done(self.attempt(mark_spots, self.knife, self.read(self.spots, self._read)))

    def _read(self, text: str) -> tuple[NewSpot, ...]:
        return parse_spots(text, teeth=self.teeth)


class WrongDialog(Dialog):
    """What a reading should have been: it is struck, and the right one is written beside it."""

    hint = "Enter on, at the end it is struck · Esc leaves it as it is"

    def __init__(self, desk: Desk, seen: EdgeNow, spot: Spot, reading: Reading) -> None:
        super().__init__(desk)
        self.knife, self.spot, self.reading = seen.knife, spot, reading
        self.force = Field(hint="the right push in gf (empty: it was none)", check=parse_force)
        self.why = Field(hint="why, for the history")

    def heading(self) -> str:
        stage, force = self.reading.stage.value, self.reading.force_gf
        return f"{self.knife.tag}, {self.spot.name} {stage}: {force} gf is wrong. What is right?"

    def fields(self) -> ComposeResult:
        yield Row(("right is", self.force))
        yield Row(("why", self.why))

    def go(self) -> None:
        force = self.read_or(self.force, parse_force, None)
        self.done(self.attempt(correct_reading, self.knife, self.reading, force, self.why.value))


class SecondLookDialog(Dialog):
    """What becomes of a knife that is not OK the second time, and why."""

    hint = "a digit takes its line · Enter on, at the end it is stored · Esc leaves the knife where it is"

    def __init__(self, desk: Desk, seen: EdgeNow) -> None:
        super().__init__(desk)
        self.seen = seen
        self.choice = Choice([(choice_words(one), one) for one in SecondLook], across=False)
        self.why = Field(hint="what is seen, and what the customer is told")

    def heading(self) -> str:
        return f"{self.seen.knife.tag} is not OK again: a second look, by another pair of eyes if there is one"

    def fields(self) -> ComposeResult:
        now = self.desk.picture.now
        tests = (test_words(test, now) for test in self.seen.edge.tests[-3:])
        yield Static(Content("\n".join((*both_sets_lines(self.seen), *tests))))
        yield self.choice
        yield Row(("why", self.why))

    def go(self) -> None:
        self.done(self.attempt(look_twice, self.seen.knife, self.choice.value, self.why.value))
