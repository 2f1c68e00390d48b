"""Where each setting stands in its text: TOML readers give values without lines, and a mistake is found by its line."""

import re
import tomllib
from bisect import bisect_left
from collections.abc import Mapping
from functools import lru_cache

from queueboard.slotted import dataclass

Path = tuple[str | int, ...]
"""The way to a value: ("kinds", 2, "price") is the price in the third [[kinds]]."""

Stretch = tuple[int, int]
"""From and to in a text, in characters, the end not included."""

_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_BLANK_OR_COMMA = re.compile(r"(?:[ \t\r\n,]|#[^\n]*)*")
_EQUALS = re.compile(r"[ \t]*=[ \t]*")
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_KEY = re.compile(r"""[A-Za-z0-9_-]+|"(?:[^"\\\n]|\\.)*"|'[^'\n]*'""")
_TEXT = re.compile(
    r'''"""(?:[^\\]|\\.)*?"{3,5}|\'\'\'.*?'{3,5}|"(?:[^"\\\n]|\\.)*"|'[^'\n]*\'''',
    re.DOTALL,
)
_OTHER = re.compile(r"[^,\]}\n#]*")


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """Where everything stands in a text."""

    lines: Mapping[Path, int]
    """As lines_of gives them."""
    pairs: Mapping[Path, Stretch]
    """Of each key = value, from the key to the end of the value; each entry of a list is its value alone."""
    values: Mapping[Path, Stretch]
    """The value alone; none for a table or a list that headers make."""
    headers: tuple[tuple[Path, int], ...]
    """Each [table] and [[entry]] in the order of the text, with where its first bracket stands."""
    remarks: tuple[int, ...]
    """Where remarks begin that stand inside a value."""


@lru_cache(maxsize=4)
def layout_of(text: str) -> Layout:
    """Where everything stands in *text*, which must be valid TOML."""
    walk = _Walk(text)
    return Layout(
        lines=walk.lines,
        pairs=walk.pairs,
        values=walk.values,
        headers=tuple(walk.headers),
        remarks=tuple(walk.remarks),
    )


def lines_of(text: str) -> Mapping[Path, int]:
    """The line, counted from 1, of each table, key and list entry in *text*, which must be valid TOML.

    A table has the line of its header; one that only its keys make has the line of its first key. The empty path has
    the last line: the place of what is missing altogether.
    """
    return layout_of(text).lines


class _Walk:
    """One walk through a text, collecting lines on the way."""

    def __init__(self, text: str) -> None:
        self._text = text
        self._at = 0
        self._line_ends = [match.start() for match in re.finditer("\n", text)]
        self._entries: dict[Path, int] = {}
        self.pairs: dict[Path, Stretch] = {}
        self.values: dict[Path, Stretch] = {}
        self.headers: list[tuple[Path, int]] = []
        self.remarks: list[int] = []
        self.lines: dict[Path, int] = {(): text.rstrip().count("\n") + 1}
        table: Path = ()
        self._take(_BLANK)
        while self._at < len(text):
            table = self._header() if text[self._at] == "[" else self._pair(table)
            self._take(_BLANK)

    def _take(self, pattern: re.Pattern[str]) -> str:
        match = pattern.match(self._text, self._at)
        taken = match[0] if match else ""
        self._at += len(taken)
        return taken

    def _note(self, path: Path) -> None:
        self.lines.setdefault(path, bisect_left(self._line_ends, self._at) + 1)

    def _keys(self) -> tuple[str, ...]:
        """A key with its dots: a."b c".d is three keys."""
        keys: list[str] = []
        while not keys or self._take(_DOT):
            raw = self._take(_KEY)
            keys.append(next(iter(tomllib.loads(f"{raw} = 0"))) if raw[:1] in ("'", '"') else raw)
        return tuple(keys)

    def _header(self) -> Path:
        """[table] or [[entry]]; the path of what follows it."""
        many = self._text.startswith("[[", self._at)
        line_start = self._at
        self._at += 2 if many else 1
        self._take(_BLANK)
        *above, last = self._keys()
        end = self._at
        path: Path = ()
        for key in above:
            path = self._newest((*path, key))
        path = (*path, last)
        self._at = line_start
        self._note(path)
        if many:
            self._entries[path] = self._entries.get(path, -1) + 1
        path = self._newest(path)
        self._note(path)
        self.headers.append((path, line_start))
        self._at = self._text.index("]]" if many else "]", end) + (2 if many else 1)
        return path

    def _newest(self, path: Path) -> Path:
        """The last entry so far, where the path is a list of tables; else the path itself."""
        return (*path, self._entries[path]) if path in self._entries else path

    def _pair(self, table: Path) -> Path:
        """Key = value; the table it stands in."""
        start = self._at
        keys = self._keys()
        after, self._at = self._at, start
        for length in range(1, len(keys) + 1):
            self._note((*table, *keys[:length]))
        self._at = after
        self._take(_EQUALS)
        self._value((*table, *keys))
        self.pairs[*table, *keys] = (start, self.values[*table, *keys][1])
        return table

    def _value(self, path: Path) -> None:
        sign, start = self._text[self._at], self._at
        if sign == "[":
            self._list(path)
        elif sign == "{":
            self._inline(path)
        else:
            self._take(_TEXT if sign in "\"'" else _OTHER)
        self.values[path] = (start, start + len(self._text[start : self._at].rstrip()))

    def _between(self) -> None:
        """What stands between the entries of a list or an inline table."""
        start = self._at
        if "#" in (between := self._take(_BLANK_OR_COMMA)):
            self.remarks.append(start + between.index("#"))

    def _list(self, path: Path) -> None:
        self._at += 1
        self._between()
        place = 0
        while self._text[self._at] != "]":
            self._note((*path, place))
            self._value((*path, place))
            self.pairs[*path, place] = self.values[*path, place]
            self._between()
            place += 1
        self._at += 1

    def _inline(self, path: Path) -> None:
        self._at += 1
        self._between()
        while self._text[self._at] != "}":
            self._pair(path)
            self._between()
        self._at += 1
