"""Comparison of a text with the one kept in tests/screens, so that a change of what people read is seen and meant."""

import os
from pathlib import Path

SCREENS = Path(__file__).parent / "screens"


def assert_kept(name: str, text: str) -> None:
    """The text is what tests/screens/NAME.txt holds; with UPDATE_SCREENS=1 in the environment it is written there."""
    path = SCREENS / f"{name}.txt"
    if os.environ.get("UPDATE_SCREENS"):
        path.write_text(text, encoding="utf-8")
    kept = path.read_text(encoding="utf-8") if path.exists() else "(nothing is kept under this name)"
    assert text == kept
