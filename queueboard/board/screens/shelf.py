"""What is ready and not fetched: days, place, what was told and how; the money, and what is due."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.desk import Desk
from queueboard.board.headed import HEAD
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.dialogs.money import PaymentDialog
from queueboard.board.screens.dialogs.shelf import PlaceDialog
from queueboard.board.screens.message import MessageScreen
from queueboard.board.screens.paper_out import write_and_say
from queueboard.clean import cell_text
from queueboard.papers.shelf import shelf_list
from queueboard.papers.text import wrapped
from queueboard.phrases import helping
from queueboard.phrases.messages import law_words
from queueboard.phrases.shelf import rule_words, shelf_groups, shelf_line, shelf_sum, since_words
from queueboard.shelf_words import MessageSort
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.shelving import ShelfBox, on_shelf


class ShelfScreen(BoxListScreen):
    """Every box that waits to be fetched, the longest first; nothing leads away from here but fetching."""

    HELP = helping.SHELF
    BINDING_GROUP_TITLE = "On the shelf"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus,n",
            "notice",
            "the notice, to send and to note",
            tooltip="Read the notice, send it, note that it was told.",
            id="shelf.notice",
        ),
        Binding("asterisk,p", "place", "where it stands", tooltip="Note where the box stands.", id="shelf.place"),
        Binding("slash,c", "close_out", "it is fetched: close out", id="shelf.close_out"),
        Binding("y", "pay", "take money", tooltip="Take money for this box.", id="shelf.pay"),
        Binding("v", "write", "write the list to a file, to print it", id="shelf.write"),
        Binding("S", "leave", "back to the board", id="shelf.leave"),
    ]
    KEYS = "+ notice · * place · / fetched · y pay · Enter to it · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.there: tuple[ShelfBox, ...] = ()

    def show(self, picture: Picture) -> None:
        """Read what was told anew with each picture."""
        self.there = on_shelf(self.desk.shop, picture)
        super().show(picture)

    def heading(self, picture: Picture) -> Content:
        """How many there are, and what is due."""
        return Content(f"The shelf · {shelf_sum(self.there)}")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Those not paid, those paid; then the shop's own days and the law line."""
        groups = shelf_groups(self.there)
        said = rule_words(picture.settings), law_words(picture.settings, picture.now.date())
        width = max(40, self.app.size.width - 4)
        below = "\n ".join(("", *(part for line in said for part in wrapped(line, width))))
        return (
            *(line for group in groups for line in _group(*group, picture)),
            Line(id="rule", text=Content(below)),
        )

    def action_notice(self) -> None:
        """Show the notice that it waits to be fetched."""
        if (box := self.under_cursor()) is not None:
            self.app.push_screen(MessageScreen(self.desk, box.box.id, MessageSort.UNCLAIMED))

    def action_place(self) -> None:
        """Ask where it stands."""
        if (box := self.under_cursor()) is not None:
            self.app.push_screen(PlaceDialog(self.desk, box.box.id))

    def action_close_out(self) -> None:
        """Lead it out of the shop."""
        if (box := self.under_cursor()) is not None:
            self.app.push_screen(CloseOutScreen(self.desk, box.box.id))

    def action_pay(self) -> None:
        """Take money for it."""
        if (box := self.under_cursor()) is not None:
            self.app.push_screen(PaymentDialog(self.desk, box.box.id))

    def action_write(self) -> None:
        """Write the list beside the shop file and say where."""
        write_and_say(self, "shelf.txt", shelf_list(self.there, self.desk.picture))

    def under_cursor(self) -> BoxPicture | None:
        """The box typed, else the one under the cursor; without one a sentence and None."""
        line = self.current()
        number = line.number if line is not None else None
        box = None if number is None else self.desk.picture.box(number)
        if box is None:
            self.say("Put the cursor on a box.", trouble=True)
        return box


def _group(heading: str, boxes: tuple[ShelfBox, ...], picture: Picture) -> tuple[Line, ...]:
    today = picture.now.date()
    return (
        Line(id=heading, text=Content.styled(heading, HEAD)),
        *(
            Line(
                id=str(one.box.box.id),
                number=one.box.box.number,
                text=Content.assemble(
                    (cell_text(shelf_line(one, picture)), "bold"),
                    f"\n    {cell_text(since_words(one, today))}",
                    f"\n    {cell_text(one.box.customer.name)}",
                ),
            )
            for one in boxes
        ),
    )
