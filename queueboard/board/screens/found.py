"""Knives that are here and in no box, the oldest first: noted, and settled."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.dialogs.found import NoteFoundDialog, SettleFoundDialog
from queueboard.clean import cell_text
from queueboard.phrases import helping
from queueboard.phrases.counts import found_count_words, found_knife_words, found_where_words
from queueboard.shop.picture import Picture
from queueboard.values.found import FoundKnife


class FoundScreen(BoxListScreen):
    """What lies around and is nobody's yet."""

    HELP = helping.FOUND
    BINDING_GROUP_TITLE = "On the found knives"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,n", "note", "note a knife that was found", id="found.note"),
        Binding("slash,asterisk,s", "settle", "what became of this one", id="found.settle"),
        Binding("F", "leave", "back to the board", id="found.leave"),
    ]
    KEYS = "+ note one · / what became of it · Enter to its old box · ? keys · . back"

    def heading(self, picture: Picture) -> Content:
        """How many there are."""
        return Content(f"Found knives · {found_count_words(len(picture.found))}")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each found knife with its place and since when; a sentence when there is none."""
        if not picture.found:
            nothing = "No knife is found and nobody's.\nOne that lies around is noted with +, with where it lies."
            return (Line(id="nothing", text=Content(nothing)),)
        return tuple(_line(found, picture) for found in picture.found)

    def action_note(self) -> None:
        """Note one more."""
        self.app.push_screen(NoteFoundDialog(self.desk))

    def action_settle(self) -> None:
        """Say what became of the one under the cursor."""
        line = self.current()
        found = next((one for one in self.desk.picture.found if line is not None and str(one.id) == line.id), None)
        if found is None:
            self.say("Put the cursor on a knife.", trouble=True)
        else:
            self.app.push_screen(SettleFoundDialog(self.desk, found))


def _line(found: FoundKnife, picture: Picture) -> Line:
    here = found.from_box_number is not None and picture.box(found.from_box_number) is not None
    return Line(
        id=str(found.id),
        number=found.from_box_number if here else None,
        stops=True,
        text=Content.assemble(
            (cell_text(found_knife_words(found, picture.settings)), "bold"),
            f"\n    {cell_text(found_where_words(found, picture.now))}\n",
        ),
    )
