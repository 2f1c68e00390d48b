"""Home: the four columns, the day on top, the box under the cursor below."""

from queueboard.board.base import ShopScreen


class BoardScreen(ShopScreen[None]):
    """The board."""
