"""What is pasted in a real terminal stays in the field it was pasted into, whatever it holds."""

import sys
from pathlib import Path

import pytest

from tests.terminal.conftest import Start

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals of this kind are not there")


def test_a_pasted_escape_stays_text_in_its_field(start: Start, shop_file: Path) -> None:
    """A note with Esc bytes pasted into the surname of a new box: text there, and the form stays."""
    terminal = start(shop_file)
    terminal.shows("Maren Tallis")
    terminal.type("r")
    terminal.shows("Receive a box")

    terminal.type("\x1b[200~Oake \x1b4 of \x1b[31mDun\x1b[0mmere\x1b\x1b[201~")

    text = terminal.shows("new customer “Oake 4 of Dunmere”")
    assert "Receive a box" in text
    assert "Leave?" not in text
