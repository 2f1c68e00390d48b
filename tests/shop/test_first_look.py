"""What the plan says of its boxes each morning, and how that is judged."""

from datetime import timedelta

from queueboard.shop.first_look import judged, say_first_look
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.saying import said_versus_seen
from queueboard.words import Column
from tests.shop.place import NOW, box, by, counter, parcel, picture

LATER = NOW + timedelta(days=9)


def test_a_morning_s_chances_are_those_of_the_picture(shop: Shop) -> None:
    """Of every promised box its cut-off and its chance are kept as the picture has them."""
    parcel(shop)
    counter(shop)
    seen = picture(shop)
    say_first_look(shop, by(), seen)

    said = {one.number: (one.due, one.late_permille) for one in said_versus_seen(shop, LATER)}
    assert said == {one.box.number: (one.ship_by, one.forecast.late_permille) for one in seen.boxes}


def test_only_the_first_look_of_a_day_is_kept(shop: Shop) -> None:
    """A box that comes in later that day is said nothing of until the next morning."""
    parcel(shop)
    say_first_look(shop, by(), picture(shop))
    counter(shop)
    say_first_look(shop, by(minutes=60), picture(shop, minutes=60))
    assert [one.number for one in said_versus_seen(shop, LATER)] == [100]

    say_first_look(shop, by(minutes=24 * 60), picture(shop, minutes=24 * 60))
    assert [one.number for one in said_versus_seen(shop, LATER)] == [100, 100, 101]


def test_a_box_past_its_cut_off_is_said_nothing_of(shop: Shop) -> None:
    """What is late already is no forecast, and an empty morning leaves the day open."""
    counter(shop)
    after = picture(shop, minutes=3 * 24 * 60)
    say_first_look(shop, by(minutes=3 * 24 * 60), after)

    assert said_versus_seen(shop, LATER) == ()


def test_what_was_said_and_told_is_judged(shop: Shop) -> None:
    """One box ready in time and one never: one of two dates kept, and two chances judged."""
    counter(shop)
    counter(shop)
    say_first_look(shop, by(), picture(shop))
    move_knives(shop, by(minutes=60), box(shop, 100).knives, Column.READY)

    seen = judged(shop, LATER)

    assert (seen.told, seen.kept, seen.replaced) == (2, 1, 0)
    assert (sum(tenth.said for tenth in seen.tenths), sum(tenth.late for tenth in seen.tenths)) == (2, 1)
