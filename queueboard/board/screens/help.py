"""Every key of a screen, made from its bindings."""

from textual.screen import Screen

from queueboard.board.base import ShopModal
from queueboard.board.desk import Desk


class HelpScreen(ShopModal[None]):
    """The keys of the screen below."""

    def __init__(self, desk: Desk, about: Screen[object]) -> None:
        super().__init__(desk)
        self.about = about
