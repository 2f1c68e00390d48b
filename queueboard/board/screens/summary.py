"""What has just left, in words; it can be written to a file and printed from there."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.headed import headed
from queueboard.board.screens.paper_out import write_and_say
from queueboard.papers.slips import gone_summary
from queueboard.phrases import helping
from queueboard.values.gone import GoneBox


class SummaryScreen(ShopScreen[None]):
    """The summary of a close-out; any of the usual keys leads back to the board."""

    CSS_PATH = "lists.tcss"
    HELP = helping.SUMMARY
    BINDING_GROUP_TITLE = "On the summary"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,escape,full_stop,comma,plus,q", "leave", "back to the board", id="summary.leave"),
        Binding("v,asterisk", "write", "write to a file, to print it", id="summary.write"),
    ]

    def __init__(self, desk: Desk, gone: GoneBox) -> None:
        super().__init__(desk)
        self.gone = gone

    def compose(self) -> ComposeResult:
        """The text as it would be printed, and the keys."""
        with VerticalScroll(id="paper"):
            yield Static(headed(self.text()), id="summary", markup=False)
        yield Static(id="typed", markup=False)
        yield Static("Enter back to the board · v or * writes it to a file", id="keys", markup=False)

    def text(self) -> str:
        """The summary as plain text."""
        return gone_summary(self.gone, self.desk.picture.settings)

    def action_write(self) -> None:
        """Write it beside the shop file and say where."""
        number, day = self.gone.box.number, self.gone.at.date().isoformat()
        write_and_say(self, f"box-{number}-{day}.txt", self.text())

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it below the text, where it covers nothing."""
        self.query_one("#typed", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(None)
