"""Keys as they are printed on a keyboard, and the bindings of a screen in groups."""

from collections.abc import Iterator

from textual.binding import Binding
from textual.dom import DOMNode

from queueboard.slotted import dataclass

NAMES = {
    "plus": "+",
    "minus": "-",
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
    "delete": "Del",
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


def key_name(key: str) -> str:
    """A key as it is printed on a keyboard: Ctrl+Q, Shift+↑, +."""
    *held, last = key.split("+")
    if not last:
        return key
    name = NAMES.get(last, last.upper() if held or len(last) > 1 else last)
    return "+".join([*(word.capitalize() for word in held), name])


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """The keys of one action, and what it does."""

    keys: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyGroup:
    """Keys that belong together, under a title."""

    title: str
    lines: tuple[KeyLine, ...]


def key_groups(node: DOMNode) -> Iterator[KeyGroup]:
    """The keys that a screen or widget of ours binds, by the class that binds them, its own first.

    Each such class has a BINDING_GROUP_TITLE, under which they stand here and in README.
    """
    for holder in type(node).__mro__:
        if not holder.__module__.startswith("queueboard.") or "BINDINGS" not in vars(holder):
            continue
        lines: dict[str, KeyLine] = {}
        for binding in Binding.make_bindings(vars(holder)["BINDINGS"]):
            if binding.system:
                continue
            name, known = key_name(binding.key), lines.get(binding.action)
            keys = known.keys if known is not None else ()
            lines[binding.action] = KeyLine(
                keys=keys if name in keys else (*keys, name), sentence=binding.tooltip or _sentence(binding.description)
            )
        if lines:
            yield KeyGroup(
                title=str(vars(holder).get("BINDING_GROUP_TITLE") or holder.__name__), lines=tuple(lines.values())
            )


def _sentence(label: str) -> str:
    """A label as a sentence of its own."""
    return f"{label[:1].upper()}{label[1:]}."
