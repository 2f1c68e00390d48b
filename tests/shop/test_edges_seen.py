"""Before and after of the same knives, and the chart of a process."""

import pytest

from queueboard.edges.drift import Signal
from queueboard.phrases.edges import since_words
from queueboard.shop.comparing import worked_seen
from queueboard.shop.edges_seen import charts_seen
from queueboard.shop.fitting import fit_belt
from queueboard.shop.opening import Shop
from queueboard.shop.stable import set_stable
from tests.shop.place import by, parcel
from tests.shop.readings import read


@pytest.mark.parametrize(("knives", "said"), [(5, False), (6, True)])
def test_no_change_is_claimed_from_fewer_than_six_pairs(shop: Shop, knives: int, said: bool) -> None:
    """Five pairs are counted and nothing more; six have a fall with its intervals."""
    for place, knife in enumerate(parcel(shop, knives=knives).knives):
        read(shop, by(minutes=place), knife, {"heel": 180, "tip": 200}, {"heel": 900 + place, "tip": 1000})

    seen = worked_seen(shop).changes
    assert seen.whole.pairs == knives
    assert [row.name for row in seen.spots] == ["heel", "tip"]
    assert (seen.whole.change is not None) is said
    if seen.whole.change is not None:
        assert seen.whole.change.mean_gf == pytest.approx(760 + 2.5 / 2)
        assert seen.whole.change.interval.holds(seen.whole.change.mean_gf)


def test_only_the_same_spot_is_a_pair(shop: Shop) -> None:
    """A spot read only before or only after says nothing of change."""
    for place, knife in enumerate(parcel(shop, knives=6).knives):
        read(shop, by(minutes=place), knife, {"heel": 180, "tip": 200}, {"heel": 900})

    assert [(row.name, row.pairs) for row in worked_seen(shop).changes.spots] == [("heel", 6)]


def test_a_worn_belt_shows_against_the_shop_s_own_good_work(shop: Shop) -> None:
    """Twelve knives of a stable period draw the limits; a far reading and eight on one side are marked."""
    fit_belt(shop, by(), "plain", "16 um")
    forces = [180, 184, 178, 182, 186, 180, 176, 183, 181, 179, 185, 180, 240, *[190] * 8]
    for place, knife in enumerate(parcel(shop, knives=len(forces)).knives):
        read(shop, by(minutes=1 + place), knife, {"heel": forces[place]})
    (before,) = charts_seen(shop, by().now)
    assert before.limits is None
    assert before.marks == ()

    set_stable(shop, by(minutes=60), "plain", by(minutes=1).now, by(minutes=12).now)
    (seen,) = charts_seen(shop, by().now)
    assert seen.limits is not None
    assert (seen.belt, len(seen.readings_gf), seen.stable_knives) == ("16 um", len(forces), 12)
    assert {mark.signal for mark in seen.marks} == {Signal.BEYOND, Signal.ROW}


def test_a_fresh_belt_begins_a_fresh_chart(shop: Shop) -> None:
    """Readings from before the finest belt was fitted are not on it, but may be the stable period."""
    knives = parcel(shop, knives=14).knives
    for place, knife in enumerate(knives[:12]):
        read(shop, by(minutes=place), knife, {"heel": 180 + place % 3})
    fit_belt(shop, by(minutes=20), "plain", "16 um")
    for place, knife in enumerate(knives[12:]):
        read(shop, by(minutes=30 + place), knife, {"heel": 181})
    set_stable(shop, by(minutes=60), "plain", by().now, by(minutes=11).now)

    (seen,) = charts_seen(shop, by().now)
    assert len(seen.readings_gf) == 2
    assert seen.limits is not None


def test_nine_knives_draw_no_limits(shop: Shop) -> None:
    """A stable period of fewer than ten knives is counted, and no limit is claimed."""
    for place, knife in enumerate(parcel(shop, knives=9).knives):
        read(shop, by(minutes=place), knife, {"heel": 180 + place})
    set_stable(shop, by(minutes=60), "plain", by().now, by(minutes=50).now)

    (seen,) = charts_seen(shop, by().now)
    assert (seen.stable_knives, seen.limits) == (9, None)


def test_readings_of_years_ago_are_no_chart_and_are_told_to_be_left_out(shop: Shop) -> None:
    """Where no belt says since when, a year is shown; after it the process has no chart."""
    read(shop, by(), parcel(shop).knives[0], {"heel": 180})

    (seen,) = charts_seen(shop, by(minutes=364 * 24 * 60).now)
    assert (
        since_words(seen, by().now)
        == f" in the last year; NO {seen.finest} BELT IS UP: readings of every belt together"
    )
    assert charts_seen(shop, by(minutes=366 * 24 * 60).now) == ()
