"""A length as it is typed into a field or a line: in the shop's unit or its own, never out of range."""

import pytest

from queueboard.errors import TypedError
from queueboard.intake.lengths import read_length_mm


@pytest.mark.parametrize(
    ("typed", "unit", "length_mm"),
    [
        ("20", "cm", 200),
        ("20.5", "cm", 205),
        ("20,5 cm", "in", 205),
        ("8", "in", 203),
        ("8 in", "cm", 203),
        ('8"', "cm", 203),
        ("10 inches", "cm", 254),
        ("205mm", "cm", 205),
        ("2", "cm", 20),
        ("90", "cm", 900),
    ],
)
def test_a_length_is_read_in_the_shops_unit_or_its_own(typed: str, unit: str, length_mm: int) -> None:
    """The inch is 25.4 mm exactly (NIST SP 811, from memory); the ends of the range fit."""
    assert read_length_mm(typed, shop_unit=unit) == length_mm


@pytest.mark.parametrize(
    ("typed", "unit", "says"),
    [
        ("200", "cm", "2 to 90 cm"),
        ("1.9", "cm", "2 to 90 cm"),
        ("90.1", "cm", "2 to 90 cm"),
        ("36", "in", "0.8 to 35.4 in"),
        ("0", "cm", "2 to 90 cm"),
        ("-8", "in", "is no length"),
        ("long", "cm", "is no length"),
        ("9" * 6000, "cm", "is no length"),
        ("٢٠", "cm", "is no length"),
    ],
)
def test_a_length_out_of_range_is_refused_with_the_range(typed: str, unit: str, says: str) -> None:
    """What no knife measures is refused, in the unit that was typed."""
    with pytest.raises(TypedError, match=says):
        read_length_mm(typed, shop_unit=unit)
