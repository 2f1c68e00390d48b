"""Finding the starter data."""

import pytest

from queueboard.errors import FileError
from queueboard.seedfiles import seed_text


def test_the_starter_settings_are_found() -> None:
    """The settings that a new shop begins with come with the program."""
    assert "[shop]" in seed_text("settings.toml")


def test_a_missing_file_is_a_sentence() -> None:
    """A starter file that did not come with the program is named, with what to do."""
    with pytest.raises(FileError, match=r"nothing\.toml is missing from this copy of the program"):
        seed_text("nothing.toml")
