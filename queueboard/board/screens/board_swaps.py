"""From the board to the kitchens with swap sets."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_asks import BoardAsks


class BoardSwaps(BoardAsks):
    """The key that leads there; while the shop has not switched swap sets on it says how, and does nothing else."""

    BINDING_GROUP_TITLE = "Kitchens"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "W",
            "swaps",
            "swap sets",
            show=False,
            tooltip="Kitchens with swap sets: clean, dull, missing, the next round.",
            id="board.swaps",
        ),
    ]

    def action_swaps(self) -> None:
        """Open the kitchens' list."""
        from queueboard.board.screens.swaps import SwapsScreen
        from queueboard.phrases.swaps import SWITCHED_OFF

        if self.desk.picture.settings.swaps.on:
            self.app.push_screen(SwapsScreen(self.desk), self.come_back)
        else:
            self.say(SWITCHED_OFF)

    def come_back(self, number: int | None) -> None:
        """Put the cursor on the box a screen was left with."""
        raise NotImplementedError
