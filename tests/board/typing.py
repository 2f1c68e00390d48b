"""Typing into forms as a person does, without a key press for every letter (62 ms each)."""

from textual.pilot import Pilot
from textual.widgets import Input


async def fill(pilot: Pilot[int], *answers: str) -> None:
    """Put each answer into the field with the cursor and press Enter; one in <> is pressed as a key."""
    for answer in answers:
        if answer.startswith("<"):
            await pilot.press(answer.strip("<>"))
            continue
        field = pilot.app.focused
        assert isinstance(field, Input), f"{answer!r} was to be typed, but the cursor is in {field!r}"
        field.value = answer
        await pilot.press("enter")
    await pilot.pause()
