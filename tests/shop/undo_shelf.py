"""How to come to each operation of the shelf and of call-backs, and the act itself; see undo_scenarios."""

from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop import call_backs, closing, shelving
from queueboard.shop.finding import newest_gone
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import receive_box
from queueboard.values.new import NewBox
from queueboard.values.shelf import GoneSeen, NewCallBack
from queueboard.words import CameBy, GoesBy
from tests.shop import undo_closing
from tests.shop.place import box, by, chef, counter
from tests.shop.undo_closing import Act


def gone(shop: Shop) -> GoneSeen:
    """A parcel of three knives that has left."""
    number = undo_closing.all_but_sent(shop)
    closing.send_off(shop, by(), undo_closing.close(shop, number))
    found = newest_gone(shop, number)
    assert found is not None
    return found


def do_put_on_shelf(shop: Shop) -> Act:
    made = counter(shop)
    return lambda actor: shelving.put_on_shelf(shop, actor, made.box, "C4")


def do_note_notice(shop: Shop) -> Act:
    made = counter(shop)
    return lambda actor: shelving.note_notice(shop, actor, made.box.id, MessageSort.READY, NoticeWay.TEXT, "It is.")


def do_take_back(shop: Shop) -> Act:
    old = gone(shop)
    new = NewCallBack(old_box_id=old.box.id, old_knife_ids=(old.knives[0].id,), why="drags on tomato")
    return lambda actor: call_backs.take_back(shop, actor, new)


def do_link_call_back(shop: Shop) -> Act:
    old = gone(shop)
    again = NewBox(
        customer_id=old.customer.id,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=1,
        knives=(chef(mark="nick 0"),),
    )
    made = box(shop, receive_box(shop, by(), again))
    pairs = [(made.knives[0].id, old.knives[0].id)]
    return lambda actor: call_backs.link_call_back(shop, actor, made.box, old.box.id, pairs, "drags")
