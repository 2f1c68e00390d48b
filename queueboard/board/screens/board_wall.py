"""From the board to the wall that the whole shop sees."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_asks import BoardAsks


class BoardWall(BoardAsks):
    """The key that leads there."""

    BINDING_GROUP_TITLE = "Wall"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "V",
            "wall",
            "the wall",
            show=False,
            tooltip="Twelve boxes in large numbers, for a screen on the wall; no names, phones or prices.",
            id="board.wall",
        ),
    ]

    def action_wall(self) -> None:
        """Open the wall."""
        from queueboard.board.screens.wall import WallScreen

        self.app.push_screen(WallScreen(self.desk))
