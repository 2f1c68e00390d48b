"""Papers of the box under the cursor, a knife that lies loose, and a sheet of paper typed back."""

from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_asks import BoardAsks
from queueboard.values.knife import Knife

if TYPE_CHECKING:
    from queueboard.shop.loose import Candidate


class BoardPapers(BoardAsks):
    """What leads from the board to paper, and back."""

    BINDING_GROUP_TITLE = "Paper, and what lies loose"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "P",
            "papers",
            "papers",
            show=False,
            tooltip="Tags, stub, packing slip with proof card, day sheet: as text and as a page to print.",
            id="board.papers",
        ),
        Binding(
            "L",
            "loose",
            "loose knife",
            show=False,
            tooltip="Whose is a knife that lies loose? Found by kind, length and mark.",
            id="board.loose",
        ),
        Binding(
            "B",
            "type_back",
            "type a sheet back",
            show=False,
            tooltip="After a power cut: the day sheet in its own order, done or not, paid, Enter.",
            id="board.type-back",
        ),
    ]

    def action_type_back(self) -> None:
        """Type the newest day sheet back."""
        from queueboard.board.screens.type_back import TypeBackScreen

        self.app.push_screen(TypeBackScreen(self.desk))

    def action_papers(self) -> None:
        """Offer the papers of the box aimed at."""
        from queueboard.board.screens.papers import PapersDialog

        if (aim := self.aimed_at()) is not None:
            self.app.push_screen(PapersDialog(self.desk, aim[0].box.id), self.say_if_any)

    def action_loose(self) -> None:
        """Ask for what can be seen of a loose knife."""
        from queueboard.board.screens.loose import LooseScreen

        self.app.push_screen(LooseScreen(self.desk), self.to_loose)

    def to_loose(self, one: "Candidate | None") -> None:
        """Go to the box of the knife that it is; to the found knives, where it is one of them."""
        if one is None:
            return
        if isinstance(one.knife, Knife) and (box := self.desk.picture.box(one.knife.box_number)) is not None:
            self.jump(box, one.knife)
            self.open_box(box, one.knife)
        else:
            self.action_list("found")

    def action_list(self, which: str) -> None:
        """Open one of the lists."""
        raise NotImplementedError
