"""The operation of market days as an act; see acts.py."""

from collections.abc import Callable

from queueboard.shop.market import take_market
from tests.shop.moment import Moment
from tests.shop.undo_market import typed


def _take_market(m: Moment) -> object:
    tag = m.pick(("-", "520", "521", "522"))
    paid, stays = m.pick(("", "*", "*5", "2*30")), m.pick(("", ">", ">1"))
    text = f"{tag} {1 + m.below(4)} {m.pick(('Verrin', 'Oake'))} {paid} {stays}"
    return take_market(m.shop, m.by, typed(text, "- 1 Kelp *"), "pad")


MARKET_ACTS: dict[str, Callable[[Moment], object]] = {"take_market": _take_market}
