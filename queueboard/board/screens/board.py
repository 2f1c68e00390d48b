"""Home: the four columns, the day on top, the box under the cursor below, and a key for everything a person can do."""

from typing import ClassVar

from textual import on
from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen
from queueboard.board.screens.board_moves import BoardMoves
from queueboard.board.trays import trays_by, trays_to_ready
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.tag_entry import TagEntry, read_tag
from queueboard.errors import QueueboardError, TypedError
from queueboard.shop.picture import BoxPicture
from queueboard.values.knife import Knife
from queueboard.words import Column


class BoardScreen(BoardMoves):
    """The board."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "slash,s",
            "show_only",
            "show only",
            tooltip="Show only late, leaving today, waiting, one customer, then all again.",
            id="board.only",
        ),
        Binding(
            "full_stop,comma,d",
            "list('day')",
            "day",
            tooltip="The day's work in order, what leaves, labels, who is waited for.",
            id="board.day",
        ),
        Binding("enter,b", "box", "box", tooltip="Everything of the box under the cursor.", id="board.box"),
        Binding("r", "receive", "receive", tooltip="Take in a box.", id="board.receive"),
        Binding(
            "c",
            "close_out",
            "close out",
            tooltip="Lead the box out of the shop: count, names, label, money.",
            id="board.close-out",
        ),
        Binding("u", "undo", "undo", tooltip="Take back the newest step, or an earlier one.", id="board.undo"),
        Binding(
            "f",
            "list('find')",
            "find",
            tooltip="Find a box by surname, tag, town or the last four of the phone.",
            id="board.find",
        ),
        Binding(
            "j", "list('late')", "late", tooltip="Boxes that are late or will be, the worst first.", id="board.late"
        ),
        Binding(
            "t", "list('boxes')", "all boxes", tooltip="The table of all open boxes with their totals.", id="board.all"
        ),
        Binding(
            "l",
            "list('labels')",
            "labels",
            tooltip="Return labels to buy or to use, the most pressing first.",
            id="board.labels",
        ),
        Binding(
            "w",
            "ask('waiting')",
            "waiting",
            tooltip="Put a knife or box on waiting, or say that it goes on.",
            id="board.waiting",
        ),
        Binding(
            "a", "ask('packing')", "packing", tooltip="Wrapped, boxed, label on, on the shelf.", id="board.packing"
        ),
        Binding("n", "ask('note')", "note", tooltip="Write a note on the knife or box.", id="board.note"),
        Binding(
            "x", "ask('decline')", "decline", tooltip="Decline the knife, or take it after all.", id="board.decline"
        ),
        Binding(
            "p",
            "ask('promise')",
            "promise",
            tooltip="Tell the customer a date; the one before stays in the history.",
            id="board.promise",
        ),
        Binding(
            "dollar_sign", "ask('price')", "price", tooltip="Set the price of the knife by hand.", id="board.price"
        ),
        Binding("y", "ask('payment')", "payment", tooltip="Take a payment for the box.", id="board.payment"),
        Binding(
            "e", "ask('correct')", "correct", tooltip="Correct what was typed of the knife or box.", id="board.correct"
        ),
        Binding("v", "ask('flags')", "rush", tooltip="Rush, this next, never slip this one.", id="board.flags"),
        Binding("k", "ask('add')", "add a knife", tooltip="Add a knife that came later.", id="board.add"),
        Binding("o", "ask('open')", "open", tooltip="Open a box that stands unopened.", id="board.open"),
        Binding(
            "i", "ask('thing')", "comes with", tooltip="Add what came with the box: sheath, roll.", id="board.thing"
        ),
        Binding("q", "app.quit", "quit", tooltip="Leave the board; everything is stored.", id="board.quit"),
    ]

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """A key that cannot work is not offered."""
        if action not in NEEDS_A_BOX or not self.query(TagEntry):
            return True
        box, knife = self.box_here(), self.knife_here()
        if self.query_one(TagEntry).typed:
            return True
        if box is None:
            return False
        if parameters == ("open",):
            return not box.box.opened
        return knife is not None if parameters in {("decline",), ("price",)} else True

    def aimed_at(self) -> tuple[BoxPicture, Knife | None] | None:
        """What an action is about: the tag typed, where the cursor then goes, else what the cursor is on."""
        entry = self.query_one(TagEntry)
        if not entry.typed:
            box = self.box_here()
            return (box, self.knife_here()) if box is not None else None
        try:
            box, knife = read_tag(entry.typed, self.desk.picture)
        except TypedError as error:
            self.say(str(error), trouble=True)
            return None
        entry.end()
        self.jump(box, knife)
        return box, knife

    @on(TagEntry.Taken)
    def act_on_tag(self, event: TagEntry.Taken) -> None:
        """Do with the tag what the key says."""
        aim = self.aimed_at()
        if aim is None:
            return
        box, knife = aim
        match event.what, knife:
            case "on", Knife():
                self.move_by((knife,), 1)
            case "on", None:
                self.ask_tray(trays_by(box, 1), box)
            case "ready", Knife():
                self.move_to((knife,), Column.READY)
            case "ready", None:
                self.ask_tray(trays_to_ready(box), box)
            case "close", _:
                self.close_out(box)
            case "box", _:
                self.open_box(box)

    @on(TagEntry.Dropped)
    def back_to_columns(self) -> None:
        """The keys go back to the column they came from."""
        self.column().focus()

    def action_show_only(self) -> None:
        self.show_only(self.shown.next(self.box_here()))

    @on(ColumnView.Opened)
    def action_box(self) -> None:
        if (aim := self.aimed_at()) is not None:
            self.open_box(aim[0])

    def open_box(self, box: BoxPicture) -> None:
        """Show everything of a box."""
        from queueboard.board.screens.box import BoxScreen

        self.app.push_screen(BoxScreen(self.desk, box.box.id))

    def action_close_out(self) -> None:
        if (aim := self.aimed_at()) is not None:
            self.close_out(aim[0])

    def close_out(self, box: BoxPicture) -> None:
        """Lead a box out of the shop."""
        from queueboard.board.screens.close_out import CloseOutScreen

        self.app.push_screen(CloseOutScreen(self.desk, box.box.id))

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

    def action_receive(self) -> None:
        from queueboard.board.screens.receive import ReceiveScreen

        self.app.push_screen(ReceiveScreen(self.desk), self.come_back)

    def action_undo(self) -> None:
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))

    def action_list(self, which: str) -> None:
        """Open one of the lists; a box chosen there is where the cursor goes."""
        self.app.push_screen(list_screen(which, self), self.come_back)

    def come_back(self, number: int | None) -> None:
        """Put the cursor on the box a screen was left with."""
        box = self.desk.picture.box(number) if number is not None else None
        if box is not None:
            self.jump(box)


NEEDS_A_BOX = {"move", "ready", "mark", "box", "close_out", "ask"}
"""Actions about what the cursor is on."""


def list_screen(which: str, board: BoardScreen) -> ShopScreen[int | None]:
    """The list with this name; each is loaded when it is first asked for."""
    match which:
        case "day":
            from queueboard.board.screens.day import DayScreen

            return DayScreen(board.desk)
        case "find":
            from queueboard.board.screens.find import FindScreen

            return FindScreen(board.desk)
        case "late":
            from queueboard.board.screens.late import LateScreen

            return LateScreen(board.desk)
        case "labels":
            from queueboard.board.screens.labels import LabelsScreen

            return LabelsScreen(board.desk)
        case _:
            from queueboard.board.screens.boxes import BoxesScreen

            return BoxesScreen(board.desk)
