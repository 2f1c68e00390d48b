"""README's table of keys, made from the key bindings themselves.

Run `python -m tests.house.keys_table` to write it into README.md.
"""

import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator

from textual.binding import Binding
from textual.dom import DOMNode

import queueboard.board
from queueboard.board.key_names import key_name
from tests.house.tree import ROOT

README = ROOT / "README.md"
START = "<!-- keys: python -m tests.house.keys_table -->\n"
END = "<!-- end of keys -->"

TITLES = {
    "QueueboardApp": "On every screen",
    "ThemedApp": "Appearance, on every screen",
    "BellApp": "From anywhere, out of any field too",
    "BoardScreen": "The board",
    "BoardFigures": "From the board to the figures",
    "BoardMoves": "Moving on the board",
    "BoardView": "Getting about on the board",
    "BoardSwaps": "Kitchens",
    "BoardMarket": "Market",
    "BoardWall": "Wall",
    "BoardPapers": "Paper, and a loose knife",
    "ColumnView": "Within a column",
    "TagEntry": "While a number is typed",
    "TrayDialog": "Before a whole tray moves",
    "DayScreen": "Day list",
    "DayRuns": "Runs on the day list",
    "TypeBackScreen": "A day sheet typed back",
    "WeekScreen": "The week ahead",
    "SaidScreen": "What was said and seen",
    "RunDialog": "Before a run of several boxes moves",
    "BoxListScreen": "Day list, late, labels, all boxes",
    "LateScreen": "Late boxes",
    "LabelsScreen": "Return labels",
    "OwingScreen": "Owed",
    "FoundScreen": "Found knives",
    "ShelfScreen": "The shelf",
    "SwapsScreen": "Kitchens with swap sets",
    "SwapSheetScreen": "The sheet of a kitchen",
    "MarketScreen": "A market day typed in",
    "WallScreen": "On the wall",
    "EveningScreen": "The end of the day",
    "MonthScreen": "The month",
    "BoxesScreen": "All boxes",
    "FindScreen": "Find",
    "LooseScreen": "A loose knife",
    "PapersDialog": "Papers of a box",
    "BoxScreen": "One box",
    "BoxPapers": "The papers of a box",
    "BoxMoney": "The money of one box",
    "BoxShelf": "The shelf and the customer of one box",
    "MessageScreen": "A message to a customer",
    "GoneScreen": "A box that is gone",
    "BoxHistoryScreen": "History of a box",
    "EdgeScreen": "The test of an edge",
    "EdgeView": "What is read at the test",
    "CloseOutScreen": "Close-out",
    "SummaryScreen": "A box just gone",
    "BoxForm": "Receive or announce",
    "ReceiveScreen": "Receive",
    "CustomerPicker": "Receive: the surname",
    "KnifeLines": "Receive: the knives",
    "ReceivedScreen": "A box just received",
    "WalkInScreen": "The bell: a walk-in",
    "Dialog": "A question",
    "PromiseDialog": "Telling a date",
    "OpenBoxDialog": "Opening a box",
    "Choice": "Numbered answers",
    "Tick": "Yes or no",
    "UndoScreen": "Undo",
    "HelpScreen": "Help",
    "InitialsScreen": "Who acts",
    "FirstScreen": "A new shop",
}
"""What the keys belong to, in the order of the table; a class that is not here comes last, by its own first words."""


def holders() -> Iterator[type[DOMNode]]:
    """Every class of the board that binds keys, by module and name."""
    for module in pkgutil.walk_packages(queueboard.board.__path__, "queueboard.board."):
        importlib.import_module(module.name)
    waiting: list[type[DOMNode]] = [DOMNode]
    ours: set[type[DOMNode]] = set()
    while waiting:
        found = waiting.pop()
        waiting.extend(found.__subclasses__())
        if found.__module__.startswith("queueboard.board") and "BINDINGS" in vars(found):
            ours.add(found)
    order = list(TITLES)
    return iter(
        sorted(ours, key=lambda h: (order.index(h.__name__) if h.__name__ in order else len(order), h.__name__))
    )


def rows(holder: type[DOMNode]) -> Iterator[str]:
    """Keys and what they do, the keys of one action together, in the order they are bound."""
    keys: dict[tuple[str, str], list[str]] = {}
    for binding in Binding.make_bindings(holder.BINDINGS):
        says = (binding.description or binding.tooltip).rstrip(".")
        if says:
            shown = keys.setdefault((binding.action, says), [])
            name = binding.key_display or key_name(binding.key)
            if name not in shown:
                shown.append(name)
    for (_, says), names in keys.items():
        yield " ".join(f"`{name}`" for name in names) + f" {says[0].lower()}{says[1:]}"


def title(holder: type[DOMNode]) -> str:
    """What the keys belong to."""
    if holder.__name__ in TITLES:
        return TITLES[holder.__name__]
    sentence = (inspect.getdoc(holder) or holder.__name__).splitlines()[0]
    return re.split(r"[.;:,]", sentence, maxsplit=1)[0]


def table() -> str:
    """All keys, a paragraph for each screen."""
    parts = ((title(holder), " · ".join(rows(holder))) for holder in holders())
    return "\n" + "".join(f"**{where}**\n{keys}\n\n" for where, keys in parts if keys)


def main() -> None:
    """Write the table into README.md."""
    before, _, rest = README.read_text(encoding="utf-8").partition(START)
    after = rest.partition(END)[2]
    README.write_text(before + START + table() + END + after, encoding="utf-8")


if __name__ == "__main__":
    main()
