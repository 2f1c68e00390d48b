"""After a power cut: the day sheet typed back in its own order, a line and Enter each; nothing is stored twice."""

from collections.abc import Callable
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.board.sheets import HalfTyped
from queueboard.clean import cell_text
from queueboard.errors import RuleError, TypedError
from queueboard.phrases import helping
from queueboard.phrases.money import too_much_words
from queueboard.phrases.typed import parse_tag
from queueboard.phrases.typed_back import (
    HOW,
    TypedLine,
    cut_off_words,
    paid_already_words,
    read_typed_line,
    sheet_line_words,
)
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.new import NewPayment
from queueboard.words import Column


class TypeBackScreen(ShopScreen[None]):
    """Down the sheet: done or not, paid, Enter."""

    DEFAULT_CSS = """
    TypeBackScreen > #lines { height: 1fr; }
    TypeBackScreen #sheet { height: auto; padding: 0 1; text-wrap: nowrap; text-overflow: ellipsis; }
    TypeBackScreen > #said { height: auto; padding: 0 1; text-style: bold; }
    TypeBackScreen > #answer { margin: 0 1; width: 1fr; }
    """
    HELP = helping.TYPE_BACK
    BINDING_GROUP_TITLE = "A day sheet typed back"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "leave; it goes on from here", id="back.leave"),
        Binding("up", "step(-1)", "line before", id="back.before", priority=True),
        Binding("down", "step(1)", "next line", id="back.next", priority=True),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.sheet = HalfTyped(desk)
        self.refusal = ""
        """Why the last operation was refused."""

    def compose(self) -> ComposeResult:
        """The sheet, what is said, the answer, the keys."""
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="lines", can_focus=False):
            yield Static(id="sheet", markup=False)
        yield Static(id="said", markup=False)
        yield AnswerLine(id="answer")
        yield Static(f"{HOW}\nEnter takes it and goes on · / line before · u undo · . leaves", id="keys", markup=False)

    def on_mount(self) -> None:
        """Go on where it was left, or where the power went."""
        line = self.query_one(AnswerLine)
        line.quick = frozenset("./,u")
        line.focus()
        cut = self.sheet.go_on(self.desk.picture)
        if cut is not None and cut.stored:
            self._keeping(lambda: self.sheet.end(cut.tag, cut.typed))
        elif cut is not None:
            line.value = cut.typed
        self.show(self.desk.picture)
        if cut is not None:
            again = cut_off_words(cut.tag, cut.meanwhile, self.desk.picture)
            gone_on = f"The line of {cut.tag} was stored before the power went; go on behind it."
            self.say(gone_on if cut.stored else again)

    def show(self, picture: Picture) -> None:
        """Show the sheet as the board has it now."""
        if not self.query("#sheet"):
            return
        sheet = self.sheet
        heading = f"Day sheet of {sheet.day}, typed back · {len(sheet.tags)} lines, {sheet.left} to go"
        self.query_one("#heading", Static).update(Content(heading))
        lines = [self._line(place, tag, picture) for place, tag in enumerate(sheet.tags)]
        shown = Content.assemble(*lines) if lines else Content("Nothing is on the sheet.")
        self.query_one("#sheet", Static).update(shown)
        self.query_one("#lines").scroll_to(y=max(0, sheet.place - 3), animate=False)

    def _line(self, place: int, tag: str, picture: Picture) -> Content:
        sign = "▸" if place == self.sheet.place else " "
        typed = f"{self.sheet.typed.get(tag, ''):<8}"[:14]
        return Content.assemble((f"{sign} {tag:<8}", "bold"), f"{typed} {cell_text(sheet_line_words(tag, picture))}\n")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Take the line that is due, or the one whose tag is typed, and go on to the next."""
        try:
            line = read_typed_line(event.value)
            tag = line.tag or self.sheet.due
            if tag not in self.sheet.tags:
                raise TypedError(f"{tag} is not on this sheet; move it on the board." if tag else "The sheet is done.")
            if not line.goes_there:
                self._take(tag, line, event.value.strip())
        except (TypedError, RuleError) as error:
            self.say(str(error), trouble=True)
            event.input.select_all()  # it stays to be mended, and the next tag scanned takes its place
            return
        self.query_one(AnswerLine).clear()
        if line.goes_there:
            self.sheet.go_to(tag)
        self.say("" if self.sheet.due else "The sheet is typed back to its end; . leaves.")
        self.show(self.desk.picture)

    def _take(self, tag: str, line: TypedLine, typed: str) -> None:
        """Take in one line: first the knife, then the money; raises when that cannot be."""
        box = self.desk.picture.box(parse_tag(tag).box)
        if box is not None:
            self._ask_first(tag, line, box)
            self._keeping(lambda: self.sheet.begin(tag, typed, box.payments))
            if not self._done(tag, line, box) or not self._paid(line, box):
                self._keeping(self.sheet.give_up)
                raise RuleError(self.refusal)
        elif line.done or line.cents:
            raise RuleError(f"{tag} has left the board; nothing is stored of it.")
        self._keeping(lambda: self.sheet.end(tag, typed or "as it is"))

    def _ask_first(self, tag: str, line: TypedLine, box: BoxPicture) -> None:
        if line.done and "-" not in tag:
            raise TypedError(f"Box {tag} goes by its close-out, c on the board; here its money is typed: *41.00.")
        earlier = read_typed_line(self.sheet.typed.get(tag, "").removesuffix("as it is"))
        if again := paid_already_words(line, earlier, box, self.desk.picture):
            self.insist((tag, line, len(box.payments)), again)
        elif line.cents > max(0, box.owed_cents):
            self.insist((tag, line.cents), too_much_words(line.cents, box.owed_cents, self.desk.picture.settings))

    def _done(self, tag: str, line: TypedLine, box: BoxPicture) -> bool:
        """Move the knife of the line to ready, unless it is there."""
        knife = next((one for one in box.knives if one.tag == tag), None)
        if not line.done or knife is None or knife.column in (Column.READY, Column.GONE):
            return True
        return self.attempt(move_knives, (knife,), Column.READY) is not None

    def _paid(self, line: TypedLine, box: BoxPicture) -> bool:
        """Take the money of the line; refused where other money has come in since it was typed."""
        if not line.cents:
            return True
        now = next((one.box for one in self.desk.picture.boxes if one.box.id == box.box.id), box.box)
        payment = NewPayment(cents=line.cents, way=line.way, paid_before_cents=box.paid_cents)
        return self.attempt(take_payment, now, payment) is not None

    def _keeping(self, keep: Callable[[], None]) -> None:
        """Keep how far the sheet is; where the disk does not take it, that is said."""
        try:
            keep()
        except OSError as error:
            self.notify(f"What is typed here cannot be kept: {error.strerror}.", severity="error", markup=False)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it above the answer line."""
        self.refusal = sentence if trouble else ""
        self.query_one("#said", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def on_answer_line_quick(self, event: AnswerLine.Quick) -> None:
        """The single keys on an empty line."""
        if event.character == "u":
            from queueboard.board.screens.undo import UndoScreen

            self.app.push_screen(UndoScreen(self.desk))
        elif event.character == "/":
            self.action_step(-1)
        else:
            self.action_leave()

    def action_step(self, by: int) -> None:
        """To the line before or behind."""
        self.sheet.step(by)
        self.show(self.desk.picture)

    def action_leave(self) -> None:
        """Leave; once the whole sheet is typed back, what was kept of it goes."""
        self.sheet.leave()
        self.dismiss(None)
