"""What was done to one box and its knives, newest first."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopModal
from queueboard.board.desk import Desk
from queueboard.phrases import helping
from queueboard.phrases.moves import history_words
from queueboard.shop.picture import Picture
from queueboard.shop.undoing import box_history


class BoxHistoryScreen(ShopModal[None]):
    """One line a step: when, who, what; corrections leave the old line standing."""

    CSS_PATH = "box.tcss"
    BINDING_GROUP_TITLE = "The history of a box"
    HELP = helping.BOX_HISTORY
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,q,h,enter,minus,full_stop,comma", "leave", "back", id="box_history.leave"),
    ]

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id

    def compose(self) -> ComposeResult:
        with Vertical(id="about"):
            yield Static("What was done to the box, newest first", id="heading")
            with VerticalScroll(id="history"):
                yield Static("", id="steps")
            yield Static(Content("↑ ↓ scroll · ? keys · . back"), id="keys")

    def on_mount(self) -> None:
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Read the history again."""
        steps = box_history(self.desk.shop, self.box_id)
        lines = "\n".join(history_words(step, picture.now) for step in steps)
        self.query_one("#steps", Static).update(Content(lines or "Nothing was done to this box yet."))

    def action_leave(self) -> None:
        """Back to the box."""
        self.dismiss(None)
