"""Home: the four columns, the day on top, the box under the cursor below, and a key for everything a person can do."""

from typing import ClassVar

from textual import on
from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen
from queueboard.board.screens.board_coming import BoardComing
from queueboard.board.screens.board_figures import BoardFigures
from queueboard.board.screens.board_market import BoardMarket
from queueboard.board.screens.board_papers import BoardPapers
from queueboard.board.screens.board_swaps import BoardSwaps
from queueboard.board.screens.board_wall import BoardWall
from queueboard.board.trays import trays_to_ready
from queueboard.board.widgets.tag_entry import TagEntry
from queueboard.phrases import helping
from queueboard.values.knife import Knife
from queueboard.words import Column


class BoardScreen(BoardComing, BoardFigures, BoardSwaps, BoardMarket, BoardWall, BoardPapers):
    """The board."""

    HELP = helping.BOARD
    VERTICAL_BREAKPOINTS = [(32, "-high")]
    BINDING_GROUP_TITLE = "The board"
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
        Binding("r", "receive", "receive", tooltip="Take in a box.", id="board.receive"),
        Binding("u", "undo", "undo", tooltip="Take back the newest step, or an earlier one.", id="board.undo"),
        Binding("R", "announce", "announce", tooltip="Note a box that will come by mail.", id="board.announce"),
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
            "h",
            "list('week')",
            "week",
            tooltip="Today and the days ahead: minutes booked, minutes there, what is due.",
            id="board.week",
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
            "O",
            "list('owing')",
            "owed",
            show=False,
            tooltip="Who owes for what has left, the oldest debt first.",
            id="board.owing",
        ),
        Binding(
            "F",
            "list('found')",
            "found knives",
            tooltip="Knives that are here and in no box: note one, say what became of one.",
            id="board.found",
            show=False,
        ),
        Binding(
            "S",
            "list('shelf')",
            "shelf",
            tooltip="What is ready and not fetched: days, place, notices, money.",
            id="board.shelf",
            show=False,
        ),
        Binding(
            "k",
            "list('bench')",
            "bench",
            tooltip="Belts, the tester, belt trials, before and after, charts.",
            id="board.bench",
        ),
        Binding(
            "N",
            "numbers",
            "own numbers",
            show=False,
            tooltip="The shop's own numbers: hours, kinds, prices, carriers, and when each was last checked.",
            id="board.numbers",
        ),
        Binding(
            "z",
            "list('said')",
            "said and seen",
            tooltip="Chances and dates told against what was seen, and the minutes learned.",
            id="board.said",
        ),
        Binding(
            "A",
            "app.turn_theme",
            "appearance",
            False,
            tooltip="Dark, light, high contrast: the next of the three.",
            id="board.appearance",
        ),
        Binding("q", "app.quit", "quit", tooltip="Leave the board; everything is stored.", id="board.quit"),
    ]

    @on(TagEntry.Taken)
    def act_on_tag(self, event: TagEntry.Taken) -> None:
        """Do with the tag what the key says."""
        aim = self.aimed_at(to_move=event.what in {"there", "on", "ready"})
        if aim is None:
            return
        box, knife = aim
        match event.what, knife:
            case "on", Knife():
                self.move_by((knife,), 1)
            case "on", None:
                self.move_box(box, 1)
            case "ready", Knife():
                self.move_to((knife,), Column.READY)
            case "ready", None:
                self.ask_tray(trays_to_ready(box), box)
            case "close", _:
                self.close_out(box)
            case "box", _:
                self.open_box(box, knife)

    @on(TagEntry.Dropped)
    def back_to_columns(self) -> None:
        """The keys go back to the column they came from."""
        self.columns.enter(self.column())

    def action_show_only(self) -> None:
        self.show_only(self.shown.next(self.box_meant()))

    def action_receive(self) -> None:
        from queueboard.board.screens.receive import ReceiveScreen

        self.app.push_screen(ReceiveScreen(self.desk), self.come_back)

    def action_announce(self) -> None:
        from queueboard.board.screens.announce import AnnounceScreen

        self.app.push_screen(AnnounceScreen(self.desk), self.come_back)

    def action_undo(self) -> None:
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))

    def action_numbers(self) -> None:
        from queueboard.board.screens.numbers import NumbersScreen

        self.app.push_screen(NumbersScreen(self.desk))

    def action_list(self, which: str) -> None:
        """Open one of the lists; a box chosen there is where the cursor goes."""
        self.app.push_screen(list_screen(which, self), self.come_back)


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
        case "week":
            from queueboard.board.screens.week import WeekScreen

            return WeekScreen(board.desk)
        case "said":
            from queueboard.board.screens.said import SaidScreen

            return SaidScreen(board.desk)
        case "bench":
            from queueboard.board.screens.bench import BenchScreen

            return BenchScreen(board.desk)
        case "owing":
            from queueboard.board.screens.owing import OwingScreen

            return OwingScreen(board.desk)
        case "found":
            from queueboard.board.screens.found import FoundScreen

            return FoundScreen(board.desk)
        case "shelf":
            return _shelf(board)
        case "labels":
            from queueboard.board.screens.labels import LabelsScreen

            return LabelsScreen(board.desk)
        case _:
            from queueboard.board.screens.boxes import BoxesScreen

            return BoxesScreen(board.desk)


def _shelf(board: BoardScreen) -> ShopScreen[int | None]:
    from queueboard.board.screens.shelf import ShelfScreen

    return ShelfScreen(board.desk)
