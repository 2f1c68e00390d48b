"""Settings changed in their text: one value, one row; every other sign of the text stays as it was typed.

What comes out is read again and held against what was meant, so that a text written in an unforeseen way is refused
and never bent.
"""

import re
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from copy import deepcopy
from decimal import Decimal
from functools import lru_cache

from queueboard.errors import TypedError
from queueboard.settings.locate import Layout, Path, layout_of

Parts = Sequence[tuple[tuple[str, ...], str]]
"""The values of a new row: the keys that lead to each, and the value as TOML writes it."""

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_TO_ESCAPE = re.compile(r'["\\\x00-\x1f\x7f]')


def values_in(text: str) -> dict[str, object]:
    """The bare values of a text, which must be valid TOML, for the caller to change; a number with a point is exact."""
    return deepcopy(_read(text))


@lru_cache(maxsize=4)
def _read(text: str) -> dict[str, object]:
    """Read once for all that ask for the same text: each section of the shop's numbers does, and each change of one."""
    return tomllib.loads(text, parse_float=Decimal)


def value_at(values: object, path: Path) -> object | None:
    """The value at a path; None where nothing is written."""
    for key in path:
        if isinstance(values, Mapping):
            values = values.get(key)
        elif isinstance(values, list) and isinstance(key, int) and key < len(values):
            values = values[key]
        else:
            return None
    return values


def quoted(text: str) -> str:
    """The text as TOML writes it, in quotes."""
    return '"' + _TO_ESCAPE.sub(_escaped, text) + '"'


def _escaped(found: re.Match[str]) -> str:
    sign = found[0]
    return f"\\{sign}" if sign in '"\\' else f"\\u{ord(sign):04X}"


def put(text: str, path: Path, literal: str) -> str:
    """The text with this value at this path, written anew where nothing stood; TypedError where that cannot be."""
    layout = layout_of(text)
    if path in layout.values:
        start, end = layout.values[path]
        if any(start <= remark < end for remark in layout.remarks):
            raise TypedError(
                f"Line {layout.lines[path]} of the settings has remarks of its own between its values, which would be "
                "lost here. Change it in the text: v writes it, t takes it in."
            )
        changed = f"{text[:start]}{literal}{text[end:]}"
    else:
        changed = _with_key(text, layout, path, literal)
    wanted = values_in(text)
    _set(wanted, path, values_in(f"x = {literal}")["x"])
    return _as_meant(changed, wanted)


def take_out(text: str, path: Path) -> str:
    """The text without the key, table or row at this path; the same text where nothing is written there."""
    wanted = values_in(text)
    if value_at(wanted, path) is None:
        return text
    layout = layout_of(text)
    if path in layout.pairs:
        changed = _without_pair(text, layout, path)
    else:
        changed = text
        for start, end in reversed(list(_blocks(text, layout, path))):
            changed = changed[:start] + changed[end:]
    _remove(wanted, path)
    return _as_meant(changed, wanted, bare=True)


def with_row(text: str, path: Path, parts: Parts, place: int | None = None) -> str:
    """The text with one more row in the list of tables at this path: before the row at *place*, else as the last."""
    layout, wanted, end = layout_of(text), values_in(text), _line_end(text)
    rows = value_at(wanted, path)
    count = len(rows) if isinstance(rows, list) else 0
    place = count if place is None else min(place, count)
    if path in layout.values:
        changed = _with_entry(text, layout, path, _inline(parts), place)
    else:
        pairs = "".join(f"{key} = {value}{end}" for key, value in _grouped(parts))
        row = f"[[{_keys(path)}]]{end}{pairs}"
        if count and place == 0:
            at = next(start for found, start in layout.headers if found == (*path, 0))
            changed = f"{text[:at]}{row}{end}{text[at:]}"
        else:
            at = _block_end(text, layout, (*path, place - 1)) if count else _home(text, layout, path)
            changed = _with_block(text, at, row)
    row_values = values_in(f"x = {_inline(parts)}")["x"]
    _insert(wanted, path, place, row_values)
    return _as_meant(changed, wanted)


def _with_key(text: str, layout: Layout, path: Path, literal: str) -> str:
    """A key that was not written: behind its neighbours, or in a table of its own."""
    table, key, end = path[:-1], path[-1], _line_end(text)
    if table in layout.values:
        return _with_entry(text, layout, table, f"{_key(key)} = {literal}", None)
    headers = [start for found, start in layout.headers if found == table]
    if headers:
        at = _pairs_end(text, layout, table, headers[0])
        gap = "" if text[:at].endswith("\n") else end
        return f"{text[:at]}{gap}{_key(key)} = {literal}{end}{text[at:]}"
    return _with_block(text, _home(text, layout, table), f"[{_keys(table)}]{end}{_key(key)} = {literal}{end}")


def _with_entry(text: str, layout: Layout, path: Path, entry: str, place: int | None) -> str:
    """One more entry in a list or an inline table: before the one at *place*, else as the last."""
    start, end = layout.values[path]
    inner = [stretch for found, stretch in layout.pairs.items() if found[:-1] == path]
    if place is not None and place < len(inner):
        at = inner[place][0]
        return f"{text[:at]}{entry}, {text[at:]}"
    if inner:
        at = max(stretch[1] for stretch in inner)
        return f"{text[:at]}, {entry}{text[at:]}"
    filled = f"{{ {entry} }}" if text[start] == "{" else f"[{entry}]"
    return f"{text[:start]}{filled}{text[end:]}"


def _without_pair(text: str, layout: Layout, path: Path) -> str:
    start, end = layout.pairs[path]
    if path[:-1] not in layout.values:
        return text[: text.rfind("\n", 0, start) + 1] + text[_next_line(text, end) :]
    behind = re.compile(r"\s*,\s*").match(text, end)
    if behind:
        return text[:start] + text[behind.end() :]
    return re.sub(r",\s*$", "", text[:start]) + text[end:]


def _blocks(text: str, layout: Layout, path: Path) -> Iterable[tuple[int, int]]:
    """The tables at a path and below it, each from its header to the end of its last line, with one empty line."""
    for found, start in layout.headers:
        if found[: len(path)] == path:
            end = _pairs_end(text, layout, found, start)
            blank = re.compile(r"[ \t]*\r?\n").match(text, end)
            before = re.search(r"(?<=\n)\r?\n$", text[:start])
            if blank or before is None or end < len(text):
                yield start, blank.end() if blank else end
            else:
                yield before.start(), end


def _block_end(text: str, layout: Layout, path: Path) -> int:
    """Where the last line of a row ends, the tables below it included."""
    inside = [(found, start) for found, start in layout.headers if found[: len(path)] == path]
    return _pairs_end(text, layout, *inside[-1])


def _pairs_end(text: str, layout: Layout, table: Path, start: int) -> int:
    """Where the last line of a table with a value ends; the end of its header where it has none."""
    following = min((at for _, at in layout.headers if at > start), default=len(text))
    ends = [
        end for found, (key, end) in layout.pairs.items() if start < key < following and found[: len(table)] == table
    ]
    return _next_line(text, max(ends, default=text.index("]", start)))


def _home(text: str, layout: Layout, path: Path) -> int:
    """Where a table that was never written begins: in its row, else behind its example in the remarks, else last."""
    numbered = [place for place, key in enumerate(path) if isinstance(key, int)]
    if numbered:
        return _block_end(text, layout, path[: numbered[-1] + 1])
    example = re.search(rf"^# ?\[+{re.escape(_keys(path))}\]+[^\n]*\n(?:#[^\n]*(?:\n|$))*", text, re.MULTILINE)
    if example and re.compile(r"(?:[ \t\r\n]|#[^\n]*)*(?:\[|$)").match(text, example.end()):
        return example.end()
    return len(text)


def _with_block(text: str, at: int, block: str) -> str:
    """A table put between others, an empty line before it."""
    end = _line_end(text)
    before = "" if text[:at].endswith("\n") or not at else end
    behind = end if text[at:].strip() and not re.match(r"\r?\n", text[at:]) else ""
    return f"{text[:at]}{before}{end}{block}{behind}{text[at:]}"


def _next_line(text: str, at: int) -> int:
    found = text.find("\n", at)
    return len(text) if found < 0 else found + 1


def _line_end(text: str) -> str:
    return "\r\n" if "\r\n" in text else "\n"


def _key(key: str | int) -> str:
    return f"{key}" if _BARE.fullmatch(f"{key}") else quoted(f"{key}")


def _keys(path: Path) -> str:
    return ".".join(_key(key) for key in path if isinstance(key, str))


def _grouped(parts: Parts) -> Iterable[tuple[str, str]]:
    """The pairs of a row by its own keys; what lies a step deeper becomes an inline table."""
    inner: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for keys, literal in parts:
        inner.setdefault(keys[0], []).append((keys[1:], literal))
    for key, below in inner.items():
        yield _key(key), below[0][1] if not below[0][0] else _inline(below)


def _inline(parts: Parts) -> str:
    return "{ " + ", ".join(f"{key} = {value}" for key, value in _grouped(parts)) + " }"


def _as_meant(text: str, wanted: object, *, bare: bool = False) -> str:
    """The changed text, once it says what was meant and nothing else; bare: empty lists and tables count as none."""
    try:
        found: object = values_in(text)
    except ValueError:
        found = None
    if (_bare(found) == _bare(wanted)) if bare else (found == wanted):
        return text
    raise TypedError(
        "The settings are written in a way that cannot be changed from here. Change them in the text: v writes it, "
        "t takes it in."
    )


def _bare(values: object) -> object:
    """The values without tables and lists that hold nothing: the last row takes its list with it."""
    if not isinstance(values, dict):
        return values
    inner = {key: _bare(value) for key, value in values.items()}
    return {key: value for key, value in inner.items() if value not in ({}, [])}


def _set(values: dict[str, object], path: Path, value: object) -> None:
    here: object = values
    for key in path[:-1]:
        if isinstance(here, dict) and isinstance(key, str):
            here = here.setdefault(key, {})
        elif isinstance(here, list) and isinstance(key, int):
            here = here[key]
    match here, path[-1]:
        case dict(), key:
            here[key] = value
        case list(), int(key):
            here[key] = value


def _remove(values: dict[str, object], path: Path) -> None:
    here = value_at(values, path[:-1])
    match here, path[-1]:
        case dict(), key:
            del here[key]
        case list(), int(key):
            del here[key]


def _insert(values: dict[str, object], path: Path, place: int, row: object) -> None:
    if not isinstance(value_at(values, path), list):
        _set(values, path, [])
    rows = value_at(values, path)
    if isinstance(rows, list):
        rows.insert(place, row)
