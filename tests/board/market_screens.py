"""The market day on its screen, over a shop that has switched its stall on."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.market import MarketScreen
from queueboard.shop import numbers
from queueboard.shop.market_pad import PadLine, new_pad, put_line
from queueboard.shop.receiving import add_customer
from tests.board.host import AnyScreen
from tests.shop.place import NOW, by
from tests.shop.undo_market import MARKET_ON

LINES = (
    "500 4 Ms Verrin, 555 0123 *",
    "501 3 Oake, 555 0177 *20",
    "504 2 [red]Tallis[/], 1 bread",
    "504 5 Kelp & Co, 5550199 2* >2",
    "- 1 " + "Long " * 50 + "name *",
    "612 1 Studio 54, 5551234 >",
)
"""A gap, a tag typed twice, one that was not printed, one without a tag, somebody unpaid; a known customer."""


def market_screen(desk: Desk) -> MarketScreen:
    """A market day half typed in."""
    numbers.take_settings(desk.shop, by(), MARKET_ON)
    add_customer(desk.shop, by(), name="Oake", town="Port Ansel", phone="555-0177")
    desk.look()
    pad = new_pad(desk.shop, NOW)
    for line in LINES:
        pad = put_line(desk.shop, pad, PadLine(id=0, text=line))
    return MarketScreen(desk)


MARKET_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {MarketScreen: market_screen}
