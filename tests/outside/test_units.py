"""Units against their definitions.

values/units.json: international yard and pound agreement of 1959 (inch, pound, ounce), standard gravity (gram-force).
"""

import json
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest

from queueboard.intake.lengths import read_length_mm
from queueboard.values.units import (
    GRAMS_PER_OUNCE,
    GRAMS_PER_POUND,
    MILLINEWTONS_PER_GRAM_FORCE,
    MM_PER_CM,
    MM_PER_INCH,
)

DEFINED: dict[str, str] = json.loads((Path(__file__).parent / "values" / "units.json").read_text(encoding="utf-8"))


def test_units_are_exact() -> None:
    """Inch, foot, pound, ounce, stone and gram-force are the defined numbers to the last digit."""
    assert Decimal(DEFINED["inch_mm"]) == MM_PER_INCH
    assert Decimal(DEFINED["foot_m"]) * 100 * MM_PER_CM == 12 * MM_PER_INCH
    assert Decimal(DEFINED["pound_kg"]) * 1000 == GRAMS_PER_POUND
    assert Decimal(DEFINED["ounce_g"]) == GRAMS_PER_OUNCE
    assert Decimal(DEFINED["stone_kg"]) * 1000 == 14 * GRAMS_PER_POUND
    assert Decimal(DEFINED["gf_N"]) * 1000 == MILLINEWTONS_PER_GRAM_FORCE
    assert Decimal(DEFINED["lbf_N"]) * 1000 == GRAMS_PER_POUND * MILLINEWTONS_PER_GRAM_FORCE


@pytest.mark.parametrize("half_inches", range(2, 71))
def test_typed_inches_are_the_defined_ones(half_inches: int) -> None:
    """A length typed in a field or in a line of knives is the defined one, rounded half up to a whole millimetre."""
    inches = Decimal(half_inches) / 2
    exact_mm = inches * Decimal(DEFINED["inch_mm"])
    whole_mm = int(exact_mm.quantize(Decimal(1), rounding=ROUND_HALF_UP))

    assert read_length_mm(f"{inches}", shop_unit="in") == whole_mm
    assert read_length_mm(f"{inches}in", shop_unit="cm") == whole_mm
