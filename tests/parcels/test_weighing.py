"""What a packed parcel weighs."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.parcels.weighing import by_size, weigh
from queueboard.seedfiles import seed_text
from queueboard.settings.parcel_shapes import SideRounding, Volume, WeightRounding
from queueboard.settings.reading import read_settings

PARCELS = read_settings(seed_text("settings.toml")).parcels
CHEF, PARING, SLICER = ("chef", 203), ("paring", 89), ("slicer", 305)


def test_the_sum_has_knives_guards_things_and_box() -> None:
    """Two chef's knives, a paring knife and a roll in the small box, by the starter's weights."""
    found = weigh(PARCELS, (CHEF, CHEF, PARING), 1).sum

    assert (found.knives_g, found.wrap_g, found.things_g, found.box_g) == (210 + 210 + 65, 3 * 25, 150, 250)
    assert found.all_g == 960


@pytest.mark.parametrize(
    ("knives", "boxes", "box_g"),
    [(1, 1, 250), (3, 1, 250), (4, 1, 400), (10, 1, 400), (11, 1, 500), (20, 1, 500), (21, 2, 750), (41, 3, 1250)],
)
def test_the_box_goes_by_how_many_knives(knives: int, boxes: int, box_g: int) -> None:
    """Above what the largest box holds the knives are split: full boxes first, the rest in the smallest that fits."""
    found = weigh(PARCELS, (CHEF,) * knives, 0).sum

    assert (found.boxes, found.box_g) == (boxes, box_g)


def test_a_knife_too_long_for_every_box_has_none() -> None:
    """An edge of 305 mm with its handle needs 435 mm and fits; one of 330 mm fits no box, and has no size or price."""
    assert weigh(PARCELS, (SLICER,), 0).sum.boxes == 1

    found = weigh(PARCELS, (("slicer", 330),), 0)
    assert (found.sum.boxes, found.size_mm, found.by_size, found.label_cents) == (0, (), None, None)


def test_a_kind_without_a_weight_takes_the_usual_one() -> None:
    """A kind the shop has written no weight for, or has no more, counts as any knife."""
    assert weigh(PARCELS, (("sickle", None),), 0).sum.knives_g == PARCELS.weights.other_g


def test_the_scale_wins_and_a_typed_size_wins() -> None:
    """What stands on the scale counts, also where it is less than the sum; so does the size as it was measured."""
    found = weigh(PARCELS, (CHEF,) * 4, 0, scale_g=1100, size_mm=(300, 200, 100))

    assert (found.sum.all_g, found.weight_g, found.measured) == (1340, 1100, True)
    assert found.size_mm == (300, 200, 100)


def test_the_larger_of_weight_and_size_counts() -> None:
    """450 x 250 x 100 mm are 18 x 10 x 4 inches: 720 / 139 is 5.18, 6 lb; above a limit of 2 kg by what is over it."""
    found = weigh(PARCELS, (CHEF,) * 4, 0, limit_g=2000)

    assert found.by_size is not None
    assert found.by_size.billed == 6
    assert found.by_size.grams == 2722
    assert found.size_counts
    assert found.over_g == 722
    assert weigh(replace(PARCELS, volume=None), (CHEF,) * 4, 0, limit_g=2000).over_g == 0


def test_at_its_limit_a_parcel_is_not_above_it() -> None:
    """A limit is the most that it may weigh."""
    plain = replace(PARCELS, volume=None)

    assert weigh(plain, (CHEF,), 0, scale_g=907, limit_g=907).over_g == 0
    assert weigh(plain, (CHEF,), 0, scale_g=908, limit_g=907).over_g == 1


@given(
    st.tuples(*(st.integers(min_value=10, max_value=2000),) * 3),
    st.sampled_from(["in", "cm"]),
    st.sampled_from(list(SideRounding)),
    st.sampled_from(list(WeightRounding)),
)
def test_what_counts_never_goes_down_with_a_longer_side(
    size_mm: tuple[int, int, int], unit: str, sides: SideRounding, weight: WeightRounding
) -> None:
    """The order of the sides does not matter, a longer side never counts for less, and rounding up is the most."""
    volume = Volume(divisor=Decimal(139), unit=unit, sides=sides, weight=weight)
    length, width, height = size_mm
    found = by_size(volume, size_mm)

    assert by_size(volume, (height, length, width)).grams == found.grams
    assert by_size(volume, (length + 1, width, height)).grams >= found.grams
    most = replace(volume, sides=SideRounding.UP, weight=WeightRounding.UP_TO_WHOLE)
    assert by_size(most, size_mm).grams >= found.grams
