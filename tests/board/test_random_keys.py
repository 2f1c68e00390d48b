"""Whatever is typed, the board neither fails nor falls silent, and what it stores holds together."""

import pytest

from tests.bench.keys import is_heard, press_at_random

pytestmark = pytest.mark.own_folder

PARTS, SEQUENCES, KEYS_EACH = 4, 16, 8
"""Sixty-four sequences, shared between processors; `python -m tests.bench.keys` does five thousand longer ones."""


@pytest.mark.parametrize("part", range(PARTS))
async def test_random_keys(part: int) -> None:
    """Keys, words and pasted text in bursts: no traceback, the laws hold, and the board still answers."""
    tally = await press_at_random(SEQUENCES, part, KEYS_EACH)

    assert (tally.sequences, tally.troubles) == (SEQUENCES, 0)
    assert tally.done > 0


def test_a_key_that_fails_is_heard() -> None:
    """The control: with one failing key planted, the same keys end in its failure."""
    assert is_heard(1)
