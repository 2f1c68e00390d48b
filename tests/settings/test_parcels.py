"""What the shop writes of parcels, their weights and their carriers."""

import re
from datetime import date, time

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.parcel_shapes import LastShip, SideRounding, WeightRounding, Weights
from queueboard.settings.reading import read_settings

STARTER = seed_text("settings.toml")
END = "# Minutes off the bench."
BARE = """[parcels]
carrier_days = 3
collection = ["mon", "tue"]
cut_off = "15:45"

"""
PARCELS = STARTER[STARTER.index("[parcels]\n") : STARTER.index(END)]


def with_parcels(text: str) -> str:
    """The starter settings with this in place of all its tables of parcels."""
    return STARTER.replace(PARCELS, text)


def test_a_shop_that_says_nothing_has_the_usual() -> None:
    """Only days, collection and cut-off must be written; without the rest nothing is checked, nothing has a volume."""
    parcels = read_settings(with_parcels(BARE)).parcels

    assert parcels.weights == Weights()
    assert (parcels.volume, parcels.boxes, parcels.carriers, parcels.last_checked) == (None, (), (), None)


def test_the_starter_has_boxes_weights_and_a_divisor() -> None:
    """What stands in the starter is read: three boxes, the smallest first, and a weight for each of its kinds."""
    settings = read_settings(STARTER)
    parcels = settings.parcels

    assert [box.knives for box in parcels.boxes] == [3, 10, 20]
    assert {kind.name for kind in settings.kinds} == set(parcels.weights.kinds)
    assert parcels.volume is not None
    assert (parcels.volume.sides, parcels.volume.weight) == (SideRounding.HALF_UP, WeightRounding.UP_TO_WHOLE)
    assert parcels.last_checked is None


def test_carriers_and_last_days_are_dated_rows() -> None:
    """A carrier is found whatever its case; its rows come by the day of leaving; what it left out is None."""
    text = BARE + (
        '[[carriers]]\nname = "Gull Post"\ncut_off = "14:00"\nlast_checked = 2026-11-02\n'
        "[[carriers.last_ship]]\nship_on = 2026-12-19\narrives_by = 2026-12-24\n"
        "[[carriers.last_ship]]\nship_on = 2026-12-18\narrives_by = 2026-12-23\n\n"
    )
    carrier = read_settings(with_parcels(text)).parcels.carrier(" gull post ")

    assert carrier is not None
    assert (carrier.cut_off, carrier.carrier_days, carrier.last_checked) == (time(14), None, date(2026, 11, 2))
    assert carrier.last_ship[0] == LastShip(ship_on=date(2026, 12, 18), arrives_by=date(2026, 12, 23))


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        ("last_checked = 2026\n", "last_checked is a date written without quotes like 2026-11-27, not 2026"),
        ('last_checked = "2026-11-02"\n', "last_checked is a date written without quotes"),
        ("last_check = 2026-11-02\n", "do you mean last_checked?"),
        ('[parcels.volume]\ndivisor = 0\nunit = "in"\n', "divisor is a whole number of cubic inches a pound"),
        ('[parcels.volume]\ndivisor = 139\nunit = "ft"\n', 'unit is "cm" or "in", not “ft”'),
        ('[parcels.volume]\ndivisor = 139\nunit = "in"\nsides = "half"\n', "do you mean half up?"),
        ("[[parcels.boxes]]\nknives = 3\nsize_mm = [450, 100]\nweight_g = 200\n", "size_mm is three whole numbers"),
        ("[[parcels.boxes]]\nknives = 3\nsize_mm = [450, 100, 0]\nweight_g = 1\n", "from 10 to 2000"),
        ("[parcels.weights.kinds]\ncheff = 200\n", "there is no kind “cheff”; do you mean chef?"),
        ("[parcels.weights.kinds]\nchef = 0\n", "chef is a whole number of grams from 1 to 20000, not 0"),
        ("[parcels.weights]\nguard_and_wrap_g = -1\n", "from 0 to 500, not -1"),
        ("[[parcels.last_ship]]\nship_on = 2026-12-24\narrives_by = 2026-12-18\n", "before it leaves on 2026-12-24"),
        ('[[carriers]]\nname = "Gull"\n[[carriers]]\nname = "GULL"\n', "stands in two [[carriers]]"),
        ('[[carriers]]\nname = "Gull"\ncollection = ["sun"]\n', "collects on no weekday"),
        ('[[carriers]]\nname = "Gull"\ndays = 2\n', "[[carriers]] has no “days”"),
        ("[[parcels.last_ship]]\nship_on = 2026-12-18\narrives_by = 2026-12-24\n" * 51, "write at most 50"),
    ],
)
def test_a_mistake_is_named_by_its_line(more: str, sentence: str) -> None:
    """Each slip of the pen is one sentence that begins with its line."""
    with pytest.raises(SettingsError, match=re.escape(sentence)) as told:
        read_settings(with_parcels(BARE.rstrip() + "\n" + more + "\n"))

    assert re.match(r"line \d+: ", str(told.value))
