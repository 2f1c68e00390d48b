"""What a form is made of: a line to type in, a choice of numbered lines, a tick; each with its name before it."""

from collections.abc import Callable, Sequence
from typing import ClassVar, Generic, TypeVar

from textual.app import ComposeResult, RenderResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.events import Click, Key
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget
from textual.widgets import Static

from queueboard.board.widgets.one_line import OneLine

Value = TypeVar("Value")

GAP = "  "
"""Between two answers on one line."""
CHOSEN_HERE = "bold underline $cursor-text on $cursor-ground"
"""The answer under the cursor; where there are no colours the line below it tells it from the other answers."""


class Field(OneLine):
    """One line of a form."""

    def __init__(
        self,
        value: str = "",
        *,
        hint: str = "",
        check: Callable[[str], object] | None = None,
        typed_over: bool = True,
    ) -> None:
        """typed_over: the first letter takes the place of what is offered; else it goes on behind it."""
        super().__init__(value, hint=hint, select=typed_over)
        self.first = value
        self.check = check
        """Reads what was typed when Enter leaves the field; its TypedError keeps the cursor here."""

    @property
    def touched(self) -> bool:
        """True when it no longer holds what it was offered with."""
        return self.value != self.first

    @property
    def emptied(self) -> bool:
        """True when it was offered with something, and holds nothing now."""
        return self.touched and not self.value.strip()

    def kept(self) -> str:
        """What it holds, as one text."""
        return self.value

    def put_back(self, text: str) -> None:
        """Hold what was kept."""
        self.value = text


class Row(Horizontal):
    """Widgets on one line, each pair a name and what belongs to it."""

    DEFAULT_CSS = """
    Row { height: auto; width: 1fr; }
    Row > .name { width: auto; min-width: 14; padding: 0 1 0 0; color: $text-muted; }
    Row > .name.later { min-width: 0; padding: 0 1 0 2; }
    Row > Field { width: 1fr; }
    """

    def __init__(self, *pairs: tuple[str, Widget], id: str | None = None, classes: str | None = None) -> None:
        super().__init__(id=id, classes=classes)
        self.pairs = pairs

    def compose(self) -> ComposeResult:
        for place, (name, widget) in enumerate(self.pairs):
            yield Static(Content(name), classes="name later" if place else "name")
            yield widget


class Taken(Message):
    """A choice, a tick or another part of a form was answered, and the form may step on."""

    def __init__(self, widget: Widget) -> None:
        super().__init__()
        self.widget = widget


class Back(Message):
    """The person wants to go back from a part of a form to the one before it."""

    def __init__(self, widget: Widget) -> None:
        super().__init__()
        self.widget = widget


class Turned(Message):
    """A choice or a tick stands at another answer than before."""

    def __init__(self, widget: Widget) -> None:
        super().__init__()
        self.widget = widget


class FormScroll(VerticalScroll, can_focus=False):
    """The lines of a form: the arrows that no line takes for itself lead from line to line, without a chord."""

    BINDING_GROUP_TITLE = "The lines of a form"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "app.focus_previous", "before", False, tooltip="The line before.", id="form.before"),
        Binding("down", "app.focus_next", "behind", False, tooltip="The line behind.", id="form.behind"),
    ]


class Choice(Widget, Generic[Value], can_focus=True):
    """Numbered answers, one of them taken; a digit takes its line and steps on, Enter takes the one shown."""

    DEFAULT_CSS = """
    Choice { height: auto; width: 1fr; }
    """
    BINDING_GROUP_TITLE = "Among numbered answers"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "turn(-1)", "before", False, tooltip="The answer before.", id="answer.before"),
        Binding("right", "turn(1)", "after", False, tooltip="The answer behind.", id="answer.after"),
        Binding("up", "go(-1)", "above", False, tooltip="The answer above, else the line before.", id="answer.above"),
        Binding("down", "go(1)", "below", False, tooltip="The answer below, else the line behind.", id="answer.below"),
        Binding(
            "enter", "take", "take it", False, tooltip="Take the marked answer; so does its digit.", id="answer.take"
        ),
        Binding(
            "backspace",
            "app.focus_previous",
            "line before",
            False,
            tooltip="Back to the line before.",
            id="answer.line_before",
        ),
    ]

    at: reactive[int] = reactive(0, layout=True)

    def __init__(
        self, answers: Sequence[tuple[str, Value]], *, at: int = 0, across: bool = True, id: str | None = None
    ) -> None:
        super().__init__(id=id)
        self.answers = tuple(answers)
        self.across = across
        self.first = at
        self.set_reactive(Choice.at, at)

    @property
    def value(self) -> Value:
        """What is chosen now."""
        return self.answers[self.at][1]

    @property
    def touched(self) -> bool:
        """True when it no longer stands where it was offered."""
        return self.at != self.first

    def kept(self) -> str:
        """Which answer is chosen, as one text."""
        return str(self.at)

    def put_back(self, text: str) -> None:
        """Choose what was kept."""
        places = {str(place): place for place in range(len(self.answers))}
        self.at = places.get(text, self.at)

    def take(self, value: Value) -> None:
        """Choose the answer with this value, if there is one, without stepping on."""
        for place, (_, candidate) in enumerate(self.answers):
            if candidate == value:
                self.at = place

    def offer(self, answers: Sequence[tuple[str, Value]]) -> None:
        """Offer other answers; where these are offered already nothing changes."""
        if tuple(answers) != self.answers:
            self.answers, self.at = tuple(answers), 0
            self.refresh(layout=True)

    def render(self) -> RenderResult:
        rows = self._rows(self.content_size.width)
        lines = [[self._line(place, self.answers[place][0]) for place in row] for row in rows]
        return Content("\n").join(Content(GAP).join(line) for line in lines)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as the answers take at this width; an answer that is too long alone goes on below."""
        texts = [Content(GAP.join(f" {at + 1} {self.answers[at][0]}" for at in row)) for row in self._rows(width)]
        return sum(len(text.wrap(max(1, width))) for text in texts)

    def _rows(self, width: int) -> list[list[int]]:
        """Which answers stand on each line: as many as fit where they stand across, and none of them broken."""
        if not self.across:
            return [[place] for place in range(len(self.answers))]
        rows, end = [list[int]()], 0
        for place, (text, _) in enumerate(self.answers):
            cells = Content(f" {place + 1} {text}").cell_length
            if rows[-1] and end + cells > width:
                rows.append([])
                end = 0
            rows[-1].append(place)
            end += cells + len(GAP)
        return rows

    def _line(self, place: int, text: str) -> Content:
        if place != self.at:
            return Content(f" {place + 1} {text}")
        return Content.styled(f"▸{place + 1} {text}", CHOSEN_HERE if self.has_focus else "bold")

    def watch_at(self) -> None:
        self.post_message(Turned(self))

    def watch_has_focus(self, value: bool) -> None:
        super().watch_has_focus(value)
        self.refresh()

    def on_key(self, event: Key) -> None:
        place = "123456789".find(event.character or " ")
        if 0 <= place < len(self.answers):
            event.stop()
            self.at = place
            self.action_take()

    def on_click(self, event: Click) -> None:
        rows, end = self._rows(self.content_size.width), 0
        for place in rows[event.y] if event.y < len(rows) else ():
            end += Content(f" {place + 1} {self.answers[place][0]}{GAP}").cell_length
            if event.x < end or not self.across:
                self.at = place
                return

    def action_turn(self, by: int) -> None:
        """Move the mark by one answer, round the ends."""
        self.at = (self.at + by) % len(self.answers)

    def action_go(self, by: int) -> None:
        """Move the mark among answers that stand below each other; from their ends on, from line to line."""
        if not self.across and 0 <= self.at + by < len(self.answers):
            self.at += by
        elif by < 0:
            self.app.action_focus_previous()
        else:
            self.app.action_focus_next()

    def action_take(self) -> None:
        """Take the answer shown."""
        self.post_message(Taken(self))


class Tick(Widget, can_focus=True):
    """Yes or no: + ticks, - takes the tick away, space turns it, Enter steps on."""

    DEFAULT_CSS = """
    Tick { height: 1; width: auto; padding: 0 1; }
    Tick:focus { text-style: bold underline; color: $cursor-text; background: $cursor-ground; }
    """
    BINDING_GROUP_TITLE = "At yes or no"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus", "put(True)", "yes", False, tooltip="Yes: put the sign there.", id="tick.yes"),
        Binding("minus", "put(False)", "no", False, tooltip="No: take the sign away.", id="tick.no"),
        Binding("space", "turn", "turn", False, tooltip="From yes to no and back.", id="tick.turn"),
        Binding("enter", "take", "on", False, tooltip="Leave it as it stands and go on.", id="tick.on"),
        Binding(
            "backspace,up",
            "app.focus_previous",
            "line before",
            False,
            tooltip="Back to the line before.",
            id="tick.line_before",
        ),
    ]

    value: reactive[bool] = reactive(False)

    def __init__(self, text: str, *, value: bool = False, id: str | None = None) -> None:
        super().__init__(id=id)
        self.text = text
        self.first = value
        self.set_reactive(Tick.value, value)

    @property
    def touched(self) -> bool:
        """True when it no longer stands as it was offered."""
        return self.value != self.first

    def kept(self) -> str:
        """Ticked or not, as one text."""
        return "x" if self.value else ""

    def put_back(self, text: str) -> None:
        """Tick it as it was kept."""
        self.value = bool(text)

    def render(self) -> RenderResult:
        return Content(f"({'x' if self.value else ' '}) {self.text}")

    def watch_value(self) -> None:
        self.post_message(Turned(self))

    def on_click(self) -> None:
        self.value = not self.value

    def action_put(self, value: bool) -> None:
        """Tick it, or take the tick away."""
        self.value = value

    def action_turn(self) -> None:
        """Turn it."""
        self.value = not self.value

    def action_take(self) -> None:
        """Leave it as it is and step on."""
        self.post_message(Taken(self))
