"""How to come to the operation of market days, and the act itself; see undo_scenarios."""

from queueboard.phrases.typed_market import read_market_line
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.shop import numbers
from queueboard.shop.market import take_market
from queueboard.shop.opening import Shop
from queueboard.values.market import MarketBox
from tests.shop.place import by
from tests.shop.undo_closing import Act

MARKET_ON = seed_text("settings.toml").replace("on = false ", "on = true ") + (
    '\n[[markets]]\nname = "Harbour market"\nrule = "FREQ=WEEKLY;BYDAY=SA"\nstart = 2026-01-03\n'
)
"""A shop with a stall each Saturday, and tags 500 to 560."""
SETTINGS = read_settings(MARKET_ON)


def typed(*lines: str) -> tuple[MarketBox, ...]:
    """Lines of the stall's paper, each of somebody new."""
    return tuple(MarketBox(line=read_market_line(line, SETTINGS, next_tag=None)) for line in lines)


def do_take_market(shop: Shop) -> Act:
    numbers.take_settings(shop, by(), MARKET_ON)
    boxes = typed("500 4 Ms Verrin 5550123, 1 bread *", "501 3 Oake *20", "502 5 Tallis >2", "- 1 Kelp & Co >")
    return lambda actor: take_market(shop, actor, boxes, "pad")
