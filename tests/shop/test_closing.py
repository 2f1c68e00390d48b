"""The close-out through the operations: blind count, ticks, missing knives, parts, money, and the one last step."""

from collections.abc import Callable

import pytest

from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.shop.closing import (
    begin_close_out,
    confirm_label,
    confirm_names,
    count,
    send_off,
    settle,
    things_done,
    tick,
    tick_thing,
    ticks_done,
    why_missing,
)
from queueboard.shop.correcting import correct_box
from queueboard.shop.losing import found, settle_lost
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import decline_knife
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.values.box import CloseOut
from queueboard.words import CloseStep, Column, DeclineReason, GoesBy, LabelState, Settling, ThingState
from tests.shop.place import box, by, cash, counter, parcel, picture


def close_of(shop: Shop, number: int) -> CloseOut:
    """The close-out under way for a box."""
    close = box(shop, number).close_out
    assert close is not None
    return close


def step_of(shop: Shop, number: int) -> CloseStep:
    """The step that the close-out shows."""
    state = box(shop, number).close_check
    assert state is not None
    return state.step


def begin(shop: Shop, number: int, *, ready: int = 99) -> None:
    """Make so many knives ready and begin the close-out."""
    move_knives(shop, by(), box(shop, number).on_hand[:ready], Column.READY)
    begin_close_out(shop, by(), box(shop, number).box)


def rest(shop: Shop, number: int) -> None:
    """Names, label and money, on account."""
    confirm_names(shop, by(), close_of(shop, number))
    confirm_label(shop, by(), close_of(shop, number), "self")
    if step_of(shop, number) is CloseStep.MONEY:
        settle(shop, by(), close_of(shop, number), Settling.ON_ACCOUNT)


def test_a_box_that_adds_up_goes(shop: Shop) -> None:
    """Counted right, names and label said, on account: the box leaves the board and its label is used."""
    number = parcel(shop, knives=3).box.number
    begin(shop, number)
    assert step_of(shop, number) is CloseStep.COUNT
    count(shop, by(), close_of(shop, number), 3)
    rest(shop, number)

    gone = send_off(shop, by(minutes=5), close_of(shop, number))

    assert [knife.tag for knife in gone.knives] == [f"{number}-1", f"{number}-2", f"{number}-3"]
    assert gone.closed
    assert gone.settled is Settling.ON_ACCOUNT
    assert picture(shop).boxes == ()
    assert shop.database.one("SELECT state FROM label") == "used"


def test_the_count_is_blind(shop: Shop) -> None:
    """Before the count nothing of what is expected is told."""
    number = parcel(shop).box.number
    begin(shop, number)
    state = box(shop, number).close_check

    assert state is not None
    assert (state.going, state.missing, state.staying, state.missing_things) == ((), (), (), ())


def test_a_wrong_count_asks_for_tags_and_names_the_missing(shop: Shop) -> None:
    """Two counted of three: tags are ticked, the third is missing, and the box goes only with a reason."""
    number = parcel(shop, knives=3).box.number
    begin(shop, number)
    count(shop, by(), close_of(shop, number), 2)
    assert step_of(shop, number) is CloseStep.TICK
    knives = box(shop, number).knives
    tick(shop, by(), close_of(shop, number), knives[0].id)
    tick(shop, by(), close_of(shop, number), knives[2].id)
    ticks_done(shop, by(), close_of(shop, number))
    state = box(shop, number).close_check
    assert state is not None
    assert state.step is CloseStep.MISSING
    assert state.missing == (knives[1].id,)

    with pytest.raises(ReasonNeededError):
        why_missing(shop, by(), close_of(shop, number), "   ")
    why_missing(shop, by(), close_of(shop, number), "the ferry leaves")
    rest(shop, number)
    gone = send_off(shop, by(), close_of(shop, number))

    assert not gone.closed
    assert [knife.tag for knife in gone.missing] == [f"{number}-2"]
    left = box(shop, number)
    assert [(knife.tag, knife.looking_for) for knife in left.on_hand] == [(f"{number}-2", True)]


def test_a_lost_knife_is_found_or_settled(shop: Shop) -> None:
    """A knife looked for comes back to the board, or leaves it with the way the loss was settled."""
    number = parcel(shop, knives=2).box.number
    begin(shop, number)
    count(shop, by(), close_of(shop, number), 1)
    tick(shop, by(), close_of(shop, number), box(shop, number).knives[0].id)
    ticks_done(shop, by(), close_of(shop, number))
    why_missing(shop, by(), close_of(shop, number), "customer waits")
    rest(shop, number)
    send_off(shop, by(), close_of(shop, number))
    lost = box(shop, number).knives[1]

    found(shop, by(), lost)
    again = box(shop, number).knives[1]
    assert again.can_leave
    with pytest.raises(RuleError, match="not looked for"):
        settle_lost(shop, by(), again, "paid for")


def test_part_goes_today_and_the_rest_later(shop: Shop) -> None:
    """Two of three are ready: they go, the third keeps its column, and the box closes only when it has gone too."""
    number = counter(shop, knives=3, things=("roll",)).box.number
    begin(shop, number, ready=2)
    count(shop, by(), close_of(shop, number), 2)
    state = box(shop, number).close_check
    assert state is not None
    assert state.staying == (box(shop, number).knives[2].id,)
    if state.step is CloseStep.COMES_WITH:
        tick_thing(shop, by(), close_of(shop, number), box(shop, number).things[0].id)
    rest(shop, number)
    gone = send_off(shop, by(), close_of(shop, number))
    assert not gone.closed
    assert [knife.column for knife in box(shop, number).on_hand] == [Column.RECEIVED]

    begin(shop, number, ready=3)
    count(shop, by(), close_of(shop, number), 1)
    rest(shop, number)
    assert send_off(shop, by(), close_of(shop, number)).closed


def test_a_declined_knife_counts(shop: Shop) -> None:
    """A declined knife travels back free, and the count expects it."""
    made = counter(shop, knives=2)
    number = made.box.number
    decline_knife(shop, by(), made.knives[1], DeclineReason.CRACKED)
    begin(shop, number, ready=1)
    count(shop, by(), close_of(shop, number), 2)
    rest(shop, number)

    gone = send_off(shop, by(), close_of(shop, number))

    assert len(gone.knives) == 2
    assert gone.totals.total_cents == made.knives[0].price_cents


def test_a_knife_of_another_box_is_refused(shop: Shop) -> None:
    """A tag that belongs elsewhere cannot be ticked, and neither can one that is not ready."""
    number = parcel(shop, knives=3).box.number
    other = counter(shop)
    begin(shop, number, ready=2)
    count(shop, by(), close_of(shop, number), 3)

    with pytest.raises(RuleError, match="another box"):
        tick(shop, by(), close_of(shop, number), other.knives[0].id)
    with pytest.raises(RuleError, match="stands in received"):
        tick(shop, by(), close_of(shop, number), box(shop, number).knives[2].id)


def test_money_is_shown_and_settled(shop: Shop) -> None:
    """Unpaid needs a reason; paid in full needs no word."""
    number = counter(shop).box.number
    begin(shop, number)
    count(shop, by(), close_of(shop, number), 2)
    confirm_names(shop, by(), close_of(shop, number))
    with pytest.raises(TypedError, match="who picks it up"):
        confirm_label(shop, by(), close_of(shop, number))
    with pytest.raises(TypedError, match="'1' is none"):
        confirm_label(shop, by(), close_of(shop, number), "1")
    confirm_label(shop, by(), close_of(shop, number), "her son")
    assert step_of(shop, number) is CloseStep.MONEY
    with pytest.raises(ReasonNeededError):
        settle(shop, by(), close_of(shop, number), Settling.UNPAID)

    take_payment(shop, by(), box(shop, number).box, cash(box(shop, number).owed_cents))
    assert step_of(shop, number) is CloseStep.GO
    gone = send_off(shop, by(), close_of(shop, number))

    assert (gone.totals.paid_cents, gone.settled, gone.handed_to) == (gone.totals.total_cents, Settling.PAID, "her son")


def test_a_lost_knife_is_not_charged_and_the_rest_needs_a_label(shop: Shop) -> None:
    """Of two knives at 9.00 one is missing: 9.00 is owed, and what stays of a parcel has a label to buy."""
    made = parcel(shop, knives=2)
    number = made.box.number
    begin(shop, number)
    count(shop, by(), close_of(shop, number), 1)
    tick(shop, by(), close_of(shop, number), made.knives[0].id)
    ticks_done(shop, by(), close_of(shop, number))
    assert box(shop, number).without_missing.owed_cents == made.knives[0].price_cents
    assert box(shop, number).owed_cents == sum(knife.price_cents for knife in made.knives)  # until it has gone
    why_missing(shop, by(), close_of(shop, number), "the ferry leaves")
    rest(shop, number)

    gone = send_off(shop, by(), close_of(shop, number))

    left = box(shop, number)
    assert gone.totals.total_cents == left.owed_cents == made.knives[0].price_cents
    assert left.label is not None
    assert left.label.state is LabelState.TO_BUY
    assert picture(shop).day_line.leaves_today == 0


def test_a_sheath_left_behind_is_looked_for(shop: Shop) -> None:
    """What the box came with is ticked; what is not keeps the box open as looked for."""
    number = parcel(shop, knives=1, things=("sheath", "towel")).box.number
    begin(shop, number)
    count(shop, by(), close_of(shop, number), 1)
    assert step_of(shop, number) is CloseStep.COMES_WITH
    tick_thing(shop, by(), close_of(shop, number), box(shop, number).things[0].id)
    why_missing(shop, by(), close_of(shop, number), "towel is in the wash")
    shop_close = close_of(shop, number)
    things_done(shop, by(), shop_close)
    rest(shop, number)

    gone = send_off(shop, by(), close_of(shop, number))

    assert not gone.closed
    assert [thing.state for thing in box(shop, number).things] == [ThingState.GONE, ThingState.LOOKING]
    settle_lost(shop, by(), box(shop, number).things[1], "washed towel sent by post")
    assert picture(shop).boxes == ()


def test_a_sheath_found_later_goes_by_itself(shop: Shop) -> None:
    """When the knives are gone and only a sheath is left, a close-out of the sheath closes the box."""
    number = parcel(shop, knives=1, things=("sheath",)).box.number
    begin(shop, number)
    count(shop, by(), close_of(shop, number), 1)
    why_missing(shop, by(), close_of(shop, number), "still looking")
    things_done(shop, by(), close_of(shop, number))
    rest(shop, number)
    send_off(shop, by(), close_of(shop, number))
    found(shop, by(), box(shop, number).things[0])
    correct_box(shop, by(), box(shop, number).box, goes_by=GoesBy.PICK_UP)

    begin_close_out(shop, by(), box(shop, number).box)
    count(shop, by(), close_of(shop, number), 0)
    tick_thing(shop, by(), close_of(shop, number), box(shop, number).things[0].id)
    things_done(shop, by(), close_of(shop, number))
    rest(shop, number)

    assert send_off(shop, by(), close_of(shop, number)).closed
    assert picture(shop).boxes == ()


def test_nothing_ready_nothing_to_close_out(shop: Shop) -> None:
    """A box without a ready knife cannot be closed out."""
    made = parcel(shop)

    with pytest.raises(RuleError, match="Nothing of box"):
        begin_close_out(shop, by(), made.box)


def test_each_step_is_stored_at_once(shop: Shop) -> None:
    """A window opened afresh after any step stands exactly where the first one stood."""
    number = parcel(shop, knives=2, things=("roll",)).box.number
    begin(shop, number)
    acts: list[Callable[[], None]] = [
        lambda: count(shop, by(), close_of(shop, number), 1),
        lambda: tick(shop, by(), close_of(shop, number), box(shop, number).knives[0].id),
        lambda: tick(shop, by(), close_of(shop, number), box(shop, number).knives[1].id),
        lambda: ticks_done(shop, by(), close_of(shop, number)),
        lambda: tick_thing(shop, by(), close_of(shop, number), box(shop, number).things[0].id),
        lambda: confirm_names(shop, by(), close_of(shop, number)),
        lambda: confirm_label(shop, by(), close_of(shop, number)),
        lambda: settle(shop, by(), close_of(shop, number), Settling.ON_ACCOUNT),
    ]
    for act in acts:
        act()
        other = open_shop(shop.path)
        assert picture(other) == picture(shop)
        close_shop(other)

    assert step_of(shop, number) is CloseStep.GO
