"""After a power cut: the day sheet typed back in its own order, a line and Enter each; nothing is stored twice."""

import re
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.forms.kept import Kept
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.board.sheets import written_sheet
from queueboard.clean import cell_text
from queueboard.errors import RuleError, TypedError
from queueboard.phrases.money import too_much_words
from queueboard.phrases.typed_back import HOW, TypedLine, read_typed_line, sheet_line_words, sheet_tags
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.new import NewPayment
from queueboard.words import Column


class TypeBackScreen(ShopScreen[None]):
    """Down the sheet: done or not, paid, Enter. What was typed is kept from line to line.

    Before a line is stored it is kept with what had been paid until then; so after another power cut it is known
    whether its money was stored.
    """

    DEFAULT_CSS = """
    TypeBackScreen > #heading { padding: 0 1; }
    TypeBackScreen > #lines { height: 1fr; }
    TypeBackScreen #sheet { height: auto; padding: 0 1; text-wrap: nowrap; text-overflow: ellipsis; }
    TypeBackScreen > #said { height: auto; padding: 0 1; text-style: bold; }
    TypeBackScreen > #answer { margin: 0 1; width: 1fr; }
    TypeBackScreen > #keys { padding: 0 1; }
    """
    BINDING_GROUP_TITLE = "A day sheet typed back"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "leave; it goes on from here", id="back.leave"),
        Binding("up", "step(-1)", "line before", id="back.before", priority=True),
        Binding("down", "step(1)", "next line", id="back.next", priority=True),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.kept = Kept(desk, "sheet")
        self.day, self.tags = self._sheet()
        self.typed: dict[str, str] = {}
        """What was typed for each line, by its tag."""
        self.place = 0

    def _sheet(self) -> tuple[str, tuple[str, ...]]:
        """The newest sheet that was written; else the one that is half typed back, else the day's plan as it stands."""
        day, tags = written_sheet(self.desk)
        if not tags:
            today = self.desk.picture.now.date().isoformat()
            day, *kept = (self.kept.read() or [""])[0].split("\t")
            day, tags = (day, tuple(kept)) if day == today else (today, sheet_tags(self.desk.picture))
        return day, tags

    def compose(self) -> ComposeResult:
        """The sheet, what is said, the answer, the keys."""
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="lines", can_focus=False):
            yield Static(id="sheet", markup=False)
        yield Static(id="said", markup=False)
        yield AnswerLine(id="answer")
        yield Static(f"{HOW}\nEnter stores and goes on · / line before · u undo · . leaves", id="keys", markup=False)

    def on_mount(self) -> None:
        """Go on where it was left, or where the power went."""
        line = self.query_one(AnswerLine)
        line.quick = frozenset("./,u")
        line.focus()
        asked = self._go_on()
        self.show(self.desk.picture)
        if asked:
            self.say(asked)

    def _go_on(self) -> str:
        """Take up what was kept of this sheet; a sentence about the line that the power cut off."""
        kept = self.kept.read()
        if len(kept) < 2 or kept[0] != "\t".join((self.day, *self.tags)):
            return ""
        self.typed = dict(line.split("\t", 1) for line in kept[2:] if "\t" in line)
        self.place = next((n for n, tag in enumerate(self.tags) if tag not in self.typed), len(self.tags))
        tag, _, rest = kept[1].partition("\t")
        typed, _, before = rest.partition("\t")
        if tag not in self.tags or not re.fullmatch("-?[0-9]+", before):
            return ""
        self.place = self.tags.index(tag)
        cents, box = read_typed_line(typed).cents, self._box_of(tag)
        if cents and box is not None and box.paid_cents == int(before) + cents:
            self.typed[tag] = typed
            self._next()
            self._keep()
            return f"The line of {tag} was stored before the power went; go on behind it."
        self.query_one(AnswerLine).value = typed
        return f"Typed for {tag} when the power went: Enter stores what of it is not stored yet."

    def show(self, picture: Picture) -> None:
        """Show the sheet as the board has it now."""
        if not self.query("#sheet"):
            return
        left = sum(tag not in self.typed for tag in self.tags)
        heading = f"Day sheet of {self.day}, typed back · {len(self.tags)} lines, {left} to go"
        self.query_one("#heading", Static).update(Content(heading))
        lines = []
        for place, tag in enumerate(self.tags):
            sign = "▸" if place == self.place else " "
            typed = f"{self.typed.get(tag, ''):<8}"[:14]
            lines.append(
                Content.assemble((f"{sign} {tag:<8}", "bold"), f"{typed} {cell_text(sheet_line_words(tag, picture))}\n")
            )
        self.query_one("#sheet", Static).update(
            Content.assemble(*lines) if lines else Content("Nothing is on the sheet.")
        )
        self.query_one("#lines").scroll_to(y=max(0, self.place - 3), animate=False)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Store the line that is due, or the one whose tag is typed, and go on to the next."""
        try:
            line = read_typed_line(event.value)
            tag = line.tag or (self.tags[self.place] if self.place < len(self.tags) else "")
            if tag not in self.tags:
                raise TypedError(f"{tag} is not on this sheet; move it on the board." if tag else "The sheet is done.")
            if not line.goes_there:
                self._take(tag, line, event.value.strip())
        except (TypedError, RuleError) as error:
            self.say(str(error), trouble=True)
            return
        self.query_one(AnswerLine).clear()
        if line.goes_there:
            self.place = self.tags.index(tag)
            self.say("")
        self.show(self.desk.picture)

    def _take(self, tag: str, line: TypedLine, typed: str) -> None:
        """Store what was typed of one line: first the knife, then the money; raises when that cannot be."""
        box = self._box_of(tag)
        if box is None:
            if line.done or line.cents:
                raise RuleError(f"{tag} has left the board; nothing is stored of it.")
        else:
            self._ask_first(tag, line, box)
            self._keep(f"{tag}\t{typed}\t{box.paid_cents}")
            if not self._done(tag, line, box) or not self._paid(line, box):
                self._keep()
                raise RuleError(self.refusal)
        self.typed[tag] = typed or "as it is"
        self.place = self.tags.index(tag)
        self._next()
        self._keep()
        last = self.place >= len(self.tags)
        self.say("The sheet is typed back to its end; . leaves." if last else "")

    def _ask_first(self, tag: str, line: TypedLine, box: BoxPicture) -> None:
        if line.done and "-" not in tag:
            raise TypedError(
                f"Box {tag} goes by its close-out, c on the board; here its money is typed, such as *41.00."
            )
        if line.cents > max(0, box.owed_cents):
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

    refusal: str = ""
    """Why the last operation was refused."""

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it above the answer line."""
        self.refusal = sentence if trouble else ""
        self.query_one("#said", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def _box_of(self, tag: str) -> BoxPicture | None:
        return self.desk.picture.box(int(tag.partition("-")[0]))

    def _next(self) -> None:
        """To the next line of which nothing was typed; behind the last one where there is none."""
        after = (n for n in range(self.place + 1, len(self.tags)) if self.tags[n] not in self.typed)
        self.place = next(after, len(self.tags))

    def _keep(self, pending: str = "") -> None:
        """Keep what was typed so far, and the line that is being stored."""
        lines = [f"{tag}\t{typed}" for tag, typed in self.typed.items()]
        try:
            self.kept.write(["\t".join((self.day, *self.tags)), pending, *lines])
        except OSError as error:
            self.notify(f"What is typed here cannot be kept: {error.strerror}.", severity="error", markup=False)

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
        """To the line before or behind, whatever was typed of it."""
        self.place = min(max(0, self.place + by), max(0, len(self.tags) - 1))
        self.show(self.desk.picture)

    def action_leave(self) -> None:
        """Leave; once the whole sheet is typed back, what was kept of it goes."""
        if all(tag in self.typed for tag in self.tags):
            self.kept.forget()
        self.dismiss(None)
