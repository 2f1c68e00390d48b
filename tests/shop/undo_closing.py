"""For every operation of the close-out: how to come to it, and the one act itself."""

from collections.abc import Callable

from queueboard.shop import closing, losing, moving
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor
from queueboard.values.box import CloseOut
from queueboard.words import Column, Settling
from tests.shop.place import box, by, parcel

Act = Callable[[Actor], object]


def ready_parcel(shop: Shop, *, things: tuple[str, ...] = ()) -> int:
    """A parcel whose knives are all ready; its number."""
    made = parcel(shop, things=things)
    moving.move_knives(shop, by(), made.knives, Column.READY)
    return made.box.number


def close(shop: Shop, number: int) -> CloseOut:
    """The close-out under way for a box."""
    found = box(shop, number).close_out
    assert found is not None
    return found


def begun(shop: Shop, *, things: tuple[str, ...] = ()) -> int:
    """A parcel with its close-out begun; its number."""
    number = ready_parcel(shop, things=things)
    closing.begin_close_out(shop, by(), box(shop, number).box)
    return number


def counted(shop: Shop, n: int, *, things: tuple[str, ...] = ()) -> int:
    """A parcel counted at its close-out; its number."""
    number = begun(shop, things=things)
    closing.count(shop, by(), close(shop, number), n)
    return number


def all_but_sent(shop: Shop) -> int:
    """A parcel that only has to be sent off; its number."""
    number = counted(shop, 3)
    closing.confirm_names(shop, by(), close(shop, number))
    closing.confirm_label(shop, by(), close(shop, number))
    closing.settle(shop, by(), close(shop, number), Settling.ON_ACCOUNT)
    return number


def do_begin_close_out(shop: Shop) -> Act:
    number = ready_parcel(shop)
    return lambda actor: closing.begin_close_out(shop, actor, box(shop, number).box)


def do_leave_close_out(shop: Shop) -> Act:
    number = counted(shop, 2)
    closing.tick(shop, by(), close(shop, number), box(shop, number).knives[0].id)
    return lambda actor: closing.leave_close_out(shop, actor, close(shop, number))


def do_count(shop: Shop) -> Act:
    number = counted(shop, 2)
    closing.tick(shop, by(), close(shop, number), box(shop, number).knives[0].id)
    return lambda actor: closing.count(shop, actor, close(shop, number), 3)


def do_tick(shop: Shop) -> Act:
    number = counted(shop, 2)
    return lambda actor: closing.tick(shop, actor, close(shop, number), box(shop, number).knives[1].id)


def do_untick(shop: Shop) -> Act:
    number = counted(shop, 2)
    knife = box(shop, number).knives[1].id
    closing.tick(shop, by(), close(shop, number), knife)
    return lambda actor: closing.untick(shop, actor, close(shop, number), knife)


def do_tick_thing(shop: Shop) -> Act:
    number = counted(shop, 3, things=("sheath",))
    return lambda actor: closing.tick_thing(shop, actor, close(shop, number), box(shop, number).things[0].id)


def do_ticks_done(shop: Shop) -> Act:
    number = counted(shop, 2)
    closing.tick(shop, by(), close(shop, number), box(shop, number).knives[1].id)
    return lambda actor: closing.ticks_done(shop, actor, close(shop, number))


def do_things_done(shop: Shop) -> Act:
    number = counted(shop, 3, things=("sheath",))
    return lambda actor: closing.things_done(shop, actor, close(shop, number))


def do_why_missing(shop: Shop) -> Act:
    number = counted(shop, 2)
    return lambda actor: closing.why_missing(shop, actor, close(shop, number), "customer cannot wait")


def do_confirm_names(shop: Shop) -> Act:
    number = counted(shop, 3)
    return lambda actor: closing.confirm_names(shop, actor, close(shop, number))


def do_confirm_label(shop: Shop) -> Act:
    number = counted(shop, 3)
    closing.confirm_names(shop, by(), close(shop, number))
    return lambda actor: closing.confirm_label(shop, actor, close(shop, number))


def do_settle(shop: Shop) -> Act:
    number = counted(shop, 3)
    return lambda actor: closing.settle(shop, actor, close(shop, number), Settling.UNPAID, "pays on Monday")


def do_send_off(shop: Shop) -> Act:
    number = all_but_sent(shop)
    return lambda actor: closing.send_off(shop, actor, close(shop, number))


def lose_one(shop: Shop) -> int:
    """A parcel that went without one knife, now looked for; its number."""
    number = counted(shop, 2)
    for knife in box(shop, number).knives[:2]:
        closing.tick(shop, by(), close(shop, number), knife.id)
    closing.ticks_done(shop, by(), close(shop, number))
    closing.why_missing(shop, by(), close(shop, number), "customer cannot wait")
    closing.confirm_names(shop, by(), close(shop, number))
    closing.confirm_label(shop, by(), close(shop, number))
    closing.settle(shop, by(), close(shop, number), Settling.ON_ACCOUNT)
    closing.send_off(shop, by(), close(shop, number))
    return number


def do_found(shop: Shop) -> Act:
    number = lose_one(shop)
    return lambda actor: losing.found(shop, actor, box(shop, number).knives[2])


def do_settle_lost(shop: Shop) -> Act:
    number = lose_one(shop)
    return lambda actor: losing.settle_lost(shop, actor, box(shop, number).knives[2], "paid for a new one")
