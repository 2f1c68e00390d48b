"""What the list screens share: lines about boxes, a cursor that stays on its line, a number typed to jump."""

from collections.abc import Iterator
from dataclasses import replace
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Key
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.widgets.tag_entry import LONGEST, read_tag
from queueboard.errors import TypedError
from queueboard.shop.picture import Picture
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One entry of a list: what it shows, and what it stands for."""

    id: str
    """Stays the same from picture to picture, so that the cursor finds its line again."""
    text: Content
    number: int | None = None
    """The box it is about; None for a heading or a remark, where the cursor never stops unless it can be started."""
    mentions: frozenset[int] = frozenset()
    """Numbers of boxes it speaks of, so that typing one finds it."""
    stops: bool = False
    """True when the cursor may rest here although no box is named."""

    @property
    def can_stop(self) -> bool:
        """True when the cursor may rest here."""
        return self.stops or self.number is not None


def _apart(lines: tuple[Line, ...]) -> Iterator[Line]:
    """A blank line behind an entry is none of its own, so that the cursor covers words only."""
    quiet = not any(line.can_stop for line in lines)
    for line in lines:
        text = line.text
        if quiet:
            text = Content("\n ").join(text.split("\n", allow_blank=True))
        if line.can_stop and text.plain.endswith("\n"):
            yield replace(line, text=text.rstrip("\n"))
            yield Line(id=f"behind {line.id}", text=Content(""))
        else:
            yield replace(line, text=text)


class BoxListScreen(ShopScreen[int | None]):
    """A list of lines about boxes; Enter leaves with the box's number, escape without."""

    CSS_PATH = "lists.tcss"
    BINDING_GROUP_TITLE = "On a list of boxes"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "enter",
            "choose",
            "to this box",
            tooltip="To this box; digits typed before jump to a box by its number.",
            id="list.choose",
            priority=True,
        ),
        Binding("escape,full_stop,comma,q", "leave", "back to the board", id="list.leave"),
        Binding("backspace", "untype", "take back a digit", id="list.untype", show=False),
    ]
    KEYS = "Enter to this box · digits: a box · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.typed = ""
        self.shown: tuple[Line, ...] = ()
        self.marked: int | None = None
        self.broken_at = 0
        """The width of the terminal, in cells, for which the lines shown are broken."""

    def compose(self) -> ComposeResult:
        """A heading, the list, what was typed, and the keys."""
        yield Static(id="heading", markup=False)
        yield OptionList(id="lines", markup=False)
        yield Static(id="typed", markup=False)
        yield Static(self.KEYS, id="keys", markup=False)

    @property
    def begins_numbers(self) -> bool:
        return not self.typed

    def on_mount(self) -> None:
        """Show the picture the desk holds."""
        self.query_one(OptionList).focus()
        self.first_show()

    def first_show(self) -> None:
        """Show the picture as soon as the screen stands; a list that takes long to work out says so first."""
        self.show(self.desk.picture)

    def heading(self, picture: Picture) -> Content:
        """One line on top that says what this list is."""
        raise NotImplementedError

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """All lines, in order."""
        raise NotImplementedError

    def show(self, picture: Picture) -> None:
        """Show a new picture; the cursor stays on its line, or on the place where it was."""
        self.query_one("#heading", Static).update(self.heading(picture))
        self.broken_at = self.app.size.width
        lines = tuple(_apart(self.lines(picture)))
        if lines == self.shown:
            return
        options = self.query_one(OptionList)
        place, was = options.highlighted, self.current()
        self.shown = lines
        options.clear_options()
        options.add_options([Option(Content.assemble(" ", x.text), id=x.id, disabled=not x.can_stop) for x in lines])
        self.marked = None
        self._put_cursor(options, was, place)

    def on_resize(self) -> None:
        """Break long lines anew, where some are shown already and the width is another one."""
        if self.shown and self.broken_at != self.app.size.width:
            self.show(self.desk.picture)

    def _put_cursor(self, options: OptionList, was: Line | None, place: int | None) -> None:
        """Back to the line it was on; else to the nearest one that can be chosen."""
        can = [index for index, line in enumerate(self.shown) if line.can_stop]
        if not can:
            return
        same = [index for index in can if was is not None and self.shown[index].id == was.id]
        options.highlighted = same[0] if same else min(can, key=lambda index: abs(index - (place or 0)))

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """The line under the cursor carries a sign: no colour is needed to see where one is."""
        for place, sign in ((self.marked, " "), (event.option_index, "▸")):
            if place is not None and place < len(self.shown):
                event.option_list.replace_option_prompt_at_index(place, Content.assemble(sign, self.shown[place].text))
        self.marked = event.option_index

    def begin_at_the_top(self) -> None:
        """Other lines come: the place where the cursor was in these says nothing about them."""
        self.shown, self.marked = (), None
        self.query_one(OptionList).clear_options()

    def current(self) -> Line | None:
        """The line under the cursor; None in an empty list."""
        place = self.query_one(OptionList).highlighted
        return self.shown[place] if place is not None and place < len(self.shown) else None

    def take_first(self, key: Key) -> bool:
        """A dash behind a number makes a tag of it, as a scanner types one, before it could mean anything else."""
        if key.character == "-" and self.typed and "-" not in self.typed:
            self._type(f"{self.typed}-")
            return True
        return super().take_first(key)

    def on_key(self, event: Key) -> None:
        """A digit goes on with the number of a box and moves the cursor to the first that begins so."""
        if event.character is None or event.character not in "0123456789" or len(self.typed) >= LONGEST:
            return
        event.stop()
        self._type(self.typed + event.character)
        for index, line in enumerate(self.shown):
            if any(str(number).startswith(self.typed.partition("-")[0]) for number in {line.number, *line.mentions}):
                self.query_one(OptionList).highlighted = index
                return

    def _type(self, typed: str) -> None:
        self.typed = typed
        self.say(f"box {typed}_" if typed else "")

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it under the list, where it covers nothing; the next sentence or number replaces it."""
        self.query_one("#typed", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_untype(self) -> None:
        """Take back the last digit."""
        self._type(self.typed[:-1])

    def action_leave(self) -> None:
        """Drop a half-typed number first; then back to the board."""
        if self.typed:
            self._type("")
        else:
            self.dismiss(None)

    def action_choose(self) -> None:
        """Leave with the typed box, else with the one under the cursor."""
        if self.typed:
            try:
                box, _ = read_tag(self.typed, self.desk.picture)
            except TypedError as error:
                self._type("")
                self.say(f"{error} Type another number, or Esc.", trouble=True)
            else:
                self.dismiss(box.box.number)
            return
        line = self.current()
        if line is not None and line.number is not None:
            self.dismiss(line.number)
