"""For every operation: how to come to it, and the one act itself; its undo is tested from here.

A new operation needs a function do_NAME here: it prepares a shop and returns the act.
"""

from collections.abc import Callable
from datetime import date

from queueboard.seedfiles import seed_text
from queueboard.shop import (
    closing,
    correcting,
    erasing,
    labelling,
    money,
    moving,
    noting,
    numbers,
    offering,
    promising,
    receiving,
    restoring,
    saying,
    undoing,
    waiting,
    weighing,
)
from queueboard.shop.opening import Shop
from queueboard.values.new import NewBox, NewCustomer, NewLabel, NewPromise
from queueboard.words import (
    CameBy,
    Column,
    DeclineReason,
    GoesBy,
    LabelOwner,
    LabelState,
    Packing,
    PromiseKind,
    WaitingFor,
)
from tests.shop import (
    undo_announcing,
    undo_charging,
    undo_closing,
    undo_counting,
    undo_edges,
    undo_evening,
    undo_market,
    undo_running,
    undo_shelf,
    undo_swapping,
)
from tests.shop.place import box, by, cash, chef, counter, parcel
from tests.shop.undo_closing import Act

Scenario = Callable[[Shop], Act]


def do_add_customer(shop: Shop) -> Act:
    return lambda actor: receiving.add_customer(shop, actor, name="Oake")


def do_receive_box(shop: Shop) -> Act:
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


def do_open_box(shop: Shop) -> Act:
    customer = receiving.add_customer(shop, by(), name="Oake")
    unopened = NewBox(
        customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, knives=(), opened=False
    )
    number = receiving.receive_box(shop, by(), unopened)
    return lambda actor: receiving.open_box(shop, actor, box(shop, number).box, 1, (chef(),), ("roll",), 2)


def do_add_knife(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: receiving.add_knife(shop, actor, made.box, chef())


def do_strike_knife(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: receiving.strike_knife(shop, actor, made.knives[0], "typed twice")


def do_move_knives(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: moving.move_knives(shop, actor, made.knives, Column.ON_BENCH)


def do_pack_box(shop: Shop) -> Act:
    number = undo_closing.ready_parcel(shop)
    return lambda actor: moving.pack_box(shop, actor, box(shop, number).box, Packing.WRAPPED)


def do_knives_wait(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: waiting.knives_wait(shop, actor, made.knives[:2], WaitingFor.BELTS)


def do_box_waits(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: waiting.box_waits(shop, actor, made.box, WaitingFor.ESTIMATE)


def do_note_box(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: noting.note_box(shop, actor, made.box, "call before six")


def do_note_knife(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: noting.note_knife(shop, actor, made.knives[0], "blue at the tip")


def do_decline_knife(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: noting.decline_knife(shop, actor, made.knives[0], DeclineReason.CRACKED, "9 mm")


def do_accept_knife(shop: Shop) -> Act:
    made = parcel(shop)
    noting.decline_knife(shop, by(), made.knives[0], DeclineReason.PRICE)
    return lambda actor: noting.accept_knife(shop, actor, box(shop, made.box.number).knives[0])


def do_add_thing(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: noting.add_thing(shop, actor, made.box, "towel")


def do_promise(shop: Shop) -> Act:
    made = parcel(shop)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 17), told_to="R. Tallis", reason="belts late")
    return lambda actor: promising.promise(shop, actor, made.box, later)


def do_set_flags(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: promising.set_flags(shop, actor, made.box, rush=True, this_next=True)


def do_set_label(shop: Shop) -> Act:
    made = parcel(shop)
    new = NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY)
    return lambda actor: labelling.set_label(shop, actor, made.box, new)


def quay_post(day: date) -> NewLabel:
    return NewLabel(owner=LabelOwner.SHOP, state=LabelState.HERE, carrier="Quay Post", expires_on=day, limit_g=2268)


def do_ask_new_label(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: offering.ask_new_label(shop, actor, made.box)


def do_take_shop_label(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: offering.take_shop_label(shop, actor, made.box, 1700)


def do_weigh_parcel(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: weighing.weigh_parcel(shop, actor, made.box, 1240, (450, 250, 100))


def do_label_bought(shop: Shop) -> Act:
    made = parcel(shop)
    labelling.set_label(shop, by(), made.box, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))
    label = box(shop, made.box.number).label
    assert label is not None
    return lambda actor: labelling.label_bought(shop, actor, label, quay_post(date(2026, 12, 1)))


def do_set_price(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: money.set_price(shop, actor, made.knives[0], 1250)


def do_take_payment(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: money.take_payment(shop, actor, made.box, cash(500))


def do_correct_knife(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: correcting.correct_knife(shop, actor, made.knives[0], kind="paring", mark="red handle")


def do_correct_box(shop: Shop) -> Act:
    made = counter(shop)
    return lambda actor: correcting.correct_box(shop, actor, made.box, number=555, goes_by=GoesBy.PARCEL)


def do_correct_customer(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: correcting.correct_customer(shop, actor, made.customer, name="R. Talis", phone="")


def do_give_box_to(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: correcting.give_box_to(shop, actor, made.box, NewCustomer(name="Oake"))


def do_merge_customers(shop: Shop) -> Act:
    first, second = parcel(shop).customer, parcel(shop, name="Tallis, R.").customer
    return lambda actor: correcting.merge_customers(shop, actor, first, second)


def do_take_settings(shop: Shop) -> Act:
    return lambda actor: numbers.take_settings(shop, actor, seed_text("settings.toml") + "\n# a remark\n")


def do_fix_day_list(shop: Shop) -> Act:
    return lambda actor: numbers.fix_day_list(shop, actor, date(2026, 11, 9), [[1], [2]])


def do_say_chances(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: saying.say_chances(shop, actor, date(2026, 11, 9), [(made.box.id, by(minutes=900).now, 150)])


def do_erase_customer(shop: Shop) -> Act:
    numbers.take_settings(shop, by(), seed_text("settings.toml").replace("= 730", "= 0"))
    number = undo_closing.all_but_sent(shop)
    customer = box(shop, number).customer
    closing.send_off(shop, by(), undo_closing.close(shop, number))
    return lambda actor: erasing.erase_customer(shop, actor, customer.id, "asked by letter", though_owing=True)


def do_note_restored(shop: Shop) -> Act:
    copy = shop.path.with_name("stick.qb")
    return lambda actor: restoring.note_restored(shop, actor, copy, shop.path.with_name("test-aside"), 12, None)


def do_undo(shop: Shop) -> Act:
    made = parcel(shop)
    actor = by()
    moving.move_knives(shop, actor, made.knives, Column.ON_BENCH)
    return lambda second: undoing.undo(shop, second, actor.group_id)


SCENARIOS: dict[str, Scenario] = {
    name.removeprefix("do_"): scenario
    for family in (
        globals(),
        *map(
            vars,
            (
                *(undo_announcing, undo_charging, undo_closing, undo_counting, undo_edges, undo_evening, undo_running),
                *(undo_shelf, undo_swapping, undo_market),
            ),
        ),
    )
    for name, scenario in family.items()
    if name.startswith("do_")
}
