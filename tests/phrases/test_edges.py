"""Comparisons of readings in words: nothing is said of what chance could do."""

import pytest

from queueboard.edges.change import change
from queueboard.phrases.edges import least_words
from queueboard.shop.edges_seen import ChangeRow


def row(name: str, fall: int, pairs: int = 8) -> ChangeRow:
    """Readings that fall by so much, give or take a few."""
    both = [(900.0 + place, 900.0 - fall + 3 * (place % 3)) for place in range(pairs)]
    return ChangeRow(name=name, pairs_gf=tuple(both), change=change(both, 5))


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ([row("heel", 700), row("tip", 400)], "tip gains least."),
        ([row("heel", 700), row("tip", 699)], "No spot gains less than all others by more than chance would have it."),
        ([row("heel", 700), row("tip", 400, pairs=5)], ""),
        ([], ""),
    ],
)
def test_the_spot_that_gains_least_is_named_where_chance_would_not_do_it(rows: list[ChangeRow], says: str) -> None:
    """Two spots or more with six pairs each are needed, and intervals that do not overlap."""
    assert least_words(rows, "spot") == says
