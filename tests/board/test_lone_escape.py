"""The Esc key is told from what a terminal says with an Esc in front."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.board.lone_escape import ESC, LoneEscapes


@pytest.mark.parametrize(
    ("read", "parts"),
    [
        ("417", ["417"]),
        ("\x1b4", [ESC, "4"]),
        ("\x1b+\x1b\r", [ESC, "+", ESC, "\r"]),
        ("4\x1b17", ["4", ESC, "17"]),
        ("\x1b\x1b[A", [ESC, "\x1b[A"]),
        ("\x1b[A\x1bOM", ["\x1b[A\x1bOM"]),
        ("\x1b[200~a\x1b4\x1b[201~\x1b4", ["\x1b[200~", "a\x1b4\x1b[201~", ESC, "4"]),
    ],
)
def test_what_was_read_at_once(read: str, parts: list[str]) -> None:
    """Esc before a digit is a key; before a sequence's own sign, and in what is pasted, it is none."""
    assert list(LoneEscapes().take(read)) == parts


def test_an_escape_at_the_end_waits_for_what_comes() -> None:
    """An Esc that came alone is a key once nothing came behind it, and the beginning of an arrow otherwise."""
    escapes = LoneEscapes()

    assert list(escapes.take("4\x1b")) == ["4"]
    assert list(escapes.wait_is_over()) == [ESC]
    assert list(escapes.wait_is_over()) == []
    assert list(escapes.take("\x1b")) == []
    assert list(escapes.take("[A")) == ["\x1b[A"]


@given(st.lists(st.text(alphabet="\x1b[20~1aO4")))
def test_nothing_is_lost(chunks: list[str]) -> None:
    """Whatever comes in whatever pieces, every letter of it goes on, in its order."""
    escapes = LoneEscapes()

    out = [part for chunk in chunks for part in escapes.take(chunk)]

    assert "".join([*out, *escapes.wait_is_over()]) == "".join(chunks)
