"""The keys that print the papers of one box again: nothing is taken in once more."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen
from queueboard.board.screens.paper_out import write_paper
from queueboard.board.screens.received import ReceivedScreen
from queueboard.errors import FileError
from queueboard.shop.proof import card_of_box


class BoxPapers(ShopScreen[None]):
    """The papers of the box, as they would be printed now."""

    BINDING_GROUP_TITLE = "The papers of the box"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("t", "papers", "stub and tags again, to print", id="box.papers"),
        Binding("P", "card", "proof card to a file, to print it", id="box.card"),
    ]
    box_id: int

    def action_papers(self) -> None:
        """Show the stub and the tags of every knife, those added later too."""
        number = next((box.box.number for box in self.desk.picture.boxes if box.box.id == self.box_id), None)
        if number is not None:
            self.app.push_screen(ReceivedScreen(self.desk, number, heading="Stub and tags"))

    def action_card(self) -> None:
        """Write the proof card of the box, as text and as a page for a browser."""
        if any(box.box.id == self.box_id for box in self.desk.picture.boxes):
            write_card(self, self.box_id)


def write_card(screen: ShopScreen[None] | ShopScreen[int | None], box_id: int) -> None:
    """Write a proof card beside the shop file and say where it lies."""
    from queueboard.papers.proof_card import card_html, card_text

    card = card_of_box(screen.desk.shop, box_id)
    number = card.box.number
    try:
        write_paper(screen.desk, f"card-{number}.txt", card_text(card))
        path = write_paper(screen.desk, f"card-{number}.html", card_html(card, card.settings.papers.size))
    except FileError as error:
        screen.say(str(error), trouble=True)
        return
    screen.say(f"The proof card is in {path}, and as text beside it.")
