"""Story 4: nine of twelve are ready and taken, three wait for a belt. Names and numbers are invented."""

import pytest

from queueboard.errors import RuleError
from queueboard.papers.slips import gone_summary
from queueboard.shop import closing, moving, waiting
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import receive_box
from queueboard.values.box import CloseOut
from queueboard.values.gone import GoneBox
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewLabel, NewPayment
from queueboard.words import (
    CameBy,
    CloseStep,
    Column,
    Edge,
    GoesBy,
    LabelOwner,
    LabelState,
    PayWay,
    Settling,
    WaitingFor,
)
from tests.board.closing import host, type_in
from tests.board.dump import dump
from tests.board.host import SMALL
from tests.shop.place import box, by, cash, picture

UTILITY = NewKnife(kind="utility", edge=Edge.PLAIN)
BREAD = NewKnife(kind="bread", edge=Edge.SERRATED)
PARING = NewKnife(kind="paring", edge=Edge.PLAIN)
KNIVES = (*(UTILITY,) * 9, BREAD, BREAD, PARING)
"""Nine at 8.00 are 72.00; two at 12.00 and one at 5.00 are 29.00."""
TAGS = [f"322-{number}" for number in range(1, 10)]


def received(shop: Shop, goes_by: GoesBy = GoesBy.PICK_UP) -> None:
    """Box 322, of which nine are ready and three wait for a belt."""
    label = NewLabel(owner=LabelOwner.CUSTOMER, state=LabelState.HERE, name_on="Bren Oake")
    new = NewBox(
        new_customer=NewCustomer(name="Bren Oake"),
        came_by=CameBy.COUNTER,
        goes_by=goes_by,
        counted=12,
        knives=KNIVES,
        number=322,
        label=label if goes_by is GoesBy.PARCEL else None,
    )
    receive_box(shop, by(), new)
    moving.move_knives(shop, by(minutes=1), box(shop, 322).knives[:9], Column.READY)
    waiting.knives_wait(shop, by(minutes=2), box(shop, 322).knives[9:], WaitingFor.BELTS)


def close(shop: Shop) -> CloseOut:
    """The close-out under way."""
    found = box(shop, 322).close_out
    assert found is not None
    return found


def taken(shop: Shop, counted: int, payment: NewPayment, who: str) -> GoneBox:
    """What is ready goes, paid so far as it goes."""
    at = by(minutes=160)
    closing.begin_close_out(shop, by(minutes=155), box(shop, 322).box)
    closing.count(shop, by(minutes=156), close(shop), counted)
    closing.confirm_names(shop, by(minutes=157), close(shop))
    closing.confirm_label(shop, by(minutes=158), close(shop), who)
    closing.settle(shop, by(minutes=159), close(shop), Settling.PAID, "", payment)
    return closing.send_off(shop, at, close(shop))


def test_nine_go_and_72_of_101_are_paid(shop: Shop) -> None:
    """Nine are gone to herself at 11:40, three remain, 72.00 of 101.00 are paid, and the receipt lists which."""
    received(shop)
    assert box(shop, 322).price_cents == 10100

    gone = taken(shop, 9, cash(7200), "herself")

    receipt = gone_summary(gone, picture(shop).settings)
    assert [knife.tag for knife in gone.knives] == TAGS
    assert all(f"[ ] {tag} utility" in receipt for tag in TAGS)
    assert all(f"{tag} {kind}" in receipt for tag, kind in (("322-10", "bread"), ("322-12", "paring")))
    assert "101.00 USD" in receipt
    assert "72.00 USD paid" in receipt
    assert "29.00 USD to pay" in receipt
    assert "11:40, J, handed to herself" in receipt
    stays = box(shop, 322)
    assert (len(stays.on_hand), stays.paid_cents, stays.owed_cents) == (3, 7200, 2900)


def test_the_rest_is_counted_by_itself_and_the_box_closes_last(shop: Shop) -> None:
    """Nothing more can leave while three wait; then three are expected, and with them the box closes."""
    received(shop)
    taken(shop, 9, cash(7200), "herself")
    with pytest.raises(RuleError, match="Nothing of box 322 is ready"):
        closing.begin_close_out(shop, by(minutes=200), box(shop, 322).box)

    waiting.knives_wait(shop, by(minutes=6999), box(shop, 322).knives[9:], None)
    moving.move_knives(shop, by(minutes=7000), box(shop, 322).knives[9:], Column.READY)
    closing.begin_close_out(shop, by(minutes=7001), box(shop, 322).box)
    closing.count(shop, by(minutes=7002), close(shop), 12)
    check = box(shop, 322).close_check
    assert check is not None
    assert check.step is CloseStep.TICK  # twelve are not three
    closing.leave_close_out(shop, by(minutes=7003), close(shop))

    gone = taken(shop, 3, cash(2900, paid_before=7200), "herself")

    assert (gone.closed, gone.totals.owed_cents) == (True, 0)
    assert picture(shop).box(322) is None


def test_by_post_the_rest_gets_a_label_of_its_own(shop: Shop) -> None:
    """The label of the first parcel is used; for the second one stands to be bought."""
    received(shop, GoesBy.PARCEL)

    taken(shop, 9, NewPayment(cents=7200, way=PayWay.TRANSFER, paid_before_cents=0), "")

    label = box(shop, 322).label
    assert label is not None
    assert (label.owner, label.state) == (LabelOwner.SHOP, LabelState.TO_BUY)


async def test_the_close_out_says_what_the_part_costs(shop: Shop) -> None:
    """At the counter the question names 101.00 to pay and 72.00 for what goes today; 1*72.00 and 6 settle it."""
    received(shop)
    app = host(shop, 322)
    async with app.run_test(size=SMALL) as pilot:
        await type_in(pilot, "9", "+", "")
        said = dump(app)
        assert "101.00 USD to pay" in said
        assert "What goes today costs 72.00 USD." in said
        await type_in(pilot, "1*72", "6", "+")

    assert box(shop, 322).owed_cents == 2900
