"""From the board to the figures: the end of the day, and the month."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.screens.board_asks import BoardAsks


class BoardFigures(BoardAsks):
    """The keys that lead there, and the way back."""

    BINDING_GROUP_TITLE = "From the board to the figures"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "Z",
            "evening",
            "end of the day",
            show=False,
            tooltip="Done, not done, moved, money, dust tray, tomorrow; and closing the day.",
            id="board.evening",
        ),
        Binding(
            "M",
            "month",
            "the month",
            show=False,
            tooltip="Knives by kind, boxes, on time, rework, minutes, money in and owed, month by month.",
            id="board.month",
        ),
    ]

    def action_evening(self) -> None:
        from queueboard.board.screens.evening import EveningScreen

        self.app.push_screen(EveningScreen(self.desk), self.come_back)

    def action_month(self) -> None:
        from queueboard.board.screens.month import MonthScreen

        self.app.push_screen(MonthScreen(self.desk), self.come_back)

    def come_back(self, number: int | None) -> None:
        """Put the cursor on the box a screen was left with."""
        box = self.desk.picture.box(number) if number is not None else None
        if box is not None:
            self.jump(box)
