"""Finds the starter data: inside the package once it is installed, beside it in a checkout."""

from importlib.resources import files
from pathlib import Path

from queueboard.errors import FileError


def seed_text(name: str) -> str:
    """The text of a starter file such as settings.toml; FileError when the program came without it."""
    packed = files("queueboard") / "_seed" / name
    beside = Path(__file__).parents[1] / "seed" / name
    for file in (packed, beside):
        if file.is_file():
            return file.read_text(encoding="utf-8")
    raise FileError(f"The starter file {name} is missing from this copy of the program. Set the program up again.")
