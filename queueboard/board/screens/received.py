"""What the customer holds and what goes on the handles, right after a box was taken in."""

from dataclasses import replace
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.paper_out import write_and_say
from queueboard.papers.slips import handle_tags, stub
from queueboard.phrases import helping
from queueboard.phrases.boxes import batch_totals, box_title
from queueboard.phrases.late import added_words, received_words


class ReceivedScreen(ShopScreen[bool]):
    """The totals of the new box, then the stub and the tags as they would be printed."""

    CSS_PATH = "receive.tcss"
    BINDING_GROUP_TITLE = "A box just received"
    HELP = helping.RECEIVED
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,plus,minus,escape,q,full_stop,comma", "leave", "back to the board", id="received.leave"),
        Binding("v,asterisk", "write", "write to a file, to print it", id="received.write"),
    ]

    def __init__(
        self, desk: Desk, number: int, *, print_now: bool = False, heading: str = "Received", added: str = ""
    ) -> None:
        """print_now: the papers are written out at once, as `v` does. heading: what stands before the box's name.

        added: the tag of a knife that came later; the stub is printed again, and this tag alone.
        """
        super().__init__(desk)
        self.number = number
        self.print_now = print_now
        self.heading = f"Added {added}" if added else heading
        self.added = added

    def on_mount(self) -> None:
        if self.print_now:
            self.action_write()

    def compose(self) -> ComposeResult:
        box, picture = self.desk.picture.box(self.number), self.desk.picture
        yield Static(Content(f"{self.heading}: {box_title(box)}" if box is not None else self.heading), id="heading")
        if box is not None:
            yield Static(Content("\n".join(batch_totals(box, picture.settings, picture.now))), id="totals")
            told = added_words(self.added, box, picture.now) if self.added else received_words(box.forecast)
            if told:
                yield Static(Content(told), id="honest")
        with VerticalScroll(id="paper"):
            yield Static(Content(self.text()))
        yield Static(Content("Enter back to the board · v or * writes stub and tags to a file"), id="keys")

    def text(self) -> str:
        """The stub for the customer, then a tag for each handle."""
        box = self.desk.picture.box(self.number)
        if box is None:
            return ""
        tagged = replace(box, knives=tuple(k for k in box.knives if k.tag == self.added)) if self.added else box
        return f"{stub(box, self.desk.picture)}\n{handle_tags(tagged, self.desk.picture)}"

    def action_write(self) -> None:
        """Write it beside the shop file and say where."""
        write_and_say(self, f"received-{self.number}.txt", self.text())

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(True)
