"""How to come to each operation of the evening."""

from queueboard.records.evening import dust_tray, till_counts
from queueboard.shop import evening
from queueboard.shop.opening import Shop
from queueboard.values.evening import DustTray
from queueboard.words import PayWay
from tests.shop.place import NOW, by
from tests.shop.undo_closing import Act


def do_empty_dust(shop: Shop) -> Act:
    return lambda actor: evening.empty_dust(shop, actor)


def emptied(shop: Shop, *, minutes: int = -30) -> DustTray:
    """The dust tray, emptied so many minutes after NOW."""
    evening.empty_dust(shop, by(minutes=minutes))
    tray = dust_tray(shop.database, NOW.date())
    assert tray is not None
    return tray


def do_look_at_dust_again(shop: Shop) -> Act:
    tray = emptied(shop)
    return lambda actor: evening.look_at_dust_again(shop, actor, tray)


def do_count_till(shop: Shop) -> Act:
    evening.count_till(shop, by(), NOW.date(), PayWay.CASH, 4000, None)
    (count,) = till_counts(shop.database, NOW.date())
    return lambda actor: evening.count_till(shop, actor, NOW.date(), PayWay.CASH, 4100, count)


def do_close_day(shop: Shop) -> Act:
    return lambda actor: evening.close_day(shop, actor, NOW.date(), 2, "call Ms Verrin first")
