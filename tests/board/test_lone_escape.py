"""The Esc key is told from what a terminal says with an Esc in front."""

from itertools import pairwise

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
        ("\x1b[200~a\x1b4\x1b[201~\x1b4", ["\x1b[200~", "a4\x1b[201~", ESC, "4"]),
        ("\x1b[200~a\x1b[31mb\x1b\x1b[A\x1b[201~", ["\x1b[200~", "ab\x1b[201~"]),
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


@pytest.mark.parametrize("cut", range(1, 24))
def test_a_paste_that_comes_in_two_pieces(cut: int) -> None:
    """Wherever what is pasted is cut by the reading, its end is found and no Esc of it goes on."""
    escapes, whole = LoneEscapes(), "\x1b[200~red \x1b[1mtip\x1b[201~+"

    parts = [*escapes.take(whole[:cut]), *escapes.take(whole[cut:]), *escapes.wait_is_over()]

    assert "".join(parts) == "\x1b[200~red tip\x1b[201~+"


@given(st.lists(st.text(alphabet="\x1b[Ao4+")))
def test_nothing_typed_is_lost(chunks: list[str]) -> None:
    """Whatever is typed in whatever pieces, every letter of it goes on, in its order."""
    escapes = LoneEscapes()

    out = [part for chunk in chunks for part in escapes.take(chunk)]

    assert "".join([*out, *escapes.wait_is_over()]) == "".join(chunks)


@given(st.text(alphabet="\x1b[m31ab "), st.lists(st.integers(min_value=0, max_value=40)))
def test_no_escape_of_a_paste_goes_on(pasted: str, cuts: list[int]) -> None:
    """Whatever is pasted, between its beginning and its end stands text alone."""
    whole, escapes = f"\x1b[200~{pasted}\x1b[201~", LoneEscapes()
    edges = sorted({0, len(whole), *(cut for cut in cuts if cut < len(whole))})

    parts = [part for first, last in pairwise(edges) for part in escapes.take(whole[first:last])]

    said = "".join([*parts, *escapes.wait_is_over()])
    assert said.startswith("\x1b[200~")
    assert said.endswith("\x1b[201~")
    assert "\x1b" not in said[6:-6]
