"""Questions about the knife or box under the cursor, or about the tag that was typed."""

from typing import ClassVar

from textual import on
from textual.binding import Binding, BindingType

from queueboard.board.screens.board_moves import BoardMoves
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.tag_entry import read_tag
from queueboard.errors import QueueboardError, TypedError
from queueboard.shop.picture import BoxPicture
from queueboard.values.knife import Knife

NEEDS_A_BOX = {"move", "ready", "mark", "box", "close_out", "ask", "edge", "papers"}
"""Actions about what the cursor is on."""


class BoardAsks(BoardMoves):
    """About one box or knife."""

    BINDING_GROUP_TITLE = "The knife or box under the cursor, or the tag typed"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,b", "box", "box", tooltip="Everything of the box under the cursor.", id="board.box"),
        Binding("E", "edge", "test", show=False, tooltip="Read the edge with the gauge, or judge it.", id="board.edge"),
        Binding(
            "c",
            "close_out",
            "close out",
            tooltip="Lead the box out of the shop: count, names, label, money.",
            id="board.close-out",
        ),
        Binding(
            "w",
            "ask('waiting')",
            "waiting",
            show=False,
            tooltip="Put a knife or box on waiting, or say that it goes on.",
            id="board.waiting",
        ),
        Binding(
            "a",
            "ask('packing')",
            "packing",
            show=False,
            tooltip="Wrapped, boxed, label on, on the shelf.",
            id="board.packing",
        ),
        Binding("n", "ask('note')", "note", show=False, tooltip="Write a note on the knife or box.", id="board.note"),
        Binding(
            "x",
            "ask('decline')",
            "decline",
            show=False,
            tooltip="Decline the knife, or take it after all.",
            id="board.decline",
        ),
        Binding(
            "p",
            "ask('promise')",
            "promise",
            show=False,
            tooltip="Tell the customer a date; the one before stays in the history.",
            id="board.promise",
        ),
        Binding(
            "dollar_sign",
            "ask('price')",
            "price",
            show=False,
            tooltip="Set the price of the knife by hand.",
            id="board.price",
        ),
        Binding(
            "y", "ask('payment')", "payment", show=False, tooltip="Take a payment for the box.", id="board.payment"
        ),
        Binding(
            "e",
            "ask('correct')",
            "correct",
            show=False,
            tooltip="Correct what was typed of the knife or box.",
            id="board.correct",
        ),
        Binding(
            "v", "ask('flags')", "rush", show=False, tooltip="Rush, this next, never slip this one.", id="board.flags"
        ),
        Binding("K", "ask('add')", "add a knife", show=False, tooltip="Add a knife that came later.", id="board.add"),
        Binding(
            "o",
            "ask('open')",
            "open",
            show=False,
            tooltip="Open a box; what became of an announced one.",
            id="board.open",
        ),
        Binding(
            "i",
            "ask('thing')",
            "comes with",
            show=False,
            tooltip="Add what came with the box: sheath, roll.",
            id="board.thing",
        ),
    ]

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """A key that cannot work is not offered."""
        if action not in NEEDS_A_BOX or self.tag_entry.typed:
            return True
        box, knife = self.box_here(), self.knife_here()
        if box is None:
            return False
        if parameters == ("open",):
            return not box.box.opened
        return knife is not None if parameters in {("decline",), ("price",)} else True

    def aimed_at(self, *, to_move: bool = False) -> tuple[BoxPicture, Knife | None] | None:
        """What an action is about: the tag typed, where the cursor then goes, else what the cursor is on.

        to_move: of a box typed, what the plan says is not asked for.
        """
        entry = self.tag_entry
        if not entry.typed:
            box = self.box_here()
            return (self._with_its_plan(box), self.knife_here()) if box is not None else None
        try:
            box, knife = read_tag(entry.typed, self.desk.seen)
        except TypedError as error:
            entry.refuse()
            self.say(f"{error} The next digit begins a new number.", trouble=True)
            return None
        entry.end()
        self.jump(box, knife)
        return (box if to_move else self._with_its_plan(box)), knife

    def _with_its_plan(self, box: BoxPicture) -> BoxPicture:
        return self.desk.picture.box(box.box.number) or box

    @on(ColumnView.Opened)
    def action_box(self) -> None:
        if (aim := self.aimed_at()) is not None:
            self.open_box(*aim)

    def open_box(self, box: BoxPicture, knife: Knife | None = None) -> None:
        """Show everything of a box, the cursor on this knife of it."""
        from queueboard.board.screens.box import BoxScreen

        self.app.push_screen(BoxScreen(self.desk, box.box.id, 0 if knife is None else knife.id))

    def action_close_out(self) -> None:
        if (aim := self.aimed_at()) is not None:
            self.close_out(aim[0])

    def close_out(self, box: BoxPicture) -> None:
        """Lead a box out of the shop."""
        from queueboard.board.screens.close_out import CloseOutScreen

        self.app.push_screen(CloseOutScreen(self.desk, box.box.id))

    def action_edge(self) -> None:
        """Test the knife aimed at; of a box the one that waits for it."""
        if (aim := self.aimed_at()) is not None:
            self.test(*aim)

    def action_ask(self, what: str) -> None:
        """Ask one question about the knife or box aimed at."""
        from queueboard.board.screens.dialogs import dialog_for

        if (aim := self.aimed_at()) is None:
            return
        box, knife = aim
        try:
            self.app.push_screen(dialog_for(what, self.desk, knife or box.box))
        except QueueboardError as error:
            self.say(str(error), trouble=True)
