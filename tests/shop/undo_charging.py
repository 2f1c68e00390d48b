"""Undo of charges, limits and money for boxes that are gone; see undo_scenarios.py."""

from queueboard.priced_words import ChargeSort
from queueboard.shop import charging, closing, money, moving, rows
from queueboard.shop.opening import Shop
from queueboard.values.box import Box, CloseOut
from queueboard.values.new import NewCharge
from queueboard.words import Column, Settling
from tests.shop.place import box, by, cash, counter, parcel
from tests.shop.undo_closing import Act


def do_add_charge(shop: Shop) -> Act:
    made = parcel(shop)
    charging.add_charge(shop, by(), made.box, NewCharge(sort=ChargeSort.DISCOUNT, cents=200, text="slow post"))
    new = NewCharge(sort=ChargeSort.DISCOUNT, ppm=100_000, text="regular")
    return lambda actor: charging.add_charge(shop, actor, box(shop, made.box.number).box, new)


def do_strike_charge(shop: Shop) -> Act:
    made = parcel(shop)
    rust = NewCharge(sort=ChargeSort.RUST, cents=400, text="at the heel")
    charging.add_charge(shop, by(), made.box, rust, made.knives[0])
    now = box(shop, made.box.number)
    return lambda actor: charging.strike_charge(shop, actor, now.box, now.charges[0])


def do_set_limit(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: charging.set_limit(shop, actor, made.box, 6000)


def gone_as(shop: Shop, settled: Settling, *, name: str = "Ms Verrin", minutes: float = 0, why: str = "") -> Box:
    """A box of two knives, 18.00, that has left without its money."""
    made, at = counter(shop, name=name), by(minutes=minutes)
    number = made.box.number

    def close() -> CloseOut:
        found = box(shop, number).close_out
        assert found is not None
        return found

    moving.move_knives(shop, by(minutes=minutes), made.knives, Column.READY)
    closing.begin_close_out(shop, by(minutes=minutes), box(shop, number).box)
    closing.count(shop, by(minutes=minutes), close(), len(made.knives))
    closing.confirm_names(shop, by(minutes=minutes), close())
    closing.confirm_label(shop, by(minutes=minutes), close(), name)
    closing.settle(shop, by(minutes=minutes), close(), settled, why)
    closing.send_off(shop, at, close())
    return rows.box_now(shop.database, made.box.id)


def do_pay_account(shop: Shop) -> Act:
    gone = gone_as(shop, Settling.ON_ACCOUNT)
    return lambda actor: money.pay_account(shop, actor, gone, cash(1000))
