"""Typing into forms as a person does, without a key press for every letter; drawn at the end, where somebody looks."""

from textual.pilot import Pilot
from textual.widgets import Input


async def fill(pilot: Pilot[int], *answers: str) -> None:
    """Put each answer into the field with the cursor and press Enter; one in <> is pressed as a key."""
    for answer in answers:
        key = answer.strip("<>") if answer.startswith("<") else "enter"
        if not answer.startswith("<"):
            field = pilot.app.focused
            assert isinstance(field, Input), f"{answer!r} was to be typed, but the cursor is in {field!r}"
            field.value = answer
        await pilot.app._press_keys([key])
    await pilot.pause()
