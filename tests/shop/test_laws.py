"""What holds for a box after every action: undo and a second window cannot get round it."""

from collections.abc import Callable
from datetime import date

import pytest

from queueboard.errors import ChangedError, QueueboardError
from queueboard.shop import (
    closing,
    labelling,
    money,
    moving,
    noting,
    promising,
    receiving,
    undoing,
)
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor
from queueboard.values.box import Box
from queueboard.values.new import NewLabel, NewPromise
from queueboard.words import (
    Column,
    LabelOwner,
    LabelState,
    Packing,
    PromiseKind,
    Settling,
    ThingState,
)
from tests.shop.place import box, by, cash, chef, counter, parcel, picture, state
from tests.shop.undo_closing import close


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
