"""The laws of every box where a second person or an undo comes between."""

import pytest

from queueboard.errors import RuleError
from queueboard.shop import (
    closing,
    correcting,
    losing,
    money,
    noting,
    receiving,
    undoing,
    waiting,
)
from queueboard.shop.opening import Shop
from queueboard.values.new import NewBox
from queueboard.words import (
    CameBy,
    DeclineReason,
    GoesBy,
    Settling,
    WaitingFor,
)
from tests.shop.place import box, by, cash, chef, counter, parcel, picture
from tests.shop.test_laws import go, ready, refused
from tests.shop.undo_closing import close, lose_one


def test_settling_the_last_loss_drops_the_close_out_under_way(shop: Shop) -> None:
    """A box that closes because its last knife is settled as lost leaves no close-out unfinished."""
    number = lose_one(shop)
    receiving.add_knife(shop, by(), box(shop, number).box, chef())
    lost, added = box(shop, number).on_hand
    ready(shop, number, added.number)
    closing.begin_close_out(shop, by(), box(shop, number).box)
    receiving.strike_knife(shop, by(), box(shop, number).on_hand[1], "never existed")

    losing.settle_lost(shop, by(), lost, "paid for a new one")

    assert picture(shop).box(number) is None
    assert shop.database.one("SELECT count(*) FROM close_out WHERE finished_us IS NULL") == 0


def test_only_what_is_looked_for_is_found(shop: Shop) -> None:
    """A knife or thing that nobody misses cannot be found."""
    made = parcel(shop, things=("roll",))

    refused(shop, lambda: losing.found(shop, by(), made.knives[0]), "is not looked for")
    refused(shop, lambda: losing.found(shop, by(), made.things[0]), "is not looked for")


def test_a_customer_put_together_with_another_brings_no_box(shop: Shop) -> None:
    """A box for an entry that was put together with another is refused."""
    from queueboard.shop.correcting import merge_customers

    keep, double = parcel(shop).customer, parcel(shop, name="Tallis, R.").customer
    merge_customers(shop, by(), keep, double)
    new = NewBox(
        customer_id=double.id, came_by=CameBy.COUNTER, goes_by=GoesBy.PICK_UP, counted=1, knives=(chef(),), number=900
    )

    refused(shop, lambda: receiving.receive_box(shop, by(), new), "not in the shop file")


def test_undo_of_receiving_says_what_rests_on_it(shop: Shop) -> None:
    """A box that was paid for is not un-received; the sentence names what is in the way, not the file's own words."""
    number = counter(shop, knives=1).box.number
    received = undoing.steps(shop, "J")[0]
    money.take_payment(shop, by(), box(shop, number).box, cash(100))

    refused(shop, lambda: undoing.undo(shop, by(), received.group_id, "twice"), "rest on this one")


def test_undo_of_a_send_off_whose_number_is_used_again_says_so(shop: Shop) -> None:
    """A closed box comes back only while its number is free."""
    number = counter(shop, knives=1).box.number
    ready(shop, number)
    went = go(shop, number)
    customer = receiving.add_customer(shop, by(), name="Oake")
    new = NewBox(
        customer_id=customer,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=1,
        knives=(chef(),),
        number=number,
    )
    receiving.receive_box(shop, by(), new)

    with pytest.raises(RuleError, match="has that number by now"):
        undoing.undo(shop, by(), went.group_id, "wrong bag")


def test_no_box_comes_to_stand_under_a_customer_put_together_with_another(shop: Shop) -> None:
    """Neither undo of a giving nor doing a putting-together again brings a box to an entry that is no more."""
    giver, double = parcel(shop), counter(shop, name="Piet")
    given = by()
    correcting.give_box_to(shop, given, double.box, giver.customer)
    merged = by("K")
    correcting.merge_customers(shop, merged, giver.customer, double.customer)

    refused(shop, lambda: undoing.undo(shop, by(), given.group_id), "put together with another")

    undone = by("K")
    undoing.undo(shop, undone, merged.group_id)
    undoing.undo(shop, by(), given.group_id)
    refused(shop, lambda: undoing.undo(shop, by("K"), undone.group_id), "put together with another")


def test_no_close_out_comes_back_into_a_box_that_has_gone(shop: Shop) -> None:
    """Beginning a close-out again is refused once the box was closed out by somebody else."""
    number = counter(shop, knives=1).box.number
    ready(shop, number)
    begun, taken_back = by("M"), by("M")
    closing.begin_close_out(shop, begun, box(shop, number).box)
    undoing.undo(shop, taken_back, begun.group_id)
    go(shop, number)

    refused(shop, lambda: undoing.undo(shop, by("M"), taken_back.group_id), "undo its close-out first")


def test_a_declined_knife_waits_for_nothing(shop: Shop) -> None:
    """What goes back unsharpened cannot be put on waiting."""
    made = parcel(shop)
    noting.decline_knife(shop, by(), made.knives[0], DeclineReason.CRACKED)
    declined = box(shop, made.box.number).knives[0]

    refused(shop, lambda: waiting.knives_wait(shop, by(), [declined], WaitingFor.BELTS), "waits for nothing")


def test_money_that_settles_is_told_with_its_box(shop: Shop) -> None:
    """A payment taken at the close-out stands in history with the number of its box."""
    number = counter(shop, knives=1).box.number
    ready(shop, number)
    closing.begin_close_out(shop, by(), box(shop, number).box)
    closing.count(shop, by(), close(shop, number), 1)

    closing.settle(shop, by(), close(shop, number), Settling.PAID, "", cash(box(shop, number).owed_cents))

    assert undoing.steps(shop, "J")[0].about.number == number
