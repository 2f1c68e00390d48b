"""Boxes that are announced: nothing of them is here until they are in the door."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from queueboard.errors import ChangedError, QueueboardError, ReasonNeededError, RuleError, TypedError
from queueboard.shop import announcing, closing, money, noting, promising, receiving, undoing
from queueboard.shop.opening import Shop
from queueboard.values.new import NewAnnounced, NewPromise
from queueboard.words import CameBy, GoesBy, LabelState, PromiseKind, WaitingFor
from tests.shop.place import NOW, box, by, cash, chef, parcel, picture, planned_box, state
from tests.shop.undo_announcing import OAKE, announced

LATER = NewPromise(kind=PromiseKind.SHIPS_BY, day=date(2026, 11, 20), told_to="Oake", reason="nine, not six")


def test_an_announced_box_is_known_but_not_here(shop: Shop) -> None:
    """It has a number, a customer, a promise and a label to buy; nothing of it is on hand or in the work."""
    seen = announced(shop)

    assert seen.box.announced
    assert (seen.box.expected_knives, seen.box.expected_on) == (6, date(2026, 11, 12))
    assert (seen.box.came_by, seen.box.goes_by, seen.box.opened) == (CameBy.MAIL, GoesBy.PARCEL, False)
    assert (seen.customer.name, len(seen.promises)) == ("Oake", 1)
    assert seen.label is not None
    assert seen.label.state is LabelState.TO_BUY
    assert (seen.on_hand, seen.things) == ((), ())


def test_no_label_is_bought_for_a_box_that_is_not_here(shop: Shop) -> None:
    """Its days count from the day it is bought: only once the box is in the door it is due."""
    made = planned_box(shop, announced(shop).box.number)
    assert (made.label_due, picture(shop).day_line.labels_due) == (None, 0)

    announcing.arrived(shop, by(), made.box)

    assert picture(shop).day_line.labels_due == 1


def test_it_arrives_and_is_opened_later(shop: Shop) -> None:
    """In the door it is an unopened box like any other, received when it came; what was expected stays known."""
    made = announced(shop)
    announcing.arrived(shop, by("K", minutes=90), made.box)

    here = box(shop, made.box.number).box
    assert not here.announced
    assert (here.opened, here.received_at) == (False, by(minutes=90).now)
    assert here.expected_knives == 6
    with pytest.raises(RuleError, match="in the door already"):
        announcing.arrived(shop, by(), here)
    receiving.open_box(shop, by(minutes=95), here, 2, (chef(), chef()))

    assert box(shop, made.box.number).box.received_at == by(minutes=90).now


def test_opening_it_takes_it_in_and_tells_a_new_date(shop: Shop) -> None:
    """Opened straight from the post it is received, counted and promised anew; the first date stays as it was told."""
    made = announced(shop)

    receiving.open_box(shop, by(minutes=90), made.box, 2, (chef(), chef()), ("roll",), 3, promise=LATER)

    seen = box(shop, made.box.number)
    assert not seen.box.announced
    assert (seen.box.received_at, seen.box.counted, len(seen.on_hand)) == (by(minutes=90).now, 2, 2)
    assert [promise.day for promise in seen.promises] == [date(2026, 11, 18), date(2026, 11, 20)]
    assert seen.box.waiting_for is WaitingFor.COUNT


def test_a_new_date_at_opening_says_to_whom_and_why(shop: Shop) -> None:
    """A second date without a reason is refused, and the box stays announced."""
    made = announced(shop)
    before = state(shop)

    with pytest.raises(TypedError, match="needs who was told and why"):
        receiving.open_box(shop, by(), made.box, 1, (chef(),), promise=replace(LATER, reason=""))

    assert state(shop) == before


def test_a_box_without_a_date_gets_its_first_at_opening(shop: Shop) -> None:
    """The first date needs no reason."""
    made = box(shop, announcing.announce_box(shop, by(), replace(OAKE, promise=None, expected_on=None)))

    receiving.open_box(shop, by(), made.box, 1, (chef(),), promise=replace(LATER, reason="", told_to=""))

    assert [promise.day for promise in box(shop, made.box.number).promises] == [date(2026, 11, 20)]


def test_undo_of_opening_makes_it_announced_again(shop: Shop) -> None:
    """Opened the wrong box: knives, date and arrival are all taken back."""
    made = announced(shop)
    before = state(shop)
    actor = by()
    receiving.open_box(shop, actor, made.box, 1, (chef(),), promise=LATER)

    undoing.undo(shop, by(), actor.group_id, "the wrong box")

    assert state(shop) == before


def test_a_box_called_off_leaves_the_board(shop: Shop) -> None:
    """It never came: the reason is kept, its number is free, and it can be expected after all."""
    made = announced(shop)
    with pytest.raises(ReasonNeededError, match="does not come"):
        announcing.call_off(shop, by(), made.box, " ")
    actor = by()

    announcing.call_off(shop, actor, made.box, "sold the knives")

    assert picture(shop).box(made.box.number) is None
    assert shop.database.one("SELECT text FROM personal WHERE side = 'reason'") == "sold the knives"
    undoing.undo(shop, by(), actor.group_id, "sends them after all")
    assert box(shop, made.box.number).box.announced


def test_paid_ahead_is_not_called_off(shop: Shop) -> None:
    """Money that was taken for it comes back first."""
    made = announced(shop)
    money.take_payment(shop, by(), made.box, cash(4100))

    with pytest.raises(RuleError, match=r"41\.00 was paid for box 100"):
        announcing.call_off(shop, by(), box(shop, 100).box, "sold")


def test_what_is_expected_may_change(shop: Shop) -> None:
    """The parcel is late, or the count was a guess; once it is here nothing is expected."""
    made = announced(shop)
    announcing.expect_box(shop, by(), made.box, None, date(2026, 11, 16))
    seen = box(shop, 100).box
    assert (seen.expected_knives, seen.expected_on) == (None, date(2026, 11, 16))
    announcing.arrived(shop, by(), seen)

    with pytest.raises(RuleError, match="in the door already"):
        announcing.expect_box(shop, by(), box(shop, 100).box, 5, None)


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        (replace(OAKE, expected_knives=0), "outside 1 to 999"),
        (replace(OAKE, expected_knives=1000), "outside 1 to 999"),
        (replace(OAKE, expected_on=date(2026, 11, 8)), "2026-11-08 is over"),
        (replace(OAKE, carrier_days=61), "outside 0 to 60"),
        (replace(OAKE, new_customer=None), "Whose is this box"),
        (replace(OAKE, number=10_000), "outside 1 to 9999"),
    ],
)
def test_what_cannot_be_is_refused(shop: Shop, wrong: NewAnnounced, says: str) -> None:
    """A count, a day or a number that cannot be has its sentence, and nothing is stored, the customer neither."""
    before = state(shop)

    with pytest.raises(TypedError, match=says):
        announcing.announce_box(shop, by(), wrong)

    assert state(shop) == before


def test_today_is_told_by_the_clock_of_the_shop(shop: Shop) -> None:
    """Late in the evening, when it is the next day elsewhere, a box may still be expected today."""
    evening = by(minutes=14 * 60)
    assert evening.now.date() > NOW.date()

    number = announcing.announce_box(shop, evening, replace(OAKE, expected_on=NOW.date()))

    assert box(shop, number).box.expected_on == NOW.date()


NOT_YET: dict[str, Callable[[Shop], object]] = {
    "add a knife": lambda shop: receiving.add_knife(shop, by(), box(shop, 100).box, chef()),
    "add a thing": lambda shop: noting.add_thing(shop, by(), box(shop, 100).box, "sheath"),
    "close out": lambda shop: closing.begin_close_out(shop, by(), box(shop, 100).box),
}


@pytest.mark.parametrize("act", sorted(NOT_YET))
def test_what_needs_the_box_waits_until_it_is_here(shop: Shop, act: str) -> None:
    """Nothing is put into a box that is not in the door, and it is not closed out."""
    announced(shop)
    before = state(shop)

    with pytest.raises(RuleError, match=r"not opened yet|not in the door yet"):
        NOT_YET[act](shop)

    assert state(shop) == before


def test_a_date_and_flags_may_be_set_before_it_comes(shop: Shop) -> None:
    """What is told and what binds its turn is known before it is here."""
    made = announced(shop)
    promising.promise(shop, by(), made.box, LATER)
    promising.set_flags(shop, by(), box(shop, 100).box, rush=True)

    assert (len(box(shop, 100).promises), box(shop, 100).box.rush) == (2, True)


def test_two_windows_at_one_announced_box(shop: Shop) -> None:
    """One lets it arrive, the other calls it off from an old view: the second is refused."""
    made = announced(shop)
    announcing.arrived(shop, by("K"), made.box)
    acts: tuple[Callable[[], object], ...] = (
        lambda: announcing.call_off(shop, by(), made.box, "sold"),
        lambda: announcing.arrived(shop, by(), made.box),
        lambda: receiving.open_box(shop, by(), made.box, 1, (chef(),)),
    )

    for act in acts:
        with pytest.raises(QueueboardError):
            act()
    with pytest.raises(ChangedError, match="changed meanwhile"):
        acts[0]()


def test_a_box_that_was_received_was_never_announced(shop: Shop) -> None:
    """Only an announced box is called off."""
    made = parcel(shop)

    with pytest.raises(RuleError, match="in the door already"):
        announcing.call_off(shop, by(), made.box, "sold")
