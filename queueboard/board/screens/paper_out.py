"""A paper written into the folder beside the shop file, from where any printer takes it."""

from pathlib import Path
from typing import TypeVar

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.errors import FileError
from queueboard.papers.folder import write_into

Answer = TypeVar("Answer")


def write_paper(desk: Desk, name: str, text: str) -> Path:
    """Write it, readable by the owner only, over an older one of the same name; FileError when it cannot be written."""
    return write_into(desk.shop.path.parent / "papers", name, text)


def write_and_say(screen: ShopScreen[Answer], name: str, text: str, behind: str = ". Print it from there.") -> None:
    """Write it and say on the screen where it is, or why not; *behind* stands behind the place."""
    try:
        path = write_paper(screen.desk, name, text)
    except FileError as error:
        screen.say(str(error), trouble=True)
    else:
        screen.say(f"Written to {path}{behind}")
