"""A box of which a knife is looked for is not whole: what that does to the date told for it."""

from datetime import timedelta

import pytest

from queueboard.shop import closing, losing, moving, saying, undoing
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.values.actor import Actor
from queueboard.values.measured import ToldSeen
from queueboard.words import Column, Lateness, Settling
from tests.shop.place import NOW, box, by, counter, parcel, picture
from tests.shop.undo_closing import close

DAY = 24 * 60


def goes_without_the_second(shop: Shop, made: BoxPicture) -> None:
    """All of a box is ready in time, and at the close-out its second knife cannot be found."""
    number = made.box.number

    def at() -> Actor:
        return by(minutes=60)

    moving.move_knives(shop, at(), made.knives, Column.READY)
    closing.begin_close_out(shop, at(), box(shop, number).box)
    closing.count(shop, at(), close(shop, number), 1)
    closing.tick(shop, at(), close(shop, number), made.knives[0].id)
    closing.ticks_done(shop, at(), close(shop, number))
    closing.why_missing(shop, at(), close(shop, number), "could not wait")
    closing.confirm_names(shop, at(), close(shop, number))
    closing.confirm_label(shop, at(), close(shop, number), "self")
    closing.settle(shop, at(), close(shop, number), Settling.ON_ACCOUNT)
    closing.send_off(shop, at(), close(shop, number))


def told(shop: Shop) -> ToldSeen:
    """The one date told, seen ten days later."""
    (one,) = saying.told_versus_seen(shop, NOW + timedelta(days=10))
    return one


def made(shop: Shop, *, mail: bool) -> BoxPicture:
    """A box of two knives, to be picked up on Tuesday or to leave by then."""
    return parcel(shop, knives=2) if mail else counter(shop)


@pytest.mark.parametrize("mail", [False, True], ids=["pick-up", "parcel"])
def test_a_date_is_not_kept_while_a_knife_is_looked_for(shop: Shop, *, mail: bool) -> None:
    """One of two went in time and the other cannot be found: the customer does not have their knives."""
    goes_without_the_second(shop, made(shop, mail=mail))

    assert (told(shop).kept, told(shop).done_at) == (False, None)


@pytest.mark.parametrize("settled", [False, True], ids=["found", "settled"])
@pytest.mark.parametrize(("minutes", "kept"), [(120, True), (3 * DAY, False)])
def test_a_box_is_whole_again_when_its_lost_knife_is_found_or_settled(
    shop: Shop, minutes: int, *, kept: bool, settled: bool
) -> None:
    """Within an hour the date still holds; three days later it does not, though the knife was ready long before."""
    number = made(shop, mail=False).box.number
    goes_without_the_second(shop, box(shop, number))
    lost = box(shop, number).knives[1]
    if settled:
        losing.settle_lost(shop, by(minutes=minutes), lost, "paid for")
    else:
        losing.found(shop, by(minutes=minutes), lost)

    assert (told(shop).kept, told(shop).done_at) == (kept, by(minutes=minutes).now)


def test_a_parcel_whose_lost_knife_is_settled_later_was_not_in_time(shop: Shop) -> None:
    """The half that went in time does not make the whole box punctual once nobody looks any more."""
    goes_without_the_second(shop, made(shop, mail=True))
    losing.settle_lost(shop, by(minutes=3 * DAY), box(shop, 100).knives[1], "paid for")

    assert (told(shop).kept, told(shop).done_at) == (False, by(minutes=3 * DAY).now)


def test_a_close_out_that_was_taken_back_lost_nothing(shop: Shop) -> None:
    """Typed wrong and undone days later: the knives were ready when they were."""
    goes_without_the_second(shop, made(shop, mail=False))
    undoing.undo(shop, by(minutes=3 * DAY), undoing.steps(shop, "J")[0].group_id, "miscounted")

    assert (told(shop).kept, told(shop).done_at) == (True, by(minutes=60).now)


def test_a_box_that_is_done_but_for_a_lost_knife_has_no_honest_day(shop: Shop) -> None:
    """Its date is over; a new day would rest on finding it. Found, it is simply ready."""
    goes_without_the_second(shop, made(shop, mail=False))
    over = 2 * DAY
    late = picture(shop, minutes=over).boxes[0]
    assert (late.forecast.lateness, late.only_lost_left, late.honest_day) == (Lateness.LATE, True, None)

    losing.found(shop, by(minutes=over), late.knives[1])

    found = picture(shop, minutes=over).boxes[0]
    assert (found.forecast.lateness, found.only_lost_left) == (Lateness.ON_TIME, False)
