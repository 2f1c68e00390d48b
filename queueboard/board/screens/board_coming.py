"""From the board to boxes that are announced in a file."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_asks import BoardAsks


class BoardComing(BoardAsks):
    """Orders taken in from a file."""

    BINDING_GROUP_TITLE = "What comes in a file"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "I",
            "orders",
            "orders",
            show=False,
            tooltip="Take in a file of orders: boxes that will come by mail.",
            id="board.orders",
        ),
    ]

    def action_orders(self) -> None:
        from queueboard.board.screens.dialogs.orders import OrdersDialog

        self.app.push_screen(OrdersDialog(self.desk))
