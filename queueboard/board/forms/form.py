"""What forms and dialogs share: Enter steps on, the last Enter goes, a sentence stays beside what was typed."""

from collections.abc import Callable
from itertools import pairwise
from typing import ClassVar, TypeVar

from rich.cells import cell_len
from textual import on
from textual.app import ComposeResult, RenderResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Key
from textual.geometry import Size
from textual.reactive import reactive
from textual.widget import Widget
from textual.widgets import Input, Static

from queueboard.board.base import ShopModal, ShopScreen
from queueboard.board.forms.again import carry_over
from queueboard.board.forms.fields import Back, Choice, Field, FormScroll, Taken, Tick, Turned
from queueboard.errors import ChangedError, QueueboardError, TypedError
from queueboard.phrases import helping
from queueboard.shop.picture import BoxPicture
from queueboard.values.box import Box
from queueboard.values.knife import Knife

NAME_CELLS = 14
"""The least room for the name of a field, as on the forms."""
LOOK_AGAIN = "F5 looks again: what is stored now, with what you typed kept · Esc leaves"
"""The way on where somebody else has changed the same thing."""

ALL_KEYS = " · F1 keys"
"""Behind the keys of every question: in a field ? is a letter like any other."""

Answer = TypeVar("Answer")
Read = TypeVar("Read")


class Form(ShopScreen[Answer]):
    """A screen with fields. An error loses nothing that was typed: its sentence appears, the cursor goes back.

    It goes once: what was typed ahead comes when it is no longer the active screen, and does nothing.
    """

    def go(self) -> None:
        """Read the fields, run the operation, leave; a TypedError from a field is said."""
        raise NotImplementedError

    def action_go(self) -> None:
        """Go once, and say what stands in the way."""
        if not self.is_active:
            return
        try:
            self.go()
        except QueueboardError as error:
            self.refused(error)

    def action_leave(self) -> None:
        """Leave without doing anything."""
        self.dismiss(None)

    def read(self, field: Field, parse: Callable[[str], Read]) -> Read:
        """What a field holds, read; on a TypedError the cursor goes back into the field."""
        try:
            return parse(field.value)
        except TypedError:
            field.focus()
            raise

    def read_or(self, field: Field, parse: Callable[[str], Read], empty: Read) -> Read:
        """As read, but an empty field gives `empty`."""
        return self.read(field, parse) if field.value.strip() else empty

    @on(Input.Changed)
    @on(Turned)
    def went_on(self) -> None:
        """Something was typed or chosen."""
        if self.is_active:
            self.changed()

    def changed(self) -> None:
        """Bring the parts into line that depend on what was typed or chosen."""

    @on(Input.Submitted)
    def line_typed(self, event: Input.Submitted) -> None:
        """Enter in a field steps on, unless what stands there is no answer to its question."""
        event.stop()
        field = event.input
        if not self.is_active:
            return
        try:
            if isinstance(field, Field) and field.check is not None and field.value.strip():
                field.check(field.value)
        except TypedError as error:
            self.say(str(error), trouble=True)
            return
        self.step_on(field)

    def on_key(self, event: Key) -> None:
        """A letter typed among numbered answers is none, and is not lost in silence."""
        here = self.focused
        if isinstance(here, Choice) and event.is_printable and event.key not in self.active_bindings:
            self.say(f"Here a digit answers, 1 to {len(here.answers)}; Enter takes the marked one.", trouble=True)

    @on(Taken)
    def answered(self, event: Taken) -> None:
        """An answer taken steps on."""
        event.stop()
        self.step_on(event.widget)

    def step_on(self, widget: Widget) -> None:
        """Move the cursor to the next field, or go when this was the last."""
        if not self.is_active:
            return
        asked = self._asked()
        after = asked[asked.index(widget) + 1 :] if widget in asked else []
        if after:
            self.trouble_is_over()
            after[0].focus()
        else:
            self.action_go()

    @on(Back)
    def step_back(self, event: Back) -> None:
        """Move the cursor to the field before; in the first one it stays."""
        event.stop()
        asked = self._asked()
        before = asked[: asked.index(event.widget)] if event.widget in asked else []
        if before:
            before[-1].focus()

    def _asked(self) -> list[Widget]:
        """What is asked for now, in the order of the screen."""
        return [part for part in self.query("*") if isinstance(part, Field | Choice | Tick) and _shown(part)]

    def trouble_is_over(self) -> None:
        """Take the sentence away once the field it was about was answered; other sentences stay."""
        if self.query_one("#sentence").has_class("-trouble"):
            self.say("")

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say one sentence beside the fields, where it stays until the next."""
        place = self.query_one("#sentence", Static)
        place.update(Content(f"! {sentence}" if trouble else sentence))
        place.set_class(trouble, "-trouble")
        place.display = bool(sentence)
        if sentence:
            self.call_after_refresh(place.scroll_visible, animate=False)


def _shown(part: Widget) -> bool:
    """Whether a part is asked for now; Textual's own focus chain learns of a part just shown only after a refresh."""
    return all(node.display for node in part.ancestors_with_self if isinstance(node, Widget))


class QuestionKeys(Widget):
    """Keys on as many lines as they need, broken between two of them and never within one, the last never alone."""

    DEFAULT_CSS = "QuestionKeys { height: auto; }"

    keys: reactive[str] = reactive("", layout=True)

    def __init__(self, keys: str, *, id: str) -> None:
        super().__init__(id=id)
        self.set_reactive(QuestionKeys.keys, keys)

    def render(self) -> RenderResult:
        return Content("\n".join(self._lines(self.content_size.width)))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as the keys take at this width."""
        return len(self._lines(width))

    def _lines(self, width: int) -> list[str]:
        *items, before, last = self.keys.split(" · ")
        lines: list[str] = []
        for item in (*items, f"{before} · {last}"):
            longer = f"{lines[-1]} · {item}" if lines else item
            lines[-1:] = [longer] if cell_len(longer) <= width or not lines else [lines[-1], item]
        return lines


class Dialog(Form[bool], ShopModal[bool]):
    """One question over the screen below; True when it was done, None when it was left."""

    DEFAULT_CSS = """
    Dialog { align: center middle; }
    Dialog > #dialog {
        width: 90; max-width: 96%; height: auto; max-height: 96%;
        border: round $primary; background: $surface; padding: 0 1;
    }
    Dialog #heading { text-style: bold; margin-bottom: 1; }
    Dialog .-apart { margin-top: 1; }
    Dialog #sentence { display: none; margin-top: 1; }
    Dialog #sentence.-trouble { color: $text-error; text-style: bold; }
    Dialog #hint { color: $text-muted; margin-top: 1; }
    """
    BINDING_GROUP_TITLE = "In a question"
    HELP = helping.QUESTION
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus", "go", "yes, go", tooltip="Yes: keep it as it stands.", id="dialog.go"),
        Binding("minus,q", "leave", "no", tooltip="Leave; nothing is stored.", id="dialog.no"),
        Binding("escape", "leave", "leave", tooltip="Leave; nothing is stored.", id="dialog.leave"),
        Binding("f5", "look_again", "look again, when it was changed meanwhile", id="dialog.again"),
    ]
    AUTO_FOCUS = "Field, Choice, Tick"
    hint: str = "Enter on, at the end it is stored · Esc leaves"

    def heading(self) -> str:
        """The question, with the tag or box and the customer's name."""
        raise NotImplementedError

    def fields(self) -> ComposeResult:
        """What is asked."""
        yield from ()

    def compose(self) -> ComposeResult:
        with FormScroll(id="dialog"):
            yield Static(Content(self.heading()), id="heading")
            yield from self.fields()
            yield Static("", id="sentence")
            yield QuestionKeys(f"{self.hint}{ALL_KEYS}", id="hint")

    def on_mount(self) -> None:
        """All names take as much room as the longest; a blank line parts what is said from what is asked.

        Another parts answers below each other from the fields that follow them.
        """
        names = [name for name in self.query("Row > .name").results(Static) if not name.has_class("later")]
        longest = max((Content(str(name.content)).cell_length + 2 for name in names), default=0)
        for name in names:
            name.styles.min_width = max(NAME_CELLS, longest)
        parts = [part for part in self.query_one("#dialog").children if part.display and part.id != "hint"]
        for before, part in pairwise(parts[1:]):
            asks = [not isinstance(one, Static) for one in (before, part)]
            empty = any(isinstance(one, Static) and not one.content for one in (before, part))
            if (asks[0] != asks[1] and not empty) or (isinstance(before, Choice) and not before.across and asks[1]):
                part.add_class("-apart")

    def done(self, answer: tuple[object] | None) -> None:
        """Leave with True when the operation went through; stay as it is when it did not."""
        if answer is not None:
            self.dismiss(True)

    def anew(self) -> "Dialog | None":
        """The same question about what stands now; None for one that has nothing to go stale."""
        return None

    def refused(self, error: QueueboardError) -> None:
        """Say why; where somebody else was quicker, also how to go on."""
        super().refused(error)
        if isinstance(error, ChangedError):
            self.say_keys(LOOK_AGAIN)

    async def action_look_again(self) -> None:
        """Ask anew over what stands now; what was typed here is carried over, and this one leaves with that one."""
        try:
            fresh = self.anew()
        except QueueboardError as error:
            self.say(str(error), trouble=True)
            return
        if fresh is not None:
            await self.app.push_screen(fresh, self.dismiss)
            fresh.say(carry_over(self, fresh))

    def say_keys(self, keys: str) -> None:
        """Say other keys below the question."""
        self.query_one("#hint", QuestionKeys).keys = f"{keys}{ALL_KEYS}"

    def box_now(self, box_id: int) -> BoxPicture:
        """The box as the newest picture has it."""
        try:
            return self.desk.picture.box_by_id(box_id)
        except KeyError:
            raise ChangedError("That box has left the board meanwhile; nothing was stored.") from None

    def now(self, about: Knife | Box) -> Knife | Box:
        """The knife or the box as the newest picture has it."""
        return self.knife_now(about) if isinstance(about, Knife) else self.box_now(about.id).box

    def knife_now(self, knife: Knife) -> Knife:
        """The knife as the newest picture has it."""
        for candidate in self.box_now(knife.box_id).knives:
            if candidate.id == knife.id:
                return candidate
        raise ChangedError(f"{knife.tag} is not in its box any more; nothing was stored.")
