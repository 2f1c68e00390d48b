"""A program that is killed loses nothing that it said was done, and leaves no file that does not hold together."""

from pathlib import Path

import pytest

from tests.bench.kills import WORKS, Work, in_two_transactions, kill

KILLS = 4
"""For each kind of work; `python -m tests.bench.kills` does two thousand."""


@pytest.mark.parametrize("work", WORKS)
def test_nothing_said_to_be_done_is_lost(work: Work, tmp_path: Path) -> None:
    """Killed while writing, moving, receiving, copying, going back, taking in or leading on: all is there and sound."""
    tally = kill(work, KILLS, 7, tmp_path)

    assert (tally.kills, tally.lost, tally.unsound) == (KILLS, 0, 0)


def test_the_control_comes_apart(tmp_path: Path) -> None:
    """State and history in two transactions are found apart after some kill; so would one of ours be."""
    assert any(kill(in_two_transactions, 1, seed, tmp_path / str(seed)).unsound for seed in range(60))
