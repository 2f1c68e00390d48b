"""Whatever is done in whatever order, no knife is lost or doubled and the board tells what the file holds."""

import pytest
from hypothesis.stateful import run_state_machine_as_test

from queueboard.shop.operation import OPERATIONS
from tests.bench.fuzz import days
from tests.shop.acts import FAMILIES

PARTS = 4
"""So that processors share the work."""

DAYS = 500
"""Of random acts; `python -m tests.bench.fuzz` does twenty thousand."""


def test_every_operation_is_tried() -> None:
    """An operation that has no entry among the acts fails here."""
    tried = [name for family in FAMILIES.values() for name in family]

    assert sorted(tried) == sorted(OPERATIONS)


@pytest.mark.parametrize("part", range(PARTS))
def test_days_of_random_acts(part: int) -> None:
    """Each act is done or refused with a sentence, and what the shop promises holds behind each."""
    machine, settings = days(DAYS // PARTS, part)

    run_state_machine_as_test(machine, settings=settings)
