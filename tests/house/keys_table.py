"""README's table of keys, made from the key bindings themselves.

Run `python -m tests.house.keys_table` to write it into README.md.
"""

import importlib
import inspect
import pkgutil
from collections.abc import Iterator

from textual.app import App
from textual.binding import Binding
from textual.dom import DOMNode

import queueboard.board
from tests.house.tree import ROOT

README = ROOT / "README.md"
START = "<!-- keys: python -m tests.house.keys_table -->\n"
END = "<!-- end of keys -->"

NAMES = {
    "plus": "+",
    "minus": "-",
    "hyphen": "-",
    "asterisk": "*",
    "slash": "/",
    "full_stop": ".",
    "comma": ",",
    "question_mark": "?",
    "dollar_sign": "$",
    "enter": "Enter",
    "escape": "Esc",
    "space": "Space",
    "backspace": "Backspace",
    "delete": "Delete",
    "tab": "Tab",
    "up": "↑",
    "down": "↓",
    "left": "←",
    "right": "→",
    "pageup": "PgUp",
    "pagedown": "PgDn",
    "home": "Home",
    "end": "End",
}
"""Keys as they are printed on a keyboard."""


def printed(key: str) -> str:
    """A key as it is printed on a keyboard: Ctrl+Q, Shift+↑, +."""
    *held, last = key.split("+")
    if not last:
        return key
    name = NAMES.get(last, last.upper() if held else last)
    return "+".join([*(word.capitalize() for word in held), name])


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
    return iter(sorted(ours, key=lambda holder: (not issubclass(holder, App), holder.__module__, holder.__name__)))


def rows(holder: type[DOMNode]) -> Iterator[tuple[str, str]]:
    """Keys and what they do, the keys of one action together, in the order they are bound."""
    keys: dict[tuple[str, str], list[str]] = {}
    for binding in Binding.make_bindings(holder.BINDINGS):
        says = binding.tooltip or binding.description
        if says:
            shown = keys.setdefault((binding.action, says), [])
            name = binding.key_display or printed(binding.key)
            if name not in shown:
                shown.append(name)
    for (_, says), names in keys.items():
        yield " ".join(f"`{name}`" for name in names), says


def table() -> str:
    """The whole table, a part for each screen."""
    parts = []
    for holder in holders():
        lines = [f"| {keys} | {says} |\n" for keys, says in rows(holder)]
        if lines:
            title = (inspect.getdoc(holder) or holder.__name__).splitlines()[0].rstrip(".")
            parts.append(f"\n**{title}**\n\n| key | what it does |\n|---|---|\n{''.join(lines)}")
    return "".join(parts) + "\n"


def main() -> None:
    """Write the table into README.md."""
    before, _, rest = README.read_text(encoding="utf-8").partition(START)
    after = rest.partition(END)[2]
    README.write_text(before + START + table() + END + after, encoding="utf-8")


if __name__ == "__main__":
    main()
