"""A paper written into the folder beside the shop file, from where any printer takes it."""

from pathlib import Path

from queueboard.board.desk import Desk
from queueboard.papers.folder import write_into


def write_paper(desk: Desk, name: str, text: str) -> Path:
    """Write it, readable by the owner only, over an older one of the same name; FileError when it cannot be written."""
    return write_into(desk.shop.path.parent / "papers", name, text)
