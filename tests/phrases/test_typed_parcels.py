"""Weights and sizes as they are typed."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.phrases.parcels import grams_words
from queueboard.phrases.typed_parcels import parse_grams, parse_sides


@pytest.mark.parametrize(
    ("typed", "grams"),
    [
        ("900 g", 900),
        ("900g", 900),
        ("2.5 kg", 2500),
        ("2,5 KG", 2500),
        ("1,500 kg", 1500),
        ("12 oz", 340),
        ("5 lb", 2268),
        ("5 lbs", 2268),
        ("4 lb 8 oz", 2041),
        ("4lb8oz", 2041),
        ("1 g", 1),
        ("200 kg", 200_000),
    ],
)
def test_a_weight_is_stored_in_grams(typed: str, grams: int) -> None:
    """Grams, kilograms, ounces and pounds are read by their definitions, half up to whole grams."""
    assert parse_grams(typed) == grams


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("0 g", "outside 1 g to 200 kg"),
        ("0 kg", "outside 1 g to 200 kg"),
        ("0.4 g", "outside 1 g to 200 kg"),
        ("201 kg", "outside 1 g to 200 kg"),
        ("-1", "“-1” is no weight"),
        ("-1 kg", "“-1 kg” is no weight"),
        ("heavy", "“heavy” is no weight"),
        ("", "is no weight"),
        ("1e9 g", "is no weight"),
        ("2", "2 of what?"),
        ("0", "0 of what?"),
        ("2.5", "with its unit"),
        ("1,500 g", "can be read two ways"),
        ("1.500 lb", "can be read two ways"),
        ("2 kg 3 oz", "is no weight"),
        ("x" * 2000, "is no weight"),
        ("٣ kg", "is no weight"),
    ],
)
def test_what_is_no_weight_is_asked_back(typed: str, sentence: str) -> None:
    """Nought, less than nought, nonsense and a bare number each get a sentence that fits on a screen."""
    with pytest.raises(TypedError, match=re.escape(sentence)) as told:
        parse_grams(typed)

    assert len(str(told.value)) < 160


@pytest.mark.parametrize(
    ("typed", "unit", "size_mm"),
    [
        ("45x25x10", "cm", (450, 250, 100)),
        ("45 x 25 x 10", "cm", (450, 250, 100)),
        ("14 16 16", "in", (356, 406, 406)),
        ("14*16*16", "in", (356, 406, 406)),
        ("45,5 x 25 x 10 cm", "in", (455, 250, 100)),
        ("450 x 250 x 100 mm", "in", (450, 250, 100)),
        ('18 × 10 × 4"', "cm", (457, 254, 102)),
    ],
)
def test_a_size_is_stored_in_millimetres(typed: str, unit: str, size_mm: tuple[int, int, int]) -> None:
    """Three sides are read in the shop's unit or their own."""
    assert parse_sides(typed, unit) == size_mm


@pytest.mark.parametrize("typed", ["", "45", "45 x 25", "45 x 25 x", "45 x 25 x 10 x 3", "a x b x c", "-1 x 2 x 3"])
def test_what_is_no_size_is_asked_back(typed: str) -> None:
    """Anything but three sides gets a sentence."""
    with pytest.raises(TypedError, match="is no size"):
        parse_sides(typed, "cm")


@pytest.mark.parametrize("typed", ["0 x 25 x 10", "45 x 25 x 0.5", "450 x 250 x 100"])
def test_a_side_out_of_range_is_named(typed: str) -> None:
    """A side of nothing, or of metres, is refused with its millimetres."""
    with pytest.raises(TypedError, match=r"A side of \d+ mm is outside 10 to 2000 mm"):
        parse_sides(typed, "cm")


@given(st.text(max_size=30))
def test_nothing_typed_breaks_it(typed: str) -> None:
    """Whatever is typed is a weight within its range, or is refused with a sentence of our own."""
    try:
        grams = parse_grams(typed)
    except TypedError:
        return
    assert 1 <= grams <= 200_000


@given(st.integers(1, 200_000))
def test_a_weight_as_it_is_shown_can_be_typed(grams: int) -> None:
    """What stands in a field is read back as what was stored."""
    assert parse_grams(grams_words(grams)) == grams
