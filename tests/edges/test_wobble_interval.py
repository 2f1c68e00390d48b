"""How surely a study knows the tester's wobble."""

import pytest

from queueboard.edges.wobble import Wobble, sd_interval

CHI_SQUARE = {10: (3.247, 20.483), 20: (9.591, 34.170), 60: (40.482, 83.298)}
"""The 0.025 and 0.975 points by degrees of freedom, NIST/SEMATECH e-Handbook 1.3.6.7.4 (from memory)."""


@pytest.mark.parametrize("freedom", CHI_SQUARE)
def test_the_interval_is_that_of_the_handbook(freedom: int) -> None:
    """The ends are the deviation times the root of freedom over chi square, within one percent."""
    low, high = CHI_SQUARE[freedom]
    interval = sd_interval(Wobble(sd_gf=15.0, freedom=freedom))

    assert interval.low == pytest.approx(15 * (freedom / high) ** 0.5, rel=0.01)
    assert interval.high == pytest.approx(15 * (freedom / low) ** 0.5, rel=0.01)
