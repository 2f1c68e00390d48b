"""What surrounds the day, as acts for days at random: orders, the shelf, call-backs, the evening; see acts.py."""

from collections.abc import Callable

from queueboard.intake.orders import Order
from queueboard.records.evening import dust_tray, till_counts
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop import call_backs, evening, orders, shelving
from queueboard.shop.rows import knives_of_box
from queueboard.values.new import NewAnnounced, NewCustomer
from queueboard.values.shelf import NewCallBack
from queueboard.words import PayWay
from tests.shop.moment import NAMES, Moment

Act = Callable[[Moment], object]


def _will_come(m: Moment) -> NewAnnounced:
    who = NewCustomer(name=m.pick(NAMES))
    return NewAnnounced(new_customer=who, expected_knives=m.pick((None, 6)), promise=m.day())


def _takes_back(m: Moment) -> object:
    old = m.gone
    knives = knives_of_box(m.shop.database, old.id)[: 1 + m.below(2)]
    back = NewCallBack(old_box_id=old.id, old_knife_ids=tuple(knife.id for knife in knives), why=m.text, free=m.yes)
    return call_backs.take_back(m.shop, m.by, back)


AROUND_THE_DAY: dict[str, dict[str, Act]] = {
    "orders": {
        "take_orders": lambda m: orders.take_orders(m.shop, m.by, [Order(line=2, box=_will_come(m))] * m.below(3)),
    },
    "shelf": {
        "put_on_shelf": lambda m: shelving.put_on_shelf(m.shop, m.by, m.box, m.text),
        "note_notice": lambda m: shelving.note_notice(
            m.shop, m.by, m.box.id, m.pick(list(MessageSort)), m.pick(list(NoticeWay)), m.text
        ),
        "take_back": _takes_back,
        "link_call_back": lambda m: call_backs.link_call_back(m.shop, m.by, m.box, m.gone.id, [], m.text),
    },
    "evening": {
        "empty_dust": lambda m: evening.empty_dust(m.shop, m.by),
        "look_at_dust_again": lambda m: evening.look_at_dust_again(
            m.shop, m.by, m.pick([tray] if (tray := dust_tray(m.shop.database, m.now.date())) else [])
        ),
        "count_till": lambda m: evening.count_till(
            m.shop,
            m.by,
            m.now.date(),
            PayWay.CASH,
            m.below(9000),
            next(iter(till_counts(m.shop.database, m.now.date())), None),
        ),
        "close_day": lambda m: evening.close_day(m.shop, m.by, m.now.date(), m.below(3), m.text),
    },
}
