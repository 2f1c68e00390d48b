"""The price list beside the flat prices: what may be left out, what is taken, what is refused and where."""

from decimal import Decimal

import pytest

from queueboard.errors import SettingsError
from queueboard.priced_words import ChargeSort
from queueboard.seedfiles import seed_text
from queueboard.settings.price_list import LengthPrice, Prices, ShippingBand
from queueboard.settings.reading import read_settings
from queueboard.words import Edge, Rounding, Taxed

STARTER = seed_text("settings.toml")
BEFORE, _, REST = STARTER.partition("[prices]\n")
AFTER = REST[REST.index("# Setting up for a process") :]


def prices(text: str) -> Prices:
    """The price list of the starter shop with another [prices]."""
    return read_settings(f"{BEFORE}{text}\n{AFTER}").prices


def test_the_starter_list_has_what_a_counter_day_needs() -> None:
    """A millimetre of chip is 3.00, tax is off, and an account is on hold after 45 days."""
    starter = read_settings(STARTER).prices

    assert (starter.chip_mm_cents, starter.tax_ppm, starter.hold_after_days) == (300, {}, 45)
    assert starter.shipping[0] == ShippingBand(knives=3, cents=1200)
    assert starter.rounding is Rounding.HALF_UP


def test_all_of_it_may_be_left_out() -> None:
    """Without the table, and with an empty one, nothing is asked beside the flat prices."""
    assert prices("") == Prices()
    assert prices("[prices]") == Prices()


def test_every_line_is_taken() -> None:
    """Each price, percentage, band and rate stands in the list as it was typed."""
    text = """[prices]
rounding = "half even"
length_step = 0.5
by_length = { bread = { base = 3, each = 1.25 } }
edges = { single_left = 200 }
chip_mm = 4
thinning = 25.50
rush_percent = 30
minimum = 5
mail_minimum = 15
free_shipping_from = 100
shipping = [{ knives = 3, price = 12 }, { knives = 9, price = 17.5 }]
tax = { knives = 7.25, shipping = 0.0001 }
hold_after_days = 30"""

    assert prices(text) == Prices(
        rounding=Rounding.HALF_EVEN,
        length_step=Decimal("0.5"),
        by_length={"bread": LengthPrice(base_cents=300, each_cents=125)},
        edge_percent={Edge.SINGLE_LEFT: 200},
        chip_mm_cents=400,
        add_on_cents={ChargeSort.THINNING: 2550},
        rush_percent=30,
        minimum_cents=500,
        mail_minimum_cents=1500,
        free_shipping_cents=10_000,
        shipping=(ShippingBand(knives=3, cents=1200), ShippingBand(knives=9, cents=1750)),
        tax_ppm={Taxed.KNIVES: 72_500, Taxed.SHIPPING: 1},
        hold_after_days=30,
    )


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("chip_mm = -3", "chip_mm is an amount from 0 to 99999.99 like 9.50, not -3"),
        ("chip_mm = 1e9", "chip_mm is an amount from 0 to 99999.99 like 9.50"),
        ("chip_mm = 2.505", "has parts of a cent"),
        ('chip_mm = "three"', "chip_mm is an amount"),
        ("chipmm = 3", "do you mean chip_mm?"),
        ('rounding = "half-up"', "do you mean half up?"),
        ("length_step = 0", "length_step is a number from 0.1 to 10"),
        ("rush_percent = 900", "rush_percent is a whole number of percent from 0 to 200"),
        ("by_length = { breadd = { base = 3, each = 1 } }", "do you mean bread?"),
        ("by_length = { bread = { base = 3 } }", "needs “each”"),
        ("edges = { serrated = 5 }", "serrated is a whole number of percent from 50 to 500"),
        ("shipping = [{ knives = 9, price = 1 }, { knives = 3, price = 2 }]", "write the fewest first"),
        ("tax = { knives = 101 }", "knives is a percentage from 0 to 100"),
        ("tax = { knives = 7.12345 }", "at most four digits behind the point"),
        ("tax = { knives = nan }", "knives is a percentage"),
        ("tax = { wages = 7 }", "has no “wages”"),
    ],
)
def test_a_mistake_names_its_line(line: str, says: str) -> None:
    """What cannot be a price list is refused with a sentence and the line where it stands."""
    with pytest.raises(SettingsError, match=r"^line \d+: ") as refused:
        prices(f"[prices]\n{line}")

    assert says in str(refused.value)
    assert f"line {BEFORE.count(chr(10)) + 2}:" in str(refused.value)
