"""The keys about where a box stands, what its customer is told, and whether it came back."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen
from queueboard.board.screens.message import MessageScreen


class BoxShelf(ShopScreen[None]):
    """About the box, whatever is under the cursor."""

    BINDING_GROUP_TITLE = "The shelf and the customer of the box"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("N", "messages", "messages to the customer: ready, left, delayed, not fetched", id="box.messages"),
        Binding("S", "ask('place')", "where it stands", tooltip="Note where the box stands.", id="box.place"),
        Binding("B", "ask('call_back')", "it came back: link it to the box it was", id="box.call_back"),
    ]
    box_id: int

    def action_messages(self) -> None:
        """Show the messages that could be told now."""
        self.app.push_screen(MessageScreen(self.desk, self.box_id))
