"""Signs for a terminal that cannot show bars and rules."""

import ast
import io

import pytest
from rich.cells import cell_len
from textual._border import BORDER_CHARS
from textual.scrollbar import ScrollBarRender

from queueboard.papers.plain_signs import PLAIN, plain_signs, signs_for
from queueboard.phrases.bars import measure
from queueboard.phrases.strips import strip_lines
from tests.house.tree import PACKAGE

BESIDE = ("csv_lists.py", "plain_signs.py")
"""Their signs are not drawn: what could open a formula, and the list that is tried here."""


class Terminal(io.TextIOWrapper):
    """A stream that says it is one."""

    def isatty(self) -> bool:
        return True


def terminal(encoding: str) -> Terminal:
    """One whose letters are written so."""
    return Terminal(io.BytesIO(), encoding=encoding)


def drawn_signs() -> set[str]:
    """Every sign in the texts of what is drawn that ASCII has not; letters are a person's."""
    rooms = ("board", "papers", "phrases", "cli")
    files = [path for room in rooms for path in (PACKAGE / room).rglob("*.py") if path.name not in BESIDE]
    trees = [ast.parse(path.read_text(encoding="utf-8")) for path in files]
    texts = [
        node.value
        for tree in trees
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    ]
    return {sign for text in texts for sign in text if not sign.isascii() and not sign.isalpha()}


def test_every_sign_we_draw_has_a_plain_one() -> None:
    """Ours, and those of Textual's frames and scroll bars that the stylesheets ask for; each keeps its one cell."""
    frames = "".join("".join(row) for kind in ("round", "solid", "heavy") for row in BORDER_CHARS[kind])
    bars = "".join((*ScrollBarRender.VERTICAL_BARS, *ScrollBarRender.HORIZONTAL_BARS))

    assert drawn_signs() | {sign for sign in frames + bars if not sign.isascii()} == set(PLAIN)
    assert {cell_len(sign) for sign in (*PLAIN, *PLAIN.values())} == {1}
    assert all(plain.isascii() for plain in PLAIN.values())


def test_bars_and_strips_can_be_read_in_ascii() -> None:
    """Full and free, little and much stay apart."""
    signs = plain_signs("ascii")

    assert measure(5, 8, 8).translate(signs) == "#####..."
    drawn = strip_lines([("before", [100, 300, 300]), ("after", [100, 200, 200, 200])], width=30)
    assert [line.translate(signs) for line in drawn] == [
        "before |:                    =",
        "after  |:         #           ",
        "       |100       gf       300",
    ]


@pytest.mark.parametrize(
    ("encoding", "environment", "drawn"),
    [
        ("utf-8", {}, "█░▸·é"),
        ("utf-8", {"LANG": "de_DE.UTF-8", "TERM": "xterm-256color"}, "█░▸·é"),
        ("utf-8", {"LANG": "C"}, "#.>|é"),
        ("utf-8", {"LC_ALL": "POSIX", "LANG": "de_DE.UTF-8"}, "#.>|é"),
        ("utf-8", {"LC_CTYPE": "C.UTF-8", "LANG": "C"}, "#.>|é"),  # what Python makes of LANG=C
        ("utf-8", {"LC_CTYPE": "C.UTF-8"}, "█░▸·é"),  # what it makes of nothing said
        ("utf-8", {"LC_CTYPE": "de_DE.UTF-8", "LANG": "C"}, "█░▸·é"),
        ("utf-8", {"TERM": "linux"}, "█░>·é"),
        ("iso-8859-1", {}, "#.>·é"),
        ("ascii", {}, "#.>|é"),
    ],
)
def test_a_terminal_is_asked_what_it_can_show(encoding: str, environment: dict[str, str], drawn: str) -> None:
    """By its letters, by the locale that the person chose, by the console's own name; names are left alone."""
    assert "█░▸·é".translate(signs_for(terminal(encoding), environment)) == drawn


def test_a_file_holds_what_its_letters_can() -> None:
    """The locale says nothing of a file or of a text in memory."""
    assert signs_for(io.StringIO(), {"LC_ALL": "C"}) == {}
    assert signs_for(io.TextIOWrapper(io.BytesIO(), encoding="utf-8"), {"LC_ALL": "C"}) == {}
    assert set(signs_for(io.TextIOWrapper(io.BytesIO(), encoding="ascii"), {})) == {ord(sign) for sign in PLAIN}
