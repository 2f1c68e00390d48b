"""What a size counts as, against examples that carriers and forwarders have published.

values/parcel_volumes.json names the page of each. They do not agree about rounding (one page rounds 21.26 to the
nearest, couriers go up to the next half or whole), which is why the shop says how its own carrier rounds.
"""

import json
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any

import pytest

from queueboard.parcels.weighing import by_size
from queueboard.settings.parcel_shapes import SideRounding, Volume, WeightRounding
from queueboard.values.units import MM_PER_CM, MM_PER_INCH

FOUND: dict[str, Any] = json.loads(
    (Path(__file__).parent / "values" / "parcel_volumes.json").read_text(encoding="utf-8")
)


def stored_mm(example: dict[str, Any]) -> list[int]:
    """The sides as the shop file keeps them: whole millimetres, half up."""
    unit = MM_PER_INCH if example["unit"] == "in" else MM_PER_CM
    return [int((Decimal(side) * unit).quantize(Decimal(1), rounding=ROUND_HALF_UP)) for side in example["sides"]]


def billed(example: dict[str, Any], weight: WeightRounding, sides: SideRounding = SideRounding.HALF_UP) -> Decimal:
    """What the example counts as by these roundings."""
    volume = Volume(divisor=Decimal(example["divisor"]), unit=example["unit"], sides=sides, weight=weight)
    return by_size(volume, stored_mm(example)).billed


@pytest.mark.parametrize("example", FOUND["examples"], ids=lambda example: "x".join(example["sides"]))
@pytest.mark.parametrize("sides", list(SideRounding))
def test_published_examples(example: dict[str, Any], sides: SideRounding) -> None:
    """Weight as printed, and the figure before its rounding to the digits printed, however whole sides are rounded."""
    assert billed(example, WeightRounding(example["weight"]), sides) == Decimal(example["billed"])
    raw = Decimal(example["raw"])
    assert billed(example, WeightRounding.AS_IT_IS, sides).quantize(raw, rounding=ROUND_HALF_UP) == raw


@pytest.mark.parametrize("weight", [WeightRounding.UP_TO_WHOLE, WeightRounding.UP_TO_HALF])
def test_where_the_pages_do_not_agree_the_shop_says_how(weight: WeightRounding) -> None:
    """The box that one page rounds to 21 kg is 22 or 21.5 kg with a courier."""
    conflict = FOUND["conflict"]

    assert billed(conflict, weight) == Decimal(conflict[weight.value])
