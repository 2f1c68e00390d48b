"""What changed between before and after."""

import pytest

from queueboard.edges.change import change

SIX = [(700, 200), (650, 210), (800, 190), (600, 220), (720, 205), (640, 195)]


def test_six_pairs() -> None:
    """Mean fall 481.7 gf of 685 before, 70 percent, all on one side: once in 32 by chance."""
    found = change(SIX, 15.0)

    assert found is not None
    assert found.mean_gf == pytest.approx(2890 / 6)
    assert found.median_gf == pytest.approx(472.5)
    assert found.percent == pytest.approx(100 * 2890 / 4110)
    assert found.ranks.chance == 2 / 64
    assert found.interval.low > 0


def test_five_pairs_claim_nothing() -> None:
    """Below six pairs there is no change."""
    assert change(SIX[:5], 15.0) is None


def test_agreement_beyond_the_tester_is_not_believed() -> None:
    """Six falls of exactly 20 gf with a tester that wobbles by 30: no change is seen."""
    found = change([(220, 200)] * 6, 30.0)

    assert found is not None
    assert found.interval.low < 0 < found.interval.high
    assert found.ranks.interval is not None
    assert found.ranks.interval.low < 0 < found.ranks.interval.high
