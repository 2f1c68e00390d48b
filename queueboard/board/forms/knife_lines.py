"""Knives typed as lines, each echoed in plain words before and after Enter."""

from collections.abc import Callable, Iterable
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.widgets import Input, Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Back, Field, Row, Taken
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.intake.lines import KnifeLine, box_unit_of, read_line
from queueboard.phrases.counts import looks_like_words
from queueboard.phrases.intake import line_words, lines_sum
from queueboard.phrases.typed import parse_count
from queueboard.shop.alike import looks_like
from queueboard.values.new import NewKnife
from queueboard.values.totals import Totals


class KnifeLines(Vertical):
    """Enter takes the line, Enter on an empty line steps on; up brings the last line back, else goes back a field."""

    DEFAULT_CSS = """
    KnifeLines { height: auto; }
    KnifeLines > .echo { height: auto; max-height: 4; padding-left: 14; color: $text-muted; }
    KnifeLines > .echo.-asked { color: $text-error; text-style: bold; }
    KnifeLines > VerticalScroll { height: auto; max-height: 1fr; padding-left: 14; }
    KnifeLines > .sum { height: auto; padding-left: 14; }
    """
    BINDING_GROUP_TITLE = "While knives are typed"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "up",
            "take_back",
            "line back",
            False,
            tooltip="Bring the last line back to mend it; where there is none, to the field before.",
            id="knives.back",
        ),
    ]

    class Changed(Message):
        """A line was taken or brought back."""

    def __init__(self, desk: Desk, *, name: str = "knives", id: str | None = None) -> None:
        super().__init__(id=id)
        self.desk = desk
        self.settings = settings = desk.picture.settings
        self.title = name
        self.lines: list[KnifeLine] = []
        self.counted: int | None = None
        self.note_says: int | None = None
        self.sums: Callable[[tuple[NewKnife, ...]], Totals] | None = None
        """What a box with these knives would come to; None where only the lines are priced."""
        self.asked_for_mark = ""
        """The line whose mark was asked for; the same once more is taken without."""
        usual = "8" if settings.length_unit == "in" else "20"
        self.line = Field(hint=f"4 chef {usual} dull, black handle ! keep the patina")
        self.echo = Static("", classes="echo")
        self.list = Static("")
        self.sum = Static("", classes="sum")

    def compose(self) -> ComposeResult:
        yield Row((self.title, self.line))
        yield self.echo
        with VerticalScroll(can_focus=False):
            yield self.list
        yield self.sum

    def on_mount(self) -> None:
        self._echo("", asked=False)
        self._draw()

    @property
    def knives(self) -> tuple[NewKnife, ...]:
        """All knives typed, in the order of their lines."""
        return tuple(line.knife for line in self.lines for _ in range(line.count))

    @property
    def touched(self) -> bool:
        """True when a line was taken."""
        return bool(self.lines)

    def kept(self) -> str:
        """The lines taken, as one text."""
        return "\n".join(line.typed for line in self.lines)

    def put_back(self, text: str) -> None:
        """Take the kept lines again; one that is no longer understood stands to be typed anew."""
        self.add(text.split("\n") if text else ())

    def add(self, typed_lines: Iterable[str]) -> None:
        """Take lines as if they had been typed; one that is not understood is said and left out."""
        for typed in typed_lines:
            try:
                self.lines.append(self._read(typed))
            except TypedError as question:
                self._echo(f"{typed}: {question}", asked=True)
        self._draw()
        self.post_message(self.Changed())

    def _read(self, typed: str) -> KnifeLine:
        return read_line(typed, self.settings, box_unit=box_unit_of(self.lines))

    def count_to(self, counted: str, note_says: str) -> None:
        """Say what is typed as the count and of the note, so that the sum can say how many are missing or beyond."""
        self.counted, self.note_says = _count_or_none(counted), _count_or_none(note_says)
        self._draw()

    @on(Input.Changed)
    def echo_line(self) -> None:
        """While a line is typed, say what it would mean so far."""
        try:
            said = self._said(self._read(self.line.value))
        except TypedError as question:
            said = str(question)
        self._echo(said if self.line.value.strip() else "", asked=False)

    @on(Input.Submitted)
    def take_line(self, event: Input.Submitted) -> None:
        """Take a line that is understood; ask back about one that is not, and leave it standing."""
        event.stop()
        if not self.line.value.strip():
            self.post_message(Taken(self.line))
            return
        if self.take():
            self.post_message(self.Changed())

    def take(self) -> bool:
        """Take what stands in the line; False after asking back, once also for a mark where others look the same."""
        try:
            line = self._read(self.line.value)
        except TypedError as question:
            self._echo(str(question), asked=True)
            self.line.focus()
            return False
        twins = looks_like(self.desk.picture, line.knife)
        if twins and self.asked_for_mark != line.typed:
            self.asked_for_mark = line.typed
            self._echo(looks_like_words(twins), asked=True)
            self.line.focus()
            return False
        self.lines.append(line)
        self.line.value = ""
        self._draw()
        return True

    def action_take_back(self) -> None:
        """Bring the last line back, to be typed again; where there is none, go back to the field before."""
        if self.line.value.strip() or not self.lines:
            self.post_message(Back(self.line))
        else:
            self.line.value = self.lines.pop().typed
            self.line.cursor_position = len(self.line.value)
            self._draw()
            self.post_message(self.Changed())

    def _said(self, line: KnifeLine) -> str:
        """What a line means, and whether it looks like a knife of another box."""
        twins = looks_like(self.desk.picture, line.knife)
        alike = f"\n{looks_like_words(twins)}" if twins else ""
        return f"{line_words(line, self.settings)}{alike}"

    def _echo(self, said: str, *, asked: bool) -> None:
        self.echo.update(Content(cell_text(f"? {said}" if asked else said)))
        self.echo.display = bool(said)
        self.echo.set_class(asked, "-asked")

    def _draw(self) -> None:
        self.list.update(Content(cell_text("\n".join(line_words(line, self.settings) for line in self.lines))))
        sums = None if self.sums is None else self.sums(self.knives)
        self.sum.update(Content(lines_sum(self.lines, self.counted, self.settings, self.note_says, sums)))
        self.list.display = bool(self.lines)
        self.sum.display = bool(self.lines) or self.counted is not None
        self.query_one(VerticalScroll).scroll_end(animate=False)


def _count_or_none(typed: str) -> int | None:
    """A count as far as it is typed; None while it cannot be read."""
    try:
        return parse_count(typed)
    except TypedError:
        return None
