"""What the tests of the bell share: the whole board over a shop file, the walk-in on top, what is said over a place."""

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.walk_in import WalkInScreen
from queueboard.shop.opening import Shop
from tests.board.host import notices
from tests.shop.place import NOW


def board(shop: Shop, initials: str = "MB") -> QueueboardApp:
    """The whole board over a shop file."""
    return QueueboardApp(Desk(shop, initials, lambda: NOW))


def said(app: QueueboardApp) -> str:
    """What is said over the screen, outside its lines."""
    return "\n".join(notices(app))


def top(app: QueueboardApp) -> WalkInScreen:
    """The walk-in, while it is the screen on top."""
    assert isinstance(app.screen, WalkInScreen)
    return app.screen
