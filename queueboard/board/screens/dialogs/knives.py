"""A knife that came in later, a box that stood unopened at the door, and things that came with a box."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.board.forms.kept_form import KeptForm
from queueboard.board.forms.knife_lines import KnifeLines
from queueboard.board.forms.promise_line import PromiseLine
from queueboard.board.forms.told_part import ToldPart
from queueboard.board.screens.received import ReceivedScreen
from queueboard.errors import TypedError
from queueboard.intake.lines import read_line
from queueboard.intake.small import read_things
from queueboard.phrases.counts import looks_like_words
from queueboard.phrases.dates import many
from queueboard.phrases.intake import line_words
from queueboard.phrases.late import added_words
from queueboard.phrases.typed import parse_count
from queueboard.shop.alike import looks_like
from queueboard.shop.noting import add_thing
from queueboard.shop.receiving import add_knife, open_box


class AddKnifeDialog(Dialog):
    """One knife added to a box that is on the board; its tag is told, to be written on the handle."""

    hint = "Enter adds it · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        self.line = Field(hint="cleaver dull, black handle ! as a birthday present")
        self.echo = Static("")

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        return f"A knife added to box {box.box.number}, {box.customer.name} ({many(len(box.on_hand), 'knife')} here)"

    def fields(self) -> ComposeResult:
        yield Row(("knife", self.line))
        yield self.echo

    def changed(self) -> None:
        settings = self.desk.picture.settings
        try:
            said = line_words(read_line(self.line.value, settings), settings)
        except TypedError as question:
            said = str(question) if self.line.value.strip() else ""
        self.echo.update(Content(said))

    def go(self) -> None:
        settings = self.desk.picture.settings
        line = self.read(self.line, lambda text: read_line(text, settings))
        if line.count != 1:
            raise TypedError(f"{line.count} knives in one line; add them one by one, each gets its own tag.")
        twins = looks_like(self.desk.picture, line.knife, in_box=self.box_id)
        if twins:
            self.insist(line.typed, looks_like_words(twins))
        tag = self.attempt(add_knife, self.box_now(self.box_id).box, line.knife)
        if tag is None:
            return
        box = self.box_now(self.box_id)
        self.app.notify(added_words(tag[0], box, self.desk.picture.now), markup=False)
        self.dismiss(True)
        self.app.push_screen(ReceivedScreen(self.desk, box.box.number, added=tag[0]))


class OpenBoxDialog(Dialog, KeptForm[bool]):
    """Open a box that nobody has counted: count first, then the note, then each knife, last which date holds."""

    BINDING_GROUP_TITLE = "Opening a box"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("f3", "take_day", "promise the earliest day", id="open.day")]
    hint = "count before the note is read · up goes back · F3 the earliest day · Enter at the end opens · Esc leaves"
    DEFAULT_CSS = """
    OpenBoxDialog KnifeLines VerticalScroll { max-height: 7; }
    """

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        self.counted = Field(hint="counted by hand, twice, before the note is read", check=parse_count)
        self.note_says = Field(hint="what the customer's note says, if there is one", check=parse_count)
        self.lines = KnifeLines(desk)
        self.things = Field(hint="sheath, roll: with commas between")
        self.told = ToldPart(desk, self.box_now(box_id))
        self.when = PromiseLine(desk)

    def kept_as(self) -> str:
        return f"opening-{self.box_now(self.box_id).box.number}"

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        return f"Open box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        yield Row(("counted", self.counted))
        yield Row(("note says", self.note_says))
        yield self.lines
        yield Row(("comes with", self.things))
        yield self.told
        yield self.when

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        self.lines.count_to(self.counted.value, self.note_says.value)
        self.when.ask(self.told.wish(self.lines.knives))

    def action_take_day(self) -> None:
        """Tell the day that can honestly be told now that its knives are typed."""
        if self.when.advice is not None and self.when.advice.day_to_tell is not None:
            self.told.take_day(self.when.advice.day_to_tell)

    def go(self) -> None:
        counted = self.read(self.counted, parse_count)
        note_says = self.read_or(self.note_says, parse_count, None)
        if self.lines.line.value.strip() and not self.lines.take():
            return
        box, things, told = self.box_now(self.box_id).box, read_things(self.things.value), self.told.read(self)
        if told is not None:
            self.when.before_a_no(self)
            told = self.when.with_sum(told)
        opened = self.attempt(open_box, box, counted, self.lines.knives, things, note_says, promise=told)
        if opened is not None:
            self.kept.forget()
            self.app.notify(f"Tags {box.number}-1 to {box.number}-{counted} for the handles.", markup=False)
        self.done(opened)


class ThingDialog(Dialog):
    """Something more that came with the box and must go back."""

    hint = "Enter adds it · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        self.thing = Field(hint="sheath, roll, towel, block")

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        return f"What else came with box {box.box.number}, {box.customer.name}?"

    def fields(self) -> ComposeResult:
        yield Row(("comes with", self.thing))

    def go(self) -> None:
        self.done(self.attempt(add_thing, self.box_now(self.box_id).box, self.thing.value))
