"""The key that shows stub and tags of one box again: printed once more, nothing is taken in once more."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen
from queueboard.board.screens.received import ReceivedScreen


class BoxPapers(ShopScreen[None]):
    """The papers of the box, as they would be printed now."""

    BINDING_GROUP_TITLE = "The papers of the box"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("t", "papers", "stub and tags again, to print", id="box.papers")]
    box_id: int

    def action_papers(self) -> None:
        """Show the stub and the tags of every knife, those added later too."""
        number = next((box.box.number for box in self.desk.picture.boxes if box.box.id == self.box_id), None)
        if number is not None:
            self.app.push_screen(ReceivedScreen(self.desk, number, heading="Stub and tags"))
