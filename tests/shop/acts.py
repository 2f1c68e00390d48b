"""Every operation as something that can be tried at any moment, on whatever is there: for days at random.

A new operation is one entry in a family of FAMILIES: given the moment, it chooses with moment.pick what it is about and
calls the operation. It may be refused with a sentence; where there is nothing to choose from, moment.pick ends it.
"""

from datetime import timedelta

from queueboard.priced_words import ChargeSort, MoneySort
from queueboard.records.belts import fitted_belts
from queueboard.records.moved import found_of
from queueboard.records.studies import studies
from queueboard.records.trials import open_trials
from queueboard.seedfiles import seed_text
from queueboard.shop import (
    announcing,
    charging,
    closing,
    correcting,
    counting,
    erasing,
    fitting,
    found_knives,
    gauging,
    labelling,
    losing,
    money,
    moving,
    noting,
    numbers,
    offering,
    promising,
    receiving,
    rehoming,
    restoring,
    running,
    saying,
    stable,
    testing,
    trialling,
    undoing,
    waiting,
    weighing,
    wobbling,
)
from queueboard.values.edge import NewSpot
from queueboard.values.knife import Knife
from queueboard.values.new import (
    NewAnnounced,
    NewBox,
    NewCharge,
    NewCustomer,
    NewPayment,
)
from queueboard.words import (
    ON_BOARD,
    BeltEnd,
    CameBy,
    Column,
    Condition,
    DeclineReason,
    GoesBy,
    Packing,
    PayWay,
    SecondLook,
    Settling,
    Stage,
    WaitingFor,
)
from tests.shop.acts_around import AROUND_THE_DAY, Act
from tests.shop.acts_market import MARKET_ACTS
from tests.shop.acts_swaps import SWAP_ACTS
from tests.shop.moment import NAMES, Moment
from tests.shop.place import chef

STEPS = ("P240", "P400", "16 um", "9 um", "no such belt")
PROCESSES = ("plain", "plain", "thin hard", "nowhere")
SEED = seed_text("settings.toml")
LENIENT = (
    SEED.replace("= 730", "= 0").replace("always = [] ", 'always = ["chef"] ').replace("on = false ", "on = true ")
)
"""A customer may be erased at once, the gauge is asked for every chef's knife, and kitchens have swap sets."""
SETTINGS = (SEED, LENIENT, LENIENT, "bench = 1")


def _comes_in(m: Moment) -> NewBox:
    counted = 1 + m.below(4)
    mail = m.yes
    return NewBox(
        new_customer=NewCustomer(name=m.pick(NAMES), phone=m.pick(("", "555 0142"))),
        came_by=CameBy.MAIL if mail else CameBy.COUNTER,
        goes_by=GoesBy.PARCEL if mail else GoesBy.PICK_UP,
        counted=counted,
        knives=tuple(chef(mark=m.pick(("", "blue"))) for _ in range(counted)),
        things=m.pick(((), ("sheath",))),
        note_says=m.pick((None, counted, 1)),
        promise=m.pick((None, m.day())),
        label=m.new_label() if mail else None,
    )


def _reading(m: Moment) -> object:
    knife = m.knife
    reading = m.pick(gauging.edge(m.shop, knife).readings)
    return gauging.correct_reading(m.shop, m.by, knife, reading, m.pick((None, 200)), m.text)


def _charged(m: Moment) -> object:
    seen = m.seen(lambda box: box.charges)
    return charging.strike_charge(m.shop, m.by, seen.box, m.pick(seen.charges))


def _charges(m: Moment) -> object:
    new = NewCharge(
        sort=m.pick(list(ChargeSort)), cents=m.pick((0, 450)), ppm=m.pick((None, None, 100_000)), text=m.text
    )
    seen = m.seen()
    return charging.add_charge(m.shop, m.by, seen.box, new, m.pick((None, *seen.knives[:1])))


def _pays(m: Moment) -> object:
    seen = m.seen()
    return money.take_payment(m.shop, m.by, seen.box, m.payment(seen, m.pick(list(MoneySort))))


def _ticks(m: Moment) -> object:
    seen = m.seen(lambda box: box.close_out and box.knives)
    return closing.tick(m.shop, m.by, m.pick([seen.close_out] if seen.close_out else []), m.pick(seen.knives).id)


def _unticks(m: Moment) -> object:
    seen = m.seen(lambda box: box.close_out and box.knives)
    return closing.untick(m.shop, m.by, m.pick([seen.close_out] if seen.close_out else []), m.pick(seen.knives).id)


def _ticks_thing(m: Moment) -> object:
    seen = m.seen(lambda box: box.close_out and box.things)
    return closing.tick_thing(m.shop, m.by, m.pick([seen.close_out] if seen.close_out else []), m.pick(seen.things).id)


def _settles(m: Moment) -> object:
    seen = m.seen(lambda box: box.close_out)
    settled = m.pick(list(Settling))
    paid = m.payment(seen) if settled is Settling.PAID and seen.owed_cents > 0 else None
    return closing.settle(m.shop, m.by, m.pick([seen.close_out] if seen.close_out else []), settled, m.text, paid)


def _lost(m: Moment) -> Knife:
    return m.pick([k for box in m.picture.boxes for k in box.knives if k.looking_for] or m.knives)


FAMILIES: dict[str, dict[str, Act]] = {
    **AROUND_THE_DAY,
    "receiving": {
        "add_customer": lambda m: receiving.add_customer(m.shop, m.by, name=m.pick(NAMES), notes=m.text),
        "receive_box": lambda m: receiving.receive_box(m.shop, m.by, _comes_in(m)),
        "open_box": lambda m: receiving.open_box(m.shop, m.by, m.shut, 2, (chef(), m.new_knife()), note_says=2),
        "add_knife": lambda m: receiving.add_knife(m.shop, m.by, m.box, m.new_knife()),
        "strike_knife": lambda m: receiving.strike_knife(m.shop, m.by, m.knife, m.text),
        "add_thing": lambda m: noting.add_thing(m.shop, m.by, m.box, m.pick(("sheath", ""))),
        "yes_to_count": lambda m: counting.yes_to_count(m.shop, m.by, m.seen(lambda box: box.apart).box),
        "not_theirs": lambda m: counting.not_theirs(m.shop, m.by, m.seen(lambda box: box.apart).box, "shelf F"),
    },
    "announcing": {
        "announce_box": lambda m: announcing.announce_box(
            m.shop,
            m.by,
            NewAnnounced(
                new_customer=NewCustomer(name=m.pick(NAMES)), expected_knives=m.pick((None, 6)), promise=m.day()
            ),
        ),
        "expect_box": lambda m: announcing.expect_box(m.shop, m.by, m.shut, m.pick((None, 3)), m.now.date()),
        "arrived": lambda m: announcing.arrived(m.shop, m.by, m.shut),
        "call_off": lambda m: announcing.call_off(m.shop, m.by, m.shut, m.text),
    },
    "moving": {
        "move_knives": lambda m: moving.move_knives(m.shop, m.by, m.knives, m.pick(ON_BOARD)),
        "knives_wait": lambda m: waiting.knives_wait(m.shop, m.by, m.knives, m.pick((None, *WaitingFor))),
        "box_waits": lambda m: waiting.box_waits(m.shop, m.by, m.box, m.pick((None, *WaitingFor))),
        "decline_knife": lambda m: noting.decline_knife(m.shop, m.by, m.knife, m.pick(list(DeclineReason)), m.text),
        "accept_knife": lambda m: noting.accept_knife(m.shop, m.by, m.knife),
        "pack_box": lambda m: moving.pack_box(m.shop, m.by, m.box, m.pick((None, *Packing))),
        "prove_tray": lambda m: testing.prove_tray(m.shop, m.by, (tray := m.in_testing()), tray[: m.below(3)]),
        "fix_day_list": lambda m: numbers.fix_day_list(
            m.shop, m.by, m.now.date(), [run.knife_ids for run in m.picture.plan.runs]
        ),
    },
    "runs": {
        "start_run": lambda m: running.start_run(m.shop, m.by, m.pick(PROCESSES), [*m.knives, *m.knives], 90, 600),
        "pause_run": lambda m: running.pause_run(m.shop, m.by, m.run),
        "go_on_run": lambda m: running.go_on_run(m.shop, m.by, m.run),
        "finish_run": lambda m: running.finish_run(m.shop, m.by, m.run),
        "finish_untimed": lambda m: running.finish_untimed(m.shop, m.by, m.run, Column.READY),
        "throw_away": lambda m: running.throw_away(m.shop, m.by, m.run),
        "leave_run": lambda m: running.leave_run(m.shop, m.by, m.run),
    },
    "edges": {
        "mark_spots": lambda m: gauging.mark_spots(m.shop, m.by, m.knife, [NewSpot(name=m.text, from_heel_mm=9)]),
        "read_spot": lambda m: gauging.read_spot(
            m.shop, m.by, m.knife, m.pick(("heel", "tip")), m.pick((180, 420)), m.pick(list(Stage))
        ),
        "correct_reading": _reading,
        "judge_edge": lambda m: testing.judge_edge(m.shop, m.by, m.pick(m.in_testing()), ok=m.yes),
        "let_go_by_eye": lambda m: testing.let_go_by_eye(m.shop, m.by, m.pick(m.in_testing())),
        "look_twice": lambda m: testing.look_twice(
            m.shop, m.by, m.pick(m.in_testing()), m.pick(list(SecondLook)), m.text
        ),
        "begin_study": lambda m: wobbling.begin_study(m.shop, m.by, m.text, m.pick((5, 1))),
        "read_study": lambda m: wobbling.read_study(m.shop, m.by, m.pick(studies(m.shop.database)), 100 + m.below(90)),
        "finish_study": lambda m: wobbling.finish_study(m.shop, m.by, m.pick(studies(m.shop.database))),
        "begin_study_over": lambda m: wobbling.begin_study_over(m.shop, m.by, m.pick(studies(m.shop.database))),
    },
    "bench": {
        "fit_belt": lambda m: fitting.fit_belt(m.shop, m.by, m.pick(PROCESSES), m.pick(STEPS)),
        "move_belt": lambda m: fitting.move_belt(
            m.shop, m.by, m.pick(fitted_belts(m.shop.database)), m.pick(PROCESSES), m.pick(STEPS)
        ),
        "remove_belt": lambda m: fitting.remove_belt(
            m.shop, m.by, m.pick(fitted_belts(m.shop.database)), m.pick(list(BeltEnd)), m.text
        ),
        "count_spares": lambda m: fitting.count_spares(m.shop, m.by, m.pick(STEPS), m.below(9)),
        "begin_trial": lambda m: trialling.begin_trial(
            m.shop, m.by, kind="chef", process=m.pick(PROCESSES), belt=m.pick(STEPS)
        ),
        "end_trial": lambda m: trialling.end_trial(m.shop, m.by, m.pick(open_trials(m.shop.database))),
        "set_stable": lambda m: stable.set_stable(
            m.shop, m.by, m.pick(PROCESSES), m.now - timedelta(days=m.below(9)), m.now
        ),
    },
    "money": {
        "add_charge": _charges,
        "strike_charge": _charged,
        "set_limit": lambda m: charging.set_limit(m.shop, m.by, m.box, m.pick((None, 100, 6000))),
        "set_price": lambda m: money.set_price(m.shop, m.by, m.knife, m.pick((0, 1250))),
        "take_payment": _pays,
        "pay_account": lambda m: money.pay_account(
            m.shop, m.by, m.gone, NewPayment(cents=100, way=PayWay.CARD, paid_before_cents=0)
        ),
    },
    "promises": {
        "promise": lambda m: promising.promise(m.shop, m.by, m.box, m.day()),
        "set_flags": lambda m: promising.set_flags(
            m.shop, m.by, m.box, rush=m.below(2) == 0, this_next=m.below(2) == 0
        ),
        "say_chances": lambda m: saying.say_chances(m.shop, m.by, m.now.date(), [(m.box.id, m.now, 150)]),
        "note_box": lambda m: noting.note_box(m.shop, m.by, m.box, m.text),
        "note_knife": lambda m: noting.note_knife(m.shop, m.by, m.knife, m.text),
    },
    "labels": {
        "set_label": lambda m: labelling.set_label(m.shop, m.by, m.box, m.new_label()),
        "label_bought": lambda m: labelling.label_bought(m.shop, m.by, m.label, m.new_label()),
        "ask_new_label": lambda m: offering.ask_new_label(m.shop, m.by, m.box),
        "take_shop_label": lambda m: offering.take_shop_label(m.shop, m.by, m.box, m.pick((None, 1700))),
        "weigh_parcel": lambda m: weighing.weigh_parcel(m.shop, m.by, m.box, m.pick((None, 1240)), (450, 250, 100)),
    },
    "closing": {
        "begin_close_out": lambda m: closing.begin_close_out(m.shop, m.by, m.box),
        "leave_close_out": lambda m: closing.leave_close_out(m.shop, m.by, m.close),
        "count": lambda m: closing.count(m.shop, m.by, m.close, m.below(5)),
        "tick": _ticks,
        "untick": _unticks,
        "tick_thing": _ticks_thing,
        "ticks_done": lambda m: closing.ticks_done(m.shop, m.by, m.close),
        "things_done": lambda m: closing.things_done(m.shop, m.by, m.close),
        "why_missing": lambda m: closing.why_missing(m.shop, m.by, m.close, m.text),
        "confirm_names": lambda m: closing.confirm_names(m.shop, m.by, m.close),
        "confirm_label": lambda m: closing.confirm_label(m.shop, m.by, m.close, m.pick(("self", ""))),
        "settle": _settles,
        "send_off": lambda m: closing.send_off(m.shop, m.by, m.close),
    },
    "lost_and_found": {
        "found": lambda m: losing.found(m.shop, m.by, _lost(m)),
        "settle_lost": lambda m: losing.settle_lost(m.shop, m.by, _lost(m), m.text),
        "note_found": lambda m: found_knives.note_found(m.shop, m.by, kind="chef", mark=m.text, place="sink"),
        "settle_found": lambda m: found_knives.settle_found(
            m.shop, m.by, m.pick(found_of(m.shop.database, "TRUE")), m.text
        ),
        "found_into_box": lambda m: found_knives.found_into_box(
            m.shop, m.by, m.pick(found_of(m.shop.database, "TRUE")), m.box, m.text
        ),
        "move_to_box": lambda m: rehoming.move_to_box(m.shop, m.by, m.knife, m.box, m.text),
        "found_among": lambda m: rehoming.found_among(m.shop, m.by, _lost(m), m.box, m.text),
    },
    "correcting": {
        "correct_knife": lambda m: correcting.correct_knife(
            m.shop, m.by, m.knife, kind=m.pick(("paring", "x")), mark=m.text, condition=m.pick(list(Condition))
        ),
        "correct_box": lambda m: correcting.correct_box(
            m.shop, m.by, m.box, number=m.pick((None, 555)), counted=m.pick((None, 2)), goes_by=m.pick(list(GoesBy))
        ),
        "correct_customer": lambda m: correcting.correct_customer(
            m.shop, m.by, m.customer, name=m.text, town="Dunmere"
        ),
        "give_box_to": lambda m: correcting.give_box_to(m.shop, m.by, m.box, m.customer),
        "merge_customers": lambda m: correcting.merge_customers(m.shop, m.by, m.customer, m.customer),
    },
    "swaps": SWAP_ACTS,
    "market": MARKET_ACTS,
    "keeping": {
        "take_settings": lambda m: numbers.take_settings(m.shop, m.by, m.pick(SETTINGS)),
        "erase_customer": lambda m: erasing.erase_customer(m.shop, m.by, m.customer.id, m.text),
        "note_restored": lambda m: restoring.note_restored(m.shop, m.by, m.shop.path, None, 12, m.pick((None, 3))),
    },
    "undoing": {
        "undo": lambda m: undoing.undo(
            m.shop, m.by, m.pick([step.group_id for step in undoing.steps(m.shop, m.who, 40)]), m.text
        ),
    },
}
"""Every operation, by family and by its name."""
