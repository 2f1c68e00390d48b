"""What is owed for boxes that have left: by customer, with its age, and who is on hold."""

from datetime import datetime, timedelta

from queueboard.priced_words import ChargeSort
from queueboard.shop import charging, closing, correcting, money, moving
from queueboard.shop.opening import Shop
from queueboard.shop.owing import held, owing
from queueboard.values.box import CloseOut
from queueboard.values.new import NewCharge
from queueboard.words import Column, Settling
from tests.shop.place import NOW, box, by, cash, counter
from tests.shop.undo_charging import gone_as


def days_later(days: int) -> datetime:
    """So many days after NOW."""
    return NOW + timedelta(days=days)


def test_nobody_owes_at_first(shop: Shop) -> None:
    """Open boxes are no debt yet, and what went paid is none."""
    counter(shop)

    assert owing(shop, NOW) == ()


def test_what_left_unpaid_is_owed_with_its_age(shop: Shop) -> None:
    """Boxes gone on account and unpaid stand under their customers, the oldest debt first, with the days since."""
    first = gone_as(shop, Settling.ON_ACCOUNT)
    gone_as(shop, Settling.UNPAID, name="Mr Oake", minutes=2 * 24 * 60, why="forgot the purse")
    money.pay_account(shop, by(), first, cash(300))

    oldest, younger = owing(shop, days_later(45))

    assert (oldest.customer.name, oldest.owed_cents, oldest.days, oldest.on_hold) == ("Ms Verrin", 1500, 45, False)
    assert (oldest.boxes[0].paid_cents, oldest.boxes[0].settled) == (300, Settling.ON_ACCOUNT)
    assert (younger.customer.name, younger.owed_cents, younger.days) == ("Mr Oake", 1800, 43)


def test_an_account_open_too_long_is_on_hold(shop: Shop) -> None:
    """After the shop's 45 days it is on hold until the oldest box is paid."""
    gone = gone_as(shop, Settling.ON_ACCOUNT)
    assert held(shop, days_later(45), gone.customer_id) is None
    assert held(shop, days_later(46), gone.customer_id) is not None

    money.pay_account(shop, by(), gone, cash(1800))

    assert owing(shop, days_later(46)) == ()


def test_two_entries_of_a_customer_made_one_owe_together(shop: Shop) -> None:
    """A customer entered twice owes both boxes once the entries are one."""
    gone_as(shop, Settling.ON_ACCOUNT)
    gone_as(shop, Settling.ON_ACCOUNT, name="Verrin, Ms")
    one, other = (account.customer for account in owing(shop, NOW))

    correcting.merge_customers(shop, by(), one, other)

    (account,) = owing(shop, NOW)
    assert (account.owed_cents, len(account.boxes)) == (3600, 2)


def test_a_part_that_left_on_account_is_owed(shop: Shop) -> None:
    """Of an open box what has left is owed; what is still here is not."""
    made = counter(shop)
    number = made.box.number

    def close() -> CloseOut:
        found = box(shop, number).close_out
        assert found is not None
        return found

    charging.add_charge(shop, by(), made.box, NewCharge(sort=ChargeSort.RUST, cents=400), made.knives[0])
    moving.move_knives(shop, by(), box(shop, number).knives[:1], Column.READY)
    closing.begin_close_out(shop, by(), box(shop, number).box)
    closing.count(shop, by(), close(), 1)
    closing.confirm_names(shop, by(), close())
    closing.confirm_label(shop, by(), close(), "herself")
    closing.settle(shop, by(), close(), Settling.ON_ACCOUNT)
    closing.send_off(shop, by(), close())

    (account,) = owing(shop, NOW)
    assert (account.owed_cents, account.boxes[0].box.closed_at) == (1300, None)
    assert box(shop, number).owed_cents == 2200
