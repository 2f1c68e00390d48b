"""Knives typed as lines, each echoed in plain words before and after Enter."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.widgets import Input, Static

from queueboard.board.forms.fields import Back, Field, Row, Taken
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.intake.lines import KnifeLine, read_line
from queueboard.phrases.intake import line_words, lines_sum
from queueboard.phrases.typed import parse_count
from queueboard.settings.shapes import Settings
from queueboard.values.new import NewKnife


class KnifeLines(Vertical):
    """Enter takes the line, Enter on an empty line steps on; up brings the last line back, else goes back a field."""

    DEFAULT_CSS = """
    KnifeLines { height: auto; }
    KnifeLines > .echo { height: auto; max-height: 4; padding-left: 14; color: $text-muted; }
    KnifeLines > .echo.-asked { color: $text-error; text-style: bold; }
    KnifeLines > VerticalScroll { height: auto; max-height: 1fr; padding-left: 14; }
    KnifeLines > .sum { height: auto; padding-left: 14; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [Binding("up", "take_back", "Line back, then the field before", show=False)]

    class Changed(Message):
        """A line was taken or brought back."""

    def __init__(self, settings: Settings, *, name: str = "knives", id: str | None = None) -> None:
        super().__init__(id=id)
        self.settings = settings
        self.title = name
        self.lines: list[KnifeLine] = []
        self.counted: int | None = None
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
        for typed in text.split("\n") if text else ():
            try:
                self.lines.append(read_line(typed, self.settings))
            except TypedError as question:
                self._echo(f"{typed}: {question}", asked=True)
        self._draw()

    def count_to(self, counted: str) -> None:
        """Say what is typed as the count, so that the sum can say how many are still to be typed."""
        try:
            self.counted = parse_count(counted)
        except TypedError:
            self.counted = None
        self._draw()

    @on(Input.Changed)
    def echo_line(self) -> None:
        """While a line is typed, say what it would mean so far."""
        try:
            said = line_words(read_line(self.line.value, self.settings), self.settings)
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
        """Take what stands in the line; False after asking back."""
        try:
            line = read_line(self.line.value, self.settings)
        except TypedError as question:
            self._echo(str(question), asked=True)
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

    def _echo(self, said: str, *, asked: bool) -> None:
        self.echo.update(Content(cell_text(f"? {said}" if asked else said)))
        self.echo.display = bool(said)
        self.echo.set_class(asked, "-asked")

    def _draw(self) -> None:
        self.list.update(Content(cell_text("\n".join(line_words(line, self.settings) for line in self.lines))))
        self.sum.update(Content(lines_sum(self.lines, self.counted, self.settings)))
        self.list.display = bool(self.lines)
        self.sum.display = bool(self.lines) or self.counted is not None
        self.query_one(VerticalScroll).scroll_end(animate=False)
