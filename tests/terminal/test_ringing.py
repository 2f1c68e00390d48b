"""The bell in a real terminal, with the bytes that F4 really sends."""

import sys
from pathlib import Path

import pytest

from tests.terminal.conftest import Start

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals of this kind are not there")

F4 = "\x1bOS"
"""F4 as a terminal of today sends it (xterm, and those that are like it)."""


def test_from_a_half_typed_form_and_back(start: Start, shop_file: Path) -> None:
    """F4 in the middle of a name leads to a walk-in; taken in, that is said, and the name is still half typed."""
    terminal = start(shop_file)
    terminal.shows("Maren Tallis")
    terminal.type("r")
    terminal.shows("Receive a box")
    terminal.type("Ola Ha")
    terminal.shows("Ola Hale")

    terminal.type(F4)
    terminal.shows("The bell: a walk-in")
    terminal.type("Oake\r\r2\rchef, bread\r")
    terminal.shows("21.00 USD,")
    terminal.type("\r")
    terminal.shows("BOX 419")
    terminal.type("\r")
    terminal.shows("419 is in, 2 knives")

    text = terminal.shows("Receive a box")
    assert "Ola Ha" in text
    assert (shop_file.parent / "papers" / "received-419.txt").exists()
