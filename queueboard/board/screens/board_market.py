"""From the board to the market day that is typed in."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_asks import BoardAsks


class BoardMarket(BoardAsks):
    """The key that leads there; while the shop has not switched its stall on it says how, and does nothing else."""

    BINDING_GROUP_TITLE = "Market"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "X",
            "market",
            "market day",
            show=False,
            tooltip="The paper of the market stall typed in, a line for each customer.",
            id="board.market",
        ),
    ]

    def action_market(self) -> None:
        """Open the market day."""
        from queueboard.board.screens.market import MarketScreen
        from queueboard.errors import QueueboardError
        from queueboard.phrases.market import SWITCHED_OFF

        if not self.desk.picture.settings.market.on:
            self.say(SWITCHED_OFF)
            return
        try:
            screen = MarketScreen(self.desk)
        except QueueboardError as error:
            self.say(str(error), trouble=True)
        else:
            self.app.push_screen(screen)
