"""Where the automatic copies of a shop file lie, and which of the files there are its own."""

import re
from pathlib import Path


def copies_folder(path: Path) -> Path:
    """The folder for the copies of a shop file: beside it."""
    return path.parent / "copies"


def copy_name(path: Path, day: str) -> str:
    """The name of the copy of a day, written by ISO 8601: shop-2026-11-27.qb for shop.qb."""
    return f"{path.stem if path.suffix == '.qb' else path.name}-{day}.qb"


def copies_of(path: Path) -> tuple[Path, ...]:
    """The copies of this very shop file, the oldest first; those of another file in the same folder are none."""
    ours = re.compile(re.escape(copy_name(path, "DAY")).replace("DAY", "[0-9]{4}-[0-9]{2}-[0-9]{2}"))
    found = copies_folder(path).glob("*.qb")
    return tuple(sorted(copy for copy in found if ours.fullmatch(copy.name)))


def newest_copy_words(path: Path) -> str:
    """What to put in the place of a shop file that is lost, as part of a sentence."""
    if copies_of(path):
        return f"the newest copy from {copies_folder(path)}"
    return "a copy that you made of it"
