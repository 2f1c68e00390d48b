"""What holds for a box after every action: undo and a second window cannot get round it."""

from collections.abc import Callable
from datetime import date

import pytest

from queueboard.errors import ChangedError, QueueboardError, RuleError
from queueboard.shop import (
    closing,
    correcting,
    labelling,
    losing,
    money,
    moving,
    noting,
    promising,
    receiving,
    undoing,
    waiting,
)
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor
from queueboard.values.box import Box
from queueboard.values.new import NewBox, NewLabel, NewPromise
from queueboard.words import (
    CameBy,
    Column,
    DeclineReason,
    GoesBy,
    LabelOwner,
    LabelState,
    Packing,
    PromiseKind,
    Settling,
    ThingState,
    WaitingFor,
)
from tests.shop.place import box, by, cash, chef, counter, parcel, picture, state
from tests.shop.undo_closing import close, lose_one


def go(shop: Shop, number: int, *, settled: Settling = Settling.ON_ACCOUNT, paid_cents: int = 0) -> Actor:
    """Close a box out as far as it is ready; the actor of its last step."""
    closing.begin_close_out(shop, by(), box(shop, number).box)
    closing.count(shop, by(), close(shop, number), box(shop, number).ready_count)
    if any(thing.state is ThingState.HERE for thing in box(shop, number).things):
        for thing in box(shop, number).things:
            closing.tick_thing(shop, by(), close(shop, number), thing.id)
        closing.things_done(shop, by(), close(shop, number))
    closing.confirm_names(shop, by(), close(shop, number))
    closing.confirm_label(shop, by(), close(shop, number), "Ms Verrin")
    payment = cash(paid_cents) if paid_cents else None
    closing.settle(shop, by(), close(shop, number), settled, "", payment)
    actor = by()
    closing.send_off(shop, actor, close(shop, number))
    return actor


def ready(shop: Shop, number: int, *tags: int) -> None:
    """Make knives ready, by the second half of their tags; all on hand when none is named."""
    chosen = [knife for knife in box(shop, number).on_hand if not tags or knife.number in tags]
    moving.move_knives(shop, by(), chosen, Column.READY)


def refused(shop: Shop, act: Callable[[], object], sentence: str) -> None:
    """The act is refused with this sentence, and nothing of it is stored."""
    before = state(shop)
    with pytest.raises(QueueboardError, match=sentence):
        act()
    assert state(shop) == before


def test_a_knife_struck_does_not_come_back_into_a_box_that_has_gone(shop: Shop) -> None:
    """Striking a knife cannot be undone once the box is closed out: no screen would show the knife."""
    number = counter(shop, knives=2).box.number
    struck = by()
    receiving.strike_knife(shop, struck, box(shop, number).knives[1], "typed twice")
    ready(shop, number)
    go(shop, number)

    refused(shop, lambda: undoing.undo(shop, by(), struck.group_id), "undo its close-out first")


@pytest.mark.parametrize("what", ["knife", "thing"])
def test_what_was_added_and_taken_back_is_not_added_again_to_a_box_that_has_gone(shop: Shop, what: str) -> None:
    """Doing an addition again is refused once the rest of the box is closed out."""
    made = counter(shop, knives=1)
    added, taken_back = by(), by()
    if what == "knife":
        receiving.add_knife(shop, added, made.box, chef())
    else:
        noting.add_thing(shop, added, made.box, "sheath")
    undoing.undo(shop, taken_back, added.group_id)
    ready(shop, made.box.number)
    go(shop, made.box.number)

    refused(shop, lambda: undoing.undo(shop, by(), taken_back.group_id), "undo its close-out first")


def test_the_first_of_two_part_close_outs_is_undone_after_the_second(shop: Shop) -> None:
    """A part that went comes back only once the rest is back too; then the box is open and whole."""
    number = counter(shop, knives=2).box.number
    ready(shop, number, 1)
    first = go(shop, number)
    ready(shop, number, 2)
    second = go(shop, number)

    refused(shop, lambda: undoing.undo(shop, by(), first.group_id, "wrong bag"), "undo its close-out first")
    undoing.undo(shop, by(), second.group_id, "wrong bag")
    refused(shop, lambda: undoing.undo(shop, by(), first.group_id, "wrong bag"), "leave it first")
    closing.leave_close_out(shop, by(), close(shop, number))
    undoing.undo(shop, by(), first.group_id, "wrong bag")

    assert [knife.column for knife in box(shop, number).knives] == [Column.READY, Column.READY]


def test_a_payment_stays_with_a_box_that_went_as_paid(shop: Shop) -> None:
    """The money of a box that went as paid is not taken back while the box is gone."""
    number = counter(shop, knives=1).box.number
    paying = by()
    money.take_payment(shop, paying, box(shop, number).box, cash(box(shop, number).owed_cents))
    ready(shop, number)
    went = go(shop, number, settled=Settling.PAID)

    refused(shop, lambda: undoing.undo(shop, by(), paying.group_id, "bounced"), "went as paid")
    undoing.undo(shop, by(), went.group_id, "bounced")
    undoing.undo(shop, by(), paying.group_id, "bounced")

    assert box(shop, number).paid_cents == 0


def by_a_second_window(shop: Shop, old: Box) -> dict[str, Callable[[], object]]:
    """Every act on a box whose window has not looked since it was closed out."""
    label = NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 17), told_to="R. Tallis", reason="belts late")
    return {
        "add a knife": lambda: receiving.add_knife(shop, by("K"), old, chef()),
        "add a thing": lambda: noting.add_thing(shop, by("K"), old, "sheath"),
        "take money": lambda: money.take_payment(shop, by("K"), old, cash(100)),
        "tell a date": lambda: promising.promise(shop, by("K"), old, later),
        "set a label": lambda: labelling.set_label(shop, by("K"), old, label),
        "note": lambda: noting.note_box(shop, by("K"), old, "call"),
        "flags": lambda: promising.set_flags(shop, by("K"), old, rush=True),
        "close out": lambda: closing.begin_close_out(shop, by("K"), old),
    }


@pytest.mark.parametrize(
    "act", ["add a knife", "add a thing", "take money", "tell a date", "set a label", "note", "flags", "close out"]
)
def test_a_box_another_window_closed_takes_nothing_more(shop: Shop, act: str) -> None:
    """An act on a box that has gone meanwhile is refused, whichever it is."""
    made = parcel(shop, knives=1)
    ready(shop, made.box.number)
    go(shop, made.box.number)

    refused(shop, by_a_second_window(shop, made.box)[act], "closed out|has changed|just changed|Nothing of")


def test_the_same_money_is_not_taken_twice(shop: Shop) -> None:
    """Two windows at the money of one box: the second is told that money came in, and takes none."""
    number = counter(shop, knives=1).box.number
    ready(shop, number)
    closing.begin_close_out(shop, by(), box(shop, number).box)
    closing.count(shop, by(), close(shop, number), 1)
    seen, owed = box(shop, number), box(shop, number).owed_cents
    assert seen.close_out is not None
    closing.settle(shop, by("J"), seen.close_out, Settling.PAID, "", cash(owed))

    for act in (
        lambda: closing.settle(shop, by("K"), close(shop, number), Settling.PAID, "", cash(owed)),
        lambda: money.take_payment(shop, by("K"), seen.box, cash(owed)),
    ):
        refused(shop, act, "Money for box")
    assert box(shop, number).paid_cents == owed


def test_a_second_date_told_from_an_old_view_is_refused(shop: Shop) -> None:
    """Two windows telling a date: the second has not seen the first's, and is told so."""
    made = parcel(shop)
    dates = [
        NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, day), told_to="R. Tallis", reason="belts late")
        for day in (17, 18)
    ]
    promising.promise(shop, by("J"), made.box, dates[0])

    with pytest.raises(ChangedError):
        promising.promise(shop, by("K"), made.box, dates[1])


def test_undo_unpacks_a_box_whose_knife_goes_back(shop: Shop) -> None:
    """Taking back the move to ready takes back the wrapping that came after it."""
    number = parcel(shop, knives=2).box.number
    moved = by()
    moving.move_knives(shop, moved, box(shop, number).knives, Column.READY)
    moving.pack_box(shop, by(), box(shop, number).box, Packing.WRAPPED)

    undoing.undo(shop, by(), moved.group_id)

    assert box(shop, number).box.packing is None


def test_a_knife_added_to_a_packed_box_unpacks_it(shop: Shop) -> None:
    """A wrapped box that gets one more knife is not wrapped any more."""
    number = parcel(shop, knives=1).box.number
    ready(shop, number)
    moving.pack_box(shop, by(), box(shop, number).box, Packing.WRAPPED)

    receiving.add_knife(shop, by(), box(shop, number).box, chef())

    assert box(shop, number).box.packing is None


def test_the_only_knife_of_a_box_is_not_struck(shop: Shop) -> None:
    """A box with nothing in it could never be closed; the sentence names the way."""
    made = counter(shop, knives=1)

    refused(shop, lambda: receiving.strike_knife(shop, by(), made.knives[0], "typed twice"), "receiving of the box")


def test_striking_the_last_knife_here_closes_a_box_whose_others_have_gone(shop: Shop) -> None:
    """Once all that is left was typed by mistake, the box has gone; undo brings both back."""
    number = counter(shop, knives=2).box.number
    ready(shop, number, 1)
    go(shop, number)
    struck = by()
    receiving.strike_knife(shop, struck, box(shop, number).on_hand[0], "never existed")
    assert picture(shop).box(number) is None

    undoing.undo(shop, by(), struck.group_id)

    assert len(box(shop, number).on_hand) == 1


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
