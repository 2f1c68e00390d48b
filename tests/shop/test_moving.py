"""Knives through the columns, waiting, declining, packing and money."""

from dataclasses import replace

import pytest

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.shop.labelling import label_bought, set_label
from queueboard.shop.money import set_price, take_payment
from queueboard.shop.moving import move_knives, pack_box
from queueboard.shop.noting import accept_knife, decline_knife
from queueboard.shop.opening import Shop
from queueboard.shop.promising import set_flags
from queueboard.shop.waiting import box_waits, knives_wait
from queueboard.values.new import NewLabel
from queueboard.words import (
    Column,
    DeclineReason,
    LabelOwner,
    LabelState,
    Packing,
    WaitingFor,
)
from tests.shop.place import box, by, cash, counter, parcel, picture, state
from tests.shop.undo_announcing import announced
from tests.shop.undo_closing import lose_one


def test_nothing_of_a_box_goes_on_before_its_price_is_agreed(shop: Shop) -> None:
    """While its customer is asked about the estimate no knife of it moves on; once it goes on, all of them may."""
    made = counter(shop)
    box_waits(shop, by(), made.box, WaitingFor.ESTIMATE)
    with pytest.raises(RuleError, match="waits for the yes to the estimate"):
        move_knives(shop, by(minutes=1), box(shop, made.box.number).knives, Column.READY)

    box_waits(shop, by(minutes=2), box(shop, made.box.number).box, None)
    move_knives(shop, by(minutes=3), box(shop, made.box.number).knives, Column.READY)
    assert {knife.column for knife in box(shop, made.box.number).knives} == {Column.READY}


def test_a_tray_moves_together_with_who_and_when(shop: Shop) -> None:
    """All knives of a box go on, and each says who moved it."""
    made = parcel(shop)

    move_knives(shop, by("K"), made.knives, Column.ON_BENCH)

    assert {(k.column, k.moved_by, k.rework) for k in box(shop, made.box.number).knives} == {(Column.ON_BENCH, "K", 0)}


@pytest.mark.parametrize("tested", [Column.TESTING, Column.READY])
def test_back_from_a_test_is_rework(shop: Shop, tested: Column) -> None:
    """A knife that returns to the bench from testing or ready counts one rework."""
    made = parcel(shop, knives=1)
    move_knives(shop, by(), made.knives, tested)

    move_knives(shop, by(), box(shop, made.box.number).knives, Column.ON_BENCH)

    assert box(shop, made.box.number).knives[0].rework == 1


def test_a_stale_screen_cannot_overwrite(shop: Shop) -> None:
    """A knife that somebody has moved since the screen was drawn is refused, and none of the tray moves."""
    made = parcel(shop)
    move_knives(shop, by("K"), made.knives[:1], Column.TESTING)
    before = state(shop)

    with pytest.raises(ChangedError, match=made.knives[0].tag):
        move_knives(shop, by("J"), made.knives[::-1], Column.ON_BENCH)

    assert state(shop) == before


def test_a_waiting_knife_stays_where_it_is(shop: Shop) -> None:
    """A knife that waits moves only after somebody says that it goes on."""
    made = parcel(shop)
    knives_wait(shop, by(), made.knives[:1], WaitingFor.ESTIMATE)
    with pytest.raises(RuleError, match="waits for yes to the estimate"):
        move_knives(shop, by(), box(shop, made.box.number).knives, Column.ON_BENCH)

    knives_wait(shop, by(), box(shop, made.box.number).knives[:1], None)
    move_knives(shop, by(), box(shop, made.box.number).knives, Column.ON_BENCH)

    assert {knife.column for knife in box(shop, made.box.number).knives} == {Column.ON_BENCH}


def test_gone_is_no_column_to_move_to(shop: Shop) -> None:
    """A knife leaves the board only by a close-out."""
    made = parcel(shop)

    with pytest.raises(RuleError, match="close-out"):
        move_knives(shop, by(), made.knives, Column.GONE)
    with pytest.raises(TypedError, match="Nothing is marked"):
        move_knives(shop, by(), (), Column.READY)


def test_a_declined_knife_is_free_and_ready_to_leave(shop: Shop) -> None:
    """A declined knife costs nothing, stands in ready, and can be taken after all."""
    made = parcel(shop, knives=2)
    decline_knife(shop, by(), made.knives[0], DeclineReason.CRACKED, "9 mm from the heel")
    declined = box(shop, made.box.number)
    assert declined.price_cents == made.knives[1].price_cents
    assert declined.knives[0].can_leave
    with pytest.raises(RuleError, match="was declined"):
        move_knives(shop, by(), declined.knives[:1], Column.ON_BENCH)

    accept_knife(shop, by(), declined.knives[0])

    assert box(shop, made.box.number).knives[0].column is Column.RECEIVED


def test_packing_needs_ready_knives_and_ends_with_rework(shop: Shop) -> None:
    """A box with nothing ready cannot be wrapped; a knife sent back to the bench unwraps it."""
    made = parcel(shop)
    with pytest.raises(RuleError, match=r"cannot be packed: 0 of its 3 knives are ready\. Move the others to ready"):
        pack_box(shop, by(), made.box, Packing.WRAPPED)
    move_knives(shop, by(), made.knives, Column.READY)
    pack_box(shop, by(), box(shop, made.box.number).box, Packing.BOXED)
    assert box(shop, made.box.number).box.packing is Packing.BOXED

    move_knives(shop, by(), box(shop, made.box.number).knives[:1], Column.ON_BENCH)

    assert box(shop, made.box.number).box.packing is None


def test_a_box_of_which_nothing_is_here_cannot_be_packed(shop: Shop) -> None:
    """What is not opened yet is opened first; what nobody can find is found first."""
    unopened = announced(shop)
    with pytest.raises(RuleError, match=r"Box \d+ cannot be packed: none of its knives is here\. Open it first\."):
        pack_box(shop, by(), unopened.box, Packing.WRAPPED)

    gone = box(shop, lose_one(shop))
    with pytest.raises(RuleError, match=r"none of its knives is here\. Say first that they were found\."):
        pack_box(shop, by(), gone.box, Packing.BOXED)


def test_a_waiting_box_is_counted_and_leaves_the_day_list(shop: Shop) -> None:
    """A box that waits is in the day line's count and in no run."""
    made = parcel(shop)
    assert len(picture(shop).plan.runs) == 1

    box_waits(shop, by(), made.box, WaitingFor.MONEY)

    after = picture(shop)
    assert after.day_line.waiting == 1
    assert after.plan.runs == ()


def test_money_adds_up_to_the_cent(shop: Shop) -> None:
    """Owed is the prices of the knives less the payments."""
    made = counter(shop, knives=2)
    set_price(shop, by(), made.knives[0], 1999)
    take_payment(shop, by(), made.box, cash(1000))

    after = box(shop, made.box.number)

    assert after.owed_cents == 1999 + made.knives[1].price_cents - 1000
    for cents in (0, -300, 10**9):
        with pytest.raises(TypedError, match="outside"):
            take_payment(shop, by(), after.box, cash(cents, paid_before=1000))


def test_flags_bind_the_turn(shop: Shop) -> None:
    """A box set this next heads the day list."""
    parcel(shop)
    second = parcel(shop, name="S. Tallis")

    set_flags(shop, by(), second.box, this_next=True)

    first_run = picture(shop).plan.runs[0]
    assert set(first_run.knife_ids) <= {knife.id for knife in second.knives}


def test_a_label_is_bought_once(shop: Shop) -> None:
    """A label to buy becomes one that is here; a second buying is refused."""
    made = parcel(shop)
    set_label(shop, by(), made.box, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))
    label = box(shop, made.box.number).label
    assert label is not None

    label_bought(shop, by(), label, NewLabel(owner=LabelOwner.SHOP, state=LabelState.HERE, carrier="Quay Post"))

    bought = box(shop, made.box.number).label
    assert bought is not None
    assert (bought.state, bought.carrier) == (LabelState.HERE, "Quay Post")
    with pytest.raises(RuleError, match="here already"):
        label_bought(shop, by(), bought, NewLabel(owner=LabelOwner.SHOP, state=LabelState.HERE))
    with pytest.raises(RuleError, match="picked up"):
        set_label(shop, by(), counter(shop).box, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))


def test_initials_are_needed(shop: Shop) -> None:
    """Nobody acts without initials."""
    made = parcel(shop)

    with pytest.raises(TypedError, match="Initials"):
        move_knives(shop, replace(by(), initials="  "), made.knives, Column.ON_BENCH)
