"""Whatever is done in whatever order, no knife is lost or doubled and the board tells what the file holds."""

import pytest

from queueboard.shop.operation import OPERATIONS
from tests import engines
from tests.bench.fuzz import live, noticed
from tests.shop.acts import FAMILIES
from tests.shop.random_day import Day

pytestmark = pytest.mark.own_folder

PARTS = 4
"""So that processors share the work."""

DAYS, ACTS = engines.days(160), 5
"""Of random acts; `python -m tests.bench.fuzz` does twenty thousand, and longer ones."""


def test_every_operation_is_tried() -> None:
    """An operation that has no entry among the acts fails here."""
    tried = [name for family in FAMILIES.values() for name in family]

    assert sorted(tried) == sorted(OPERATIONS)


@pytest.mark.parametrize("part", range(PARTS))
def test_days_of_random_acts(part: int) -> None:
    """Each act is done or refused with a sentence, and what the shop promises holds behind each."""
    live(DAYS // PARTS, part, ACTS)

    assert Day.tried.total() >= DAYS // PARTS


def test_a_careless_day_is_noticed() -> None:
    """The control: a price that history does not know ends each day on which it was changed."""
    assert noticed(3, 7, ACTS) == 3
