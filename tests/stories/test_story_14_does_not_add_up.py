"""Story 14: 418, twelve in, eleven packed, a sheath missing; the twelfth lies in 421's tray. All of it is invented."""

from datetime import UTC, datetime

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.errors import ReasonNeededError, RuleError
from queueboard.phrases.counts import box_sum_words
from queueboard.shop import closing, moving, rehoming, testing
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.undoing import box_history
from queueboard.shop.whereabouts import beside
from queueboard.values.actor import Actor
from queueboard.values.box import CloseCheck, CloseOut
from queueboard.values.new import NewBox, NewKnife, NewLabel, NewPayment
from queueboard.words import (
    CameBy,
    CloseStep,
    Column,
    Edge,
    GoesBy,
    LabelOwner,
    LabelState,
    Packing,
    PayWay,
    Settling,
    ThingState,
)
from tests.board.closing import type_in
from tests.board.dump import dump
from tests.board.host import LARGE, Host


def at(hour: int, minute: int, by: str = "MB") -> Actor:
    """Somebody at an hour of Monday 9 November by the shop's clock, which is five hours behind UTC."""
    return Actor(initials=by, now=datetime(2026, 11, 9, hour + 5, minute, tzinfo=UTC))


def seen(shop: Shop, number: int) -> BoxPicture:
    """The box as it stands at 17:00."""
    found = look(shop, at(17, 0).now).box(number)
    assert found is not None
    return found


def close(shop: Shop, number: int = 418) -> CloseOut:
    """Its close-out under way."""
    out = seen(shop, number).close_out
    assert out is not None
    return out


def check(shop: Shop, number: int = 418) -> CloseCheck:
    """Where its close-out stands."""
    state = seen(shop, number).close_check
    assert state is not None
    return state


def receive(shop: Shop, number: int, name: str, knives: int, kind: str = "chef", things: tuple[str, ...] = ()) -> None:
    """A mailed box with its label here."""
    customer = add_customer(shop, at(8, 0), name=name)
    new = NewBox(
        customer_id=customer,
        number=number,
        came_by=CameBy.MAIL,
        goes_by=GoesBy.PARCEL,
        counted=knives,
        knives=tuple(NewKnife(kind=kind, edge=Edge.PLAIN, length_mm=200, mark=f"nick {n}") for n in range(knives)),
        things=things,
        label=NewLabel(owner=LabelOwner.CUSTOMER, state=LabelState.HERE, name_on=name),
    )
    receive_box(shop, at(8, 0), new)


@pytest.fixture
def shop_at_close(shop: Shop) -> Shop:
    """418 is ready and counted at eleven, with 418-7 not in hand; 421 was on the bench beside it, 430 was not."""
    receive(shop, 418, "R. Tallis", 12, things=("sheath",))
    receive(shop, 421, "Bo Oake", 3)
    receive(shop, 425, "Ms Verrin", 2, kind="paring")
    receive(shop, 430, "Ines Morel", 2)
    for number in (418, 421, 425):
        moving.move_knives(shop, at(14, 0), seen(shop, number).knives, Column.ON_BENCH)
    moving.move_knives(shop, at(15, 0), seen(shop, 418).knives, Column.TESTING)
    others = [knife for knife in seen(shop, 418).knives if knife.number != 7]
    assert seen(shop, 418).knives[6].gauge is None
    moving.move_knives(shop, at(15, 5), [knife for knife in others if knife.gauge is None], Column.READY)
    for knife in (knife for knife in others if knife.gauge is not None):
        testing.let_go_by_eye(shop, at(15, 6), knife)
    moving.move_knives(shop, at(15, 10, "K"), seen(shop, 418).knives[6:7], Column.READY)
    moving.move_knives(shop, at(15, 30), seen(shop, 421).knives, Column.READY)
    closing.begin_close_out(shop, at(16, 0), seen(shop, 418).box)
    closing.count(shop, at(16, 1), close(shop), 11)
    for knife in others:
        closing.tick(shop, at(16, 2), close(shop), knife.id)
    closing.ticks_done(shop, at(16, 3), close(shop))
    return shop


def test_it_stops_before_the_label_and_names_the_missing_knife(shop_at_close: Shop) -> None:
    """Eleven of twelve: the label step is not reached, and nothing goes."""
    shop = shop_at_close

    assert check(shop).step is CloseStep.MISSING
    assert [knife.tag for knife in seen(shop, 418).knives if knife.id in check(shop).missing] == ["418-7"]
    with pytest.raises(RuleError):
        closing.send_off(shop, at(16, 4), close(shop))
    with pytest.raises(ReasonNeededError):
        closing.why_missing(shop, at(16, 4), close(shop), "  ")


def test_boxes_with_the_same_kind_on_the_bench_then_are_listed(shop_at_close: Shop) -> None:
    """At 15:10 three chef's knives of 421 were on the bench; 430's were not begun, 425 has another kind."""
    knife = seen(shop_at_close, 418).knives[6]

    assert [other.tag for other in beside(shop_at_close, knife)] == ["421-1", "421-2", "421-3"]


def test_found_in_the_other_tray_it_is_back_and_that_box_is_counted_anew(shop_at_close: Shop) -> None:
    """421 was counted at four in its own close-out; with the reason 418-7 is ticked, and 421 counts again."""
    shop = shop_at_close
    closing.begin_close_out(shop, at(16, 5), seen(shop, 421).box)
    closing.count(shop, at(16, 6), close(shop, 421), 4)
    lost, tray = seen(shop, 418).knives[6], seen(shop, 421).box
    with pytest.raises(ReasonNeededError):
        rehoming.found_among(shop, at(16, 10), lost, tray, "")
    rehoming.found_among(shop, at(16, 10), lost, tray, "same handle, put down there at the test")

    assert check(shop).missing == ()
    assert len(check(shop).going) == 12
    assert close(shop, 421).counted is None
    assert [box_sum_words(seen(shop, number).sum) for number in (418, 421)] == [
        "12 counted in = 12 on hand",
        "3 counted in = 3 on hand",
    ]
    assert [box_history(shop, seen(shop, number).box.id)[0].operation for number in (418, 421)] == ["found_among"] * 2


def test_the_sheath_is_looked_for_and_the_box_goes_only_with_a_typed_reason(shop_at_close: Shop) -> None:
    """Without a reason the step stays; with one the box goes, and the sheath is on the board as looked for."""
    shop = shop_at_close
    rehoming.found_among(shop, at(16, 10), seen(shop, 418).knives[6], seen(shop, 421).box, "in that tray")
    closing.things_done(shop, at(16, 11), close(shop))
    assert check(shop).step is CloseStep.COMES_WITH
    assert "Say why the box goes without" in check(shop).trouble
    with pytest.raises(RuleError, match="Not in hand: sheath"):
        closing.send_off(shop, at(16, 12), close(shop))

    closing.why_missing(shop, at(16, 12), close(shop), "customer told by phone 16:12, sheath follows")
    closing.confirm_names(shop, at(16, 13), close(shop))
    closing.confirm_label(shop, at(16, 13), close(shop))
    owed = seen(shop, 418).owed_cents
    paid = NewPayment(cents=owed, way=PayWay.CARD, paid_before_cents=0)
    closing.settle(shop, at(16, 14), close(shop), Settling.PAID, "", paid)
    gone = closing.send_off(shop, at(16, 15), close(shop))

    assert len(gone.knives) == 12
    assert [thing.state for thing in seen(shop, 418).things] == [ThingState.LOOKING]
    assert gone.missing_reason == "customer told by phone 16:12, sheath follows"
    assert box_sum_words(seen(shop, 418).sum) == "12 counted in = 12 gone + 0 on hand"


def test_a_packed_box_is_opened_again_when_it_held_a_strangers_knife(shop_at_close: Shop) -> None:
    """421 stood wrapped with the knife in it; that is taken back with the finding."""
    shop = shop_at_close
    moving.pack_box(shop, at(16, 0), seen(shop, 421).box, Packing.BOXED)
    rehoming.found_among(shop, at(16, 10), seen(shop, 418).knives[6], seen(shop, 421).box, "in that box")

    assert seen(shop, 421).box.packing is None


async def test_the_same_through_the_close_out_screen(shop_at_close: Shop) -> None:
    """It names 418-7, last at the test, 15:10, K., and 421; the tray with a reason brings it back; then the sheath."""
    shop = shop_at_close
    desk = Desk(shop, "MB", lambda: at(16, 10).now)
    app = Host(desk, lambda: CloseOutScreen(desk, seen(shop, 418).box.id))
    async with app.run_test(size=LARGE) as pilot:
        shown = " ".join(dump(app).split())
        assert "418-7" in shown
        assert "last at the test, today 15:10, K; on the bench then: 421-1, 421-2, 421-3" in shown
        await type_in(pilot, "7 in 421")
        assert "Type behind it why it lay in the tray of 421." in " ".join(dump(app).split())
        await type_in(pilot, " same handle")
        assert (check(shop).step, check(shop).missing) == (CloseStep.COMES_WITH, ())
        await type_in(pilot, "")
        assert "Say why the box goes without" in " ".join(dump(app).split())
        await type_in(pilot, "customer told 16:12")
        assert check(shop).step is CloseStep.NAMES
