"""Old boxes keep what was quoted, whatever the shop's numbers say later; minutes move the plan and nothing told."""

import pytest

from queueboard.seedfiles import seed_text
from queueboard.settings.editing import put
from queueboard.settings.locate import Path
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.owing import owing
from queueboard.words import CameBy, Settling
from tests.shop.place import NOW, by, chef, counter, parcel, picture, planned_box
from tests.shop.test_charging import CHIPPED, PRICES, received, with_prices
from tests.shop.undo_charging import gone_as

STARTER = seed_text("settings.toml")
Change = tuple[Path, str]

PRICE: tuple[Change, ...] = ((("kinds", 0, "price"), "99.00"), (("kinds", 7, "price"), "1.00"))
TAX: tuple[Change, ...] = (
    (("prices", "tax", "knives"), "19"), (("prices", "tax", "add_ons"), "19"), (("prices", "tax", "shipping"), "19"),
)  # fmt: skip
ROUNDING: tuple[Change, ...] = ((("prices", "rounding"), '"5 cents"'),)
SHIPPING: tuple[Change, ...] = ((("prices", "shipping", 0, "price"), "40.00"), (("prices", "free_shipping_from"), "1"))
ADD_ONS: tuple[Change, ...] = (
    (("prices", "chip_mm"), "50.00"), (("prices", "rush_percent"), "200"), (("prices", "mail_minimum"), "500.00"),
    (("prices", "edges", "serrated"), "500"), (("prices", "by_length", "chef", "base"), "70.00"),
    (("prices", "by_length", "chef", "each"), "7.00"),
)  # fmt: skip


def quoted_shop(shop: Shop) -> str:
    """Open boxes with everything on their bill, by counter and mail, and one gone unpaid; the settings they rest on."""
    with_prices(shop, PRICES)
    received(shop, CHIPPED, chef(length_mm=180), rush=True)
    received(shop, chef(), came_by=CameBy.COUNTER)
    counter(shop)
    gone_as(shop, Settling.ON_ACCOUNT)
    with shop.reading() as database:
        return str(database.rows("SELECT text FROM settings ORDER BY id DESC LIMIT 1")[0][0])


@pytest.mark.parametrize(
    "changes", [PRICE, TAX, ROUNDING, SHIPPING, ADD_ONS], ids=["price", "tax", "rounding", "shipping", "add-ons"]
)
def test_what_was_quoted_stays(shop: Shop, changes: tuple[Change, ...]) -> None:
    """Open and gone boxes come to the same cent; a box taken in after the change comes to something else."""
    text = quoted_shop(shop)
    before = [one.totals for one in picture(shop).boxes]
    owed = owing(shop, NOW)
    alike = received(shop, CHIPPED, rush=True)

    for path, literal in changes:
        text = put(text, path, literal)
    take_settings(shop, by(), text)

    now = [one.totals for one in picture(shop).boxes]
    assert now[: len(before)] == before
    assert now[len(before)] == alike.totals
    assert owing(shop, NOW) == owed
    other = received(shop, CHIPPED, rush=True)
    assert (other.totals, other.box.rounding) != (alike.totals, alike.box.rounding)


def test_minutes_move_the_plan_and_nothing_that_was_told(shop: Shop) -> None:
    """Ten times the minutes: the boxes come to the same, their promises stand, and the plan says they will be late."""
    for place in range(4):
        parcel(shop, name=f"Oake {place}", knives=9)
    before = picture(shop)
    assert before.day_line.will_be_late + before.day_line.late == 0

    take_settings(shop, by(), put(STARTER, ("kinds", 0, "minutes", "dull"), "90"))

    after = picture(shop)
    assert [one.totals for one in after.boxes] == [one.totals for one in before.boxes]
    assert [one.promises for one in after.boxes] == [one.promises for one in before.boxes]
    assert after.day_line.will_be_late > 0


def test_a_kind_taken_out_leaves_its_knives_here(shop: Shop) -> None:
    """Knives of a kind that is gone keep their name and price and stay in the plan."""
    made = counter(shop)
    text = STARTER.replace('name = "chef"', 'name = "cook"').replace("\nchef = ", "\ncook = ")

    take_settings(shop, by(), text)

    now = planned_box(shop, made.box.number)
    assert now.totals == made.totals
    assert [knife.kind for knife in now.knives] == ["chef", "chef"]
    assert now.forecast.finish is not None
