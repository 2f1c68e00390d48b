"""An announced box is in the door: the same key and sentence on every screen."""

from queueboard.board.base import ShopScreen
from queueboard.shop.announcing import arrived
from queueboard.shop.picture import BoxPicture


def arrives(screen: ShopScreen[None], box: BoxPicture | None, by: int) -> bool:
    """Moved on, by 1, an announced box comes in the door, unopened; False for any other box or way."""
    if box is None or not box.box.announced or by <= 0:
        return False
    if screen.attempt(arrived, box.box) is not None:
        screen.say(f"{box.box.number} is here, not opened.   o opens it   u takes it back")
    return True
