"""The tester's wobble from spots that were read again and again."""

from random import Random

import pytest

from queueboard.edges.wobble import wobble_of


def test_three_readings_of_two_spots() -> None:
    """Spreads of 10 and 20 with two degrees of freedom each: the root of 250."""
    wobble = wobble_of([(190, 200, 210), (280, 300, 320)])

    assert wobble is not None
    assert wobble.sd_gf == pytest.approx(250**0.5)
    assert wobble.freedom == 4


def test_a_tester_that_never_strays_still_shows_whole_grams() -> None:
    """Readings that all agree leave what rounding hides: 0.29 gf, so that no interval has no width."""
    wobble = wobble_of([(180, 180, 180), (200, 200, 200)])

    assert wobble is not None
    assert wobble.sd_gf == pytest.approx(12**-0.5)


def test_how_sharp_the_knives_are_does_not_matter() -> None:
    """Only what lies between readings of one spot is wobble."""
    lots = Random(4)  # noqa: S311 invented readings, no secret
    study = [[base + lots.gauss(0, 15) for _ in range(3)] for base in range(100, 1100, 5)]
    wobble = wobble_of(study)

    assert wobble is not None
    assert wobble.sd_gf == pytest.approx(15, rel=0.1)


@pytest.mark.parametrize("spots", [[], [[200.0]], [[200.0], [210.0], []]])
def test_without_a_second_reading_there_is_none(spots: list[list[float]]) -> None:
    """One reading a spot says nothing about the tester."""
    assert wobble_of(spots) is None
