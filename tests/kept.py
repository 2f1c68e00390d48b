"""Comparison of a text with the one kept in tests/screens, so that a change of what people read is seen and meant."""

import os
from pathlib import Path

SCREENS = Path(__file__).parent / "screens"
UPDATE = "UPDATE_SCREENS"
"""Set this in the environment to write the kept texts anew; then read the difference before you keep it."""


def assert_kept(name: str, text: str) -> None:
    """The text is what tests/screens/NAME.txt holds."""
    assert text == kept(name, text), f"{UPDATE}=1 keeps this one as {name}"


def kept(name: str, text: str) -> str:
    """What tests/screens/NAME.txt holds; this text is written there first when that is asked for."""
    path = SCREENS / f"{name}.txt"
    if os.environ.get(UPDATE):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    assert path.exists(), f"nothing is kept as {path}; look at this, then set {UPDATE}=1 to keep it:\n{text}"
    return path.read_text(encoding="utf-8")
