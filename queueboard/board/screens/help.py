"""Every key of a screen, made from its bindings; on the board also the numeric pad and the signs."""

from collections.abc import Iterator
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.dom import DOMNode
from textual.events import Resize
from textual.screen import Screen
from textual.widgets import Static

from queueboard.board.base import ShopModal, ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.headed import HEAD
from queueboard.board.key_names import KeyGroup, key_groups
from queueboard.phrases.cautions import BENCH_SHORT, PACKING_SHORT

PAD = """\
key    on the board           once a tag is begun (417, 417-3)
0-9    begin a tag            go on with it
0      the bell: a walk-in    go on with it
Enter  open the box           put the cursor there
+      one column on          one column on; a box asks first
-      one column back        part of the tag
*      mark                   straight to ready; a box asks first
/      show only              close out the box
.      day list               open the box
In a question + is yes, - is no, Enter takes what is offered, digits
choose a numbered line. In a list . leads back, where no Esc is near."""

SIGNS = """\
▸             the cursor
▹             the box under the cursor, in another column
*             marked
≈             a knife like it lies in another box: see its tag
LATE          its ship-by has passed
WILL BE LATE  as the day list stands its work ends after its ship-by
TODAY         its ship-by is today
TO FETCH      ready, at the counter
WAIT          somebody must answer before it goes on
REDO          back on the bench after a test
DECLINED      goes back unsharpened
LOOKED FOR    nobody knows where it is"""

WIDEST_KEYS = 20
"""Cells that the keys of one action take at most; where there are more, what they do stands on the next line."""


class HelpScreen(ShopModal[None]):
    """The keys of the screen below."""

    BINDING_GROUP_TITLE = "Help"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,enter,q,question_mark,full_stop,minus", "leave", "back", tooltip="Back.", id="help.leave"),
        Binding("down,plus", "scroll(3)", "down", tooltip="Further down.", id="help.down"),
        Binding("up", "scroll(-3)", "up", tooltip="Further up.", id="help.up"),
        Binding("pagedown,space", "scroll(12)", "page down", tooltip="A page down.", id="help.page-down"),
        Binding("pageup", "scroll(-12)", "page up", tooltip="A page up.", id="help.page-up"),
    ]
    AUTO_FOCUS = ""

    def __init__(self, desk: Desk, about: Screen[object]) -> None:
        super().__init__(desk)
        self.about = about

    def compose(self) -> ComposeResult:
        with VerticalScroll(id="help", can_focus=False):
            yield Static(id="help-text", markup=False)
        yield Static("↑ ↓ further · Esc back", id="keys", markup=False)

    def on_resize(self, _: Resize) -> None:
        """Break the lines anew; done only once the width is known."""
        width = self.query_one("#help").scrollable_content_region.width - 1
        lines = help_lines(self.about, width, with_pad=bool(self.about.query("#columns")))
        self.query_one("#help-text", Static).update(Content("\n").join(lines))

    def action_scroll(self, by: int) -> None:
        self.query_one("#help").scroll_relative(y=by, animate=False)

    def action_leave(self) -> None:
        self.dismiss(None)


def help_lines(about: Screen[object], width: int, *, with_pad: bool) -> Iterator[Content]:
    """The help text, line by line, none of more than so many cells."""
    if isinstance(about, ShopScreen) and about.HELP:
        yield from titled("What can be done here", about.HELP, width)
    if with_pad:
        yield from titled("The numeric pad alone runs the day", PAD, width)
        yield from titled("Signs and words", SIGNS, width)
    seen: set[str] = set()
    for node in (about, *helpers(about), about.app):
        for group in key_groups(node):
            if group.title not in seen:
                seen.add(group.title)
                yield from group_lines(group, width)
    if with_pad:
        yield from titled("Take care", f"{BENCH_SHORT}\n{PACKING_SHORT}", width)


def helpers(about: Screen[object]) -> Iterator[DOMNode]:
    """The widgets of ours in the screen that bind keys, each class once."""
    classes: set[type[DOMNode]] = set()
    for widget in about.query("*"):
        if type(widget) not in classes and type(widget).__module__.startswith("queueboard."):
            classes.add(type(widget))
            yield widget


def titled(title: str, text: str, width: int) -> Iterator[Content]:
    """A title, its lines, a blank."""
    yield Content.styled(title, HEAD)
    for line in text.splitlines():
        yield from hanging(Content(), Content(line), 0, width)
    yield Content("")


def group_lines(group: KeyGroup, width: int) -> Iterator[Content]:
    """A group of keys: what to press, then what it does."""
    yield Content.styled(group.title, HEAD)
    room = min(WIDEST_KEYS, max(len(" ".join(line.keys)) for line in group.lines)) + 2
    for line in group.lines:
        yield from hanging(Content.styled(" ".join(line.keys), "bold"), Content(line.sentence), room, width)
    yield Content("")


def hanging(first: Content, text: Content, room: int, width: int) -> Iterator[Content]:
    """Text that begins behind *first*, in the given room or on the next line, and goes on below its own beginning."""
    if first.cell_length >= room > 0:
        yield first
        first = Content()
    for line in text.wrap(max(1, width - room)):
        yield Content.assemble(first.pad_right(room - first.cell_length), line)
        first = Content()
