"""Story 9, its last sentence: the month counts one declined, and says nothing of safe or unsafe."""

from datetime import timedelta

from queueboard.figures.month import month_of
from queueboard.papers.month import month_sheet
from queueboard.shop.month_seen import figures_of
from queueboard.shop.noting import accept_knife, decline_knife
from queueboard.shop.opening import Shop
from queueboard.words import DeclineReason
from tests.shop.place import NOW, box, by, parcel, picture


def test_the_month_counts_one_declined(shop: Shop) -> None:
    """A cracked slicer counts once; one that was taken on after all does not; the sheet never speaks of safety."""
    made = parcel(shop)
    decline_knife(shop, by(), made.knives[0], DeclineReason.CRACKED, "9 mm from the heel")
    decline_knife(shop, by(minutes=1), made.knives[1], DeclineReason.PRICE)
    accept_knife(shop, by(minutes=2), box(shop, made.box.number).knives[1])

    figures = figures_of(shop, NOW + timedelta(hours=1), month_of(NOW.date()))
    sheet = month_sheet(figures, picture(shop))

    assert figures.declined == 1
    assert figures.knives == 0
    assert "declined                  1 knife" in sheet
    assert "safe" not in sheet
