"""Undo of every operation, several steps back, and the refusals."""

import importlib
import pkgutil
from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

import queueboard.shop
from queueboard.errors import ChangedError, ReasonNeededError, RuleError
from queueboard.seedfiles import seed_text
from queueboard.shop import (
    closing,
    correcting,
    labelling,
    money,
    moving,
    noting,
    numbers,
    promising,
    receiving,
    undoing,
    waiting,
)
from queueboard.shop.opening import Shop
from queueboard.shop.operation import OPERATIONS
from queueboard.values.actor import Actor
from queueboard.values.box import CloseOut
from queueboard.values.new import NewBox, NewLabel, NewPromise
from queueboard.words import (
    CameBy,
    Column,
    DeclineReason,
    GoesBy,
    LabelOwner,
    LabelState,
    Packing,
    PayWay,
    PromiseKind,
    Settling,
    WaitingFor,
)
from tests.shop.place import box, by, chef, counter, parcel, state

Scenario = Callable[[Shop], Callable[[Actor], object]]
"""Prepares a shop; the function it returns does the one operation."""


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


def do_add_customer(shop: Shop) -> Callable[[Actor], object]:
    return lambda actor: receiving.add_customer(shop, actor, name="Oake")


def do_receive_box(shop: Shop) -> Callable[[Actor], object]:
    customer = receiving.add_customer(shop, by(), name="Oake")
    new = NewBox(
        customer_id=customer,
        came_by=CameBy.MAIL,
        goes_by=GoesBy.PARCEL,
        counted=1,
        knives=(chef(),),
        things=("sheath",),
        note_says=2,
        promise=NewPromise(kind=PromiseKind.SHIPS_BY, day=date(2026, 11, 12)),
    )
    return lambda actor: receiving.receive_box(shop, actor, new)


def do_open_box(shop: Shop) -> Callable[[Actor], object]:
    customer = receiving.add_customer(shop, by(), name="Oake")
    unopened = NewBox(
        customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, knives=(), opened=False
    )
    number = receiving.receive_box(shop, by(), unopened)
    return lambda actor: receiving.open_box(shop, actor, box(shop, number).box, 1, (chef(),), ("roll",), 2)


def do_add_knife(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: receiving.add_knife(shop, actor, made.box, chef())


def do_strike_knife(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: receiving.strike_knife(shop, actor, made.knives[0], "typed twice")


def do_move_knives(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: moving.move_knives(shop, actor, made.knives, Column.ON_BENCH)


def do_pack_box(shop: Shop) -> Callable[[Actor], object]:
    number = ready_parcel(shop)
    return lambda actor: moving.pack_box(shop, actor, box(shop, number).box, Packing.WRAPPED)


def do_knives_wait(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: waiting.knives_wait(shop, actor, made.knives[:2], WaitingFor.BELTS)


def do_box_waits(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: waiting.box_waits(shop, actor, made.box, WaitingFor.ESTIMATE)


def do_note_box(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: noting.note_box(shop, actor, made.box, "call before six")


def do_note_knife(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: noting.note_knife(shop, actor, made.knives[0], "blue at the tip")


def do_decline_knife(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: noting.decline_knife(shop, actor, made.knives[0], DeclineReason.CRACKED, "9 mm")


def do_accept_knife(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    noting.decline_knife(shop, by(), made.knives[0], DeclineReason.PRICE)
    return lambda actor: noting.accept_knife(shop, actor, box(shop, made.box.number).knives[0])


def do_add_thing(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: noting.add_thing(shop, actor, made.box, "towel")


def do_promise(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 17), told_to="R. Tallis", reason="belts late")
    return lambda actor: promising.promise(shop, actor, made.box, later)


def do_set_flags(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: promising.set_flags(shop, actor, made.box, rush=True, this_next=True)


def do_set_label(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    new = NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY)
    return lambda actor: labelling.set_label(shop, actor, made.box, new)


def do_label_bought(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    labelling.set_label(shop, by(), made.box, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))
    label = box(shop, made.box.number).label
    assert label is not None
    return lambda actor: labelling.label_bought(shop, actor, label, date(2026, 12, 1), "Quay Post")


def do_set_price(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: money.set_price(shop, actor, made.knives[0], 1250)


def do_take_payment(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: money.take_payment(shop, actor, made.box, 500, PayWay.CASH)


def do_correct_knife(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: correcting.correct_knife(shop, actor, made.knives[0], kind="paring", mark="red handle")


def do_correct_box(shop: Shop) -> Callable[[Actor], object]:
    made = counter(shop)
    return lambda actor: correcting.correct_box(shop, actor, made.box, number=555, goes_by=GoesBy.PARCEL)


def do_correct_customer(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    return lambda actor: correcting.correct_customer(shop, actor, made.customer, name="R. Talis", phone="")


def do_give_box_to(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    other = receiving.add_customer(shop, by(), name="Oake")
    return lambda actor: correcting.give_box_to(shop, actor, made.box, other)


def do_merge_customers(shop: Shop) -> Callable[[Actor], object]:
    first, second = parcel(shop).customer, parcel(shop, name="Tallis, R.").customer
    return lambda actor: correcting.merge_customers(shop, actor, first, second)


def do_begin_close_out(shop: Shop) -> Callable[[Actor], object]:
    number = ready_parcel(shop)
    return lambda actor: closing.begin_close_out(shop, actor, box(shop, number).box)


def do_leave_close_out(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 2)
    closing.tick(shop, by(), close(shop, number), box(shop, number).knives[0].id)
    return lambda actor: closing.leave_close_out(shop, actor, close(shop, number))


def do_count(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 2)
    closing.tick(shop, by(), close(shop, number), box(shop, number).knives[0].id)
    return lambda actor: closing.count(shop, actor, close(shop, number), 3)


def do_tick(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 2)
    return lambda actor: closing.tick(shop, actor, close(shop, number), box(shop, number).knives[1].id)


def do_untick(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 2)
    knife = box(shop, number).knives[1].id
    closing.tick(shop, by(), close(shop, number), knife)
    return lambda actor: closing.untick(shop, actor, close(shop, number), knife)


def do_tick_thing(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 3, things=("sheath",))
    return lambda actor: closing.tick_thing(shop, actor, close(shop, number), box(shop, number).things[0].id)


def do_ticks_done(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 2)
    closing.tick(shop, by(), close(shop, number), box(shop, number).knives[1].id)
    return lambda actor: closing.ticks_done(shop, actor, close(shop, number))


def do_things_done(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 3, things=("sheath",))
    return lambda actor: closing.things_done(shop, actor, close(shop, number))


def do_why_missing(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 2)
    return lambda actor: closing.why_missing(shop, actor, close(shop, number), "customer cannot wait")


def do_confirm_names(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 3)
    return lambda actor: closing.confirm_names(shop, actor, close(shop, number))


def do_confirm_label(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 3)
    closing.confirm_names(shop, by(), close(shop, number))
    return lambda actor: closing.confirm_label(shop, actor, close(shop, number))


def do_settle(shop: Shop) -> Callable[[Actor], object]:
    number = counted(shop, 3)
    return lambda actor: closing.settle(shop, actor, close(shop, number), Settling.UNPAID, "pays on Monday")


def do_send_off(shop: Shop) -> Callable[[Actor], object]:
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


def do_found(shop: Shop) -> Callable[[Actor], object]:
    number = lose_one(shop)
    return lambda actor: closing.found(shop, actor, box(shop, number).knives[2])


def do_settle_lost(shop: Shop) -> Callable[[Actor], object]:
    number = lose_one(shop)
    return lambda actor: closing.settle_lost(shop, actor, box(shop, number).knives[2], "paid for a new one")


def do_take_settings(shop: Shop) -> Callable[[Actor], object]:
    return lambda actor: numbers.take_settings(shop, actor, seed_text("settings.toml") + "\n# a remark\n")


def do_fix_day_list(shop: Shop) -> Callable[[Actor], object]:
    return lambda actor: numbers.fix_day_list(shop, actor, date(2026, 11, 9), [1, 2])


def do_undo(shop: Shop) -> Callable[[Actor], object]:
    made = parcel(shop)
    actor = by()
    moving.move_knives(shop, actor, made.knives, Column.ON_BENCH)
    return lambda second: undoing.undo(shop, second, actor.group_id)


SCENARIOS: dict[str, Scenario] = {
    name.removeprefix("do_"): scenario for name, scenario in globals().items() if name.startswith("do_")
}


def test_every_operation_has_a_scenario() -> None:
    """An operation without an undo test fails here."""
    for module in pkgutil.iter_modules(queueboard.shop.__path__):
        importlib.import_module(f"queueboard.shop.{module.name}")

    assert set(SCENARIOS) == set(OPERATIONS)


@pytest.mark.parametrize("name", sorted(SCENARIOS))
def test_undo_brings_the_state_back(shop: Shop, name: str) -> None:
    """Undo of an operation leaves every row as it was before, and undoing the undo does it again."""
    act = SCENARIOS[name](shop)
    before = state(shop)
    actor = by("J", minutes=1)
    act(actor)
    after = state(shop)
    assert after != before

    back = by("J", minutes=2)
    undoing.undo(shop, back, actor.group_id, "pressed by mistake")
    assert state(shop) == before

    undoing.undo(shop, by("J", minutes=3), back.group_id, "it was right after all")
    assert state(shop) == after


@pytest.mark.parametrize("name", sorted(name for name, kind in OPERATIONS.items() if kind.undo_needs_reason))
def test_undo_asks_for_a_reason_where_the_world_is_concerned(shop: Shop, name: str) -> None:
    """A parcel, a payment or a told date is taken back only with a reason."""
    act = SCENARIOS[name](shop)
    actor = by("J", minutes=1)
    act(actor)
    after = state(shop)

    with pytest.raises(ReasonNeededError, match="type why"):
        undoing.undo(shop, by(), actor.group_id, "  ")

    assert state(shop) == after


def test_several_steps_back(shop: Shop) -> None:
    """Undo goes back step by step through what one person did, and leaves another's steps alone."""
    made = parcel(shop)
    start = state(shop)
    for minute, to in enumerate((Column.ON_BENCH, Column.TESTING, Column.READY)):
        moving.move_knives(shop, by("J", minutes=minute), box(shop, made.box.number).knives, to)
    noting.note_box(shop, by("K", minutes=9), box(shop, made.box.number).box, "call first")

    for _ in range(3):
        undoing.undo(shop, by("J", minutes=10), undoing.steps(shop, "J")[0].group_id)

    assert [step.operation for step in undoing.steps(shop, "K")] == ["note_box"]
    undoing.undo(shop, by("K", minutes=11), undoing.steps(shop, "K")[0].group_id)
    assert state(shop) == start


def test_undo_is_refused_when_somebody_changed_the_row_since(shop: Shop) -> None:
    """A step whose knife another person has moved since stays as it is, and the sentence names who."""
    made = parcel(shop)
    mine = by("J")
    moving.move_knives(shop, mine, made.knives, Column.ON_BENCH)
    moving.move_knives(shop, by("K"), box(shop, made.box.number).knives[:1], Column.TESTING)
    before = state(shop)

    with pytest.raises(ChangedError, match="K has changed it since"):
        undoing.undo(shop, by("J"), mine.group_id)

    assert state(shop) == before


def test_undo_twice_is_refused(shop: Shop) -> None:
    """A step that is undone already cannot be undone again."""
    made = parcel(shop)
    actor = by()
    moving.move_knives(shop, actor, made.knives, Column.ON_BENCH)
    undoing.undo(shop, by(), actor.group_id)

    with pytest.raises(RuleError, match="undone already"):
        undoing.undo(shop, by(), actor.group_id)


def test_the_same_action_sent_twice_acts_once(shop: Shop) -> None:
    """A second try with the same group id is refused and changes nothing."""
    made = parcel(shop)
    actor = by()
    money.take_payment(shop, actor, made.box, 500, PayWay.CASH)
    before = state(shop)

    with pytest.raises(RuleError):
        money.take_payment(shop, replace(actor), made.box, 500, PayWay.CASH)

    assert state(shop) == before


def test_words_that_were_erased_cannot_be_put_back(shop: Shop) -> None:
    """Once a person's words are emptied from beside history, undo says so instead of inventing some."""
    made = parcel(shop)
    actor = by()
    correcting.correct_customer(shop, actor, made.customer, name="Somebody Else")
    shop.database.rows("DELETE FROM personal")

    with pytest.raises(RuleError, match="erased since"):
        undoing.undo(shop, by(), actor.group_id)
