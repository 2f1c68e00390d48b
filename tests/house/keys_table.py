"""README's table of keys, made from the key bindings themselves.

Run `python -m tests.house.keys_table` to write it into README.md.
"""

import importlib
import pkgutil
from collections.abc import Iterator

from textual.binding import Binding
from textual.dom import DOMNode

import queueboard.board
from queueboard.board.key_names import key_name
from tests.house.tree import ROOT

README = ROOT / "README.md"
START = "<!-- keys: python -m tests.house.keys_table -->\n"
END = "<!-- end of keys -->"

ORDER = (
    "QueueboardApp",
    "ThemedApp",
    "BellApp",
    "BoardScreen",
    "BoardFigures",
    "BoardMoves",
    "BoardView",
    "BoardSwaps",
    "BoardMarket",
    "BoardWall",
    "BoardPapers",
    "ColumnView",
    "TagEntry",
    "TrayDialog",
    "DayScreen",
    "DayRuns",
    "TypeBackScreen",
    "WeekScreen",
    "SaidScreen",
    "RunDialog",
    "BoxListScreen",
    "LateScreen",
    "LabelsScreen",
    "OwingScreen",
    "FoundScreen",
    "ShelfScreen",
    "SwapsScreen",
    "SwapSheetScreen",
    "MarketScreen",
    "WallScreen",
    "EveningScreen",
    "MonthScreen",
    "BoxesScreen",
    "FindScreen",
    "LooseScreen",
    "PapersDialog",
    "BoxScreen",
    "BoxPapers",
    "BoxMoney",
    "BoxShelf",
    "MessageScreen",
    "GoneScreen",
    "BoxHistoryScreen",
    "EdgeScreen",
    "EdgeView",
    "CloseOutScreen",
    "SummaryScreen",
    "BoxForm",
    "ReceiveScreen",
    "CustomerPicker",
    "KnifeLines",
    "ReceivedScreen",
    "WalkInScreen",
    "Dialog",
    "PromiseDialog",
    "OpenBoxDialog",
    "Choice",
    "Tick",
    "UndoScreen",
    "HelpScreen",
    "InitialsScreen",
    "FirstScreen",
)
"""The classes whose keys come first in the table, in this order; all others come behind, by name."""


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
    return iter(
        sorted(ours, key=lambda h: (ORDER.index(h.__name__) if h.__name__ in ORDER else len(ORDER), h.__name__))
    )


def written(holder: type[DOMNode]) -> Iterator[Binding]:
    """The bindings of a class itself, a binding of several keys once."""
    return (b for b in vars(holder)["BINDINGS"] if isinstance(b, Binding) and not b.system)


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


def table() -> str:
    """All keys, a paragraph for each screen."""
    parts = ((vars(holder).get("BINDING_GROUP_TITLE"), " · ".join(rows(holder))) for holder in holders())
    return "\n" + "".join(f"**{where}**\n{keys}\n\n" for where, keys in parts if keys)


def main() -> None:
    """Write the table into README.md."""
    before, _, rest = README.read_text(encoding="utf-8").partition(START)
    after = rest.partition(END)[2]
    README.write_text(before + START + table() + END + after, encoding="utf-8")


if __name__ == "__main__":
    main()
