"""The drift chart against NIST/SEMATECH e-Handbook 6.3.2.2 (individuals and moving ranges) and its constants.

values/control_charts.json names the source and standing; the limits are those of the printed constant, 1.128.
"""

import json
from pathlib import Path

import pytest

from queueboard.edges.drift import D2, D4, limits_of, signals

VALUES = json.loads((Path(__file__).parent / "values" / "control_charts.json").read_text(encoding="utf-8"))
CHART = VALUES["individuals"]


def test_the_limits_are_those_of_the_handbook() -> None:
    """Ten flow rates: middle 50.81, limits 45.8159 and 55.8041, and none of them out of control."""
    limits = limits_of(CHART["data"])

    assert limits.middle == pytest.approx(CHART["mean"], abs=5e-5)
    assert limits.high == pytest.approx(CHART["ucl"], abs=5e-5)
    assert limits.low == pytest.approx(CHART["lcl"], abs=5e-5)
    assert limits.most_range == pytest.approx(CHART["mr_ucl_with_3_267"], abs=2e-4)
    assert signals(CHART["data"], limits) == ()


def test_the_constants_are_those_printed_for_ranges_of_two() -> None:
    """d2 and D4 for two readings."""
    printed = next(row["printed"] for row in VALUES["constants"] if row["n"] == 2)

    assert (printed["d2"], printed["D4"]) == (D2, D4)
