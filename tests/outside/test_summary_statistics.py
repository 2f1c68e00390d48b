"""Mean and deviation against the NIST statistical reference data sets (StRD, univariate) to 1e-12 of the value.

values/strd_univariate.json holds the data, the certified values and where they were found.
"""

import json
from math import sqrt
from pathlib import Path

import pytest

from queueboard.edges.summary import mean, spread

SETS = json.loads((Path(__file__).parent / "values" / "strd_univariate.json").read_text(encoding="utf-8"))["datasets"]
MADE = {
    "numacc2": [1.2, *(1.1, 1.3) * 500],
    "numacc3": [1000000.2, *(1000000.1, 1000000.3) * 500],
}
"""The sets that the file describes in words."""


def data_of(name: str) -> list[float]:
    """The values of a set."""
    return MADE[name] if name in MADE else [float(value) for value in SETS[name]["data"]]


@pytest.mark.parametrize("name", [name for name in SETS if name in MADE or isinstance(SETS[name]["data"], list)])
def test_the_certified_values_come_out(name: str) -> None:
    """Mean and deviation agree to 1e-12 of the value, as far as the data itself can be written in binary."""
    data = data_of(name)
    room = 1e-12 if name != "numacc3" else 1e-9  # 1000000.1 is not itself: binary is off by 2e-11, 2e-10 of .1

    assert mean(data) == pytest.approx(float(SETS[name]["mean"]), rel=1e-12)
    assert spread(data) == pytest.approx(float(SETS[name]["sd"]), rel=room)


def test_the_short_formula_would_not_do() -> None:
    """The sum of squares less the square of the sum fails on NumAcc3, so that the check above can fail."""
    data = data_of("numacc3")
    total, squares = sum(data), sum(value * value for value in data)
    naive = sqrt(abs(squares - total * total / len(data)) / (len(data) - 1))

    assert naive != pytest.approx(0.1, rel=1e-3)
