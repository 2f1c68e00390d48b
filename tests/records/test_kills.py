"""A program that is killed loses nothing that it said was done, and leaves no file that does not hold together."""

from pathlib import Path

import pytest

from tests.bench.kill_works import CONTROL, WORKS, Work
from tests.bench.kills import kill

pytestmark = pytest.mark.sqlite_file

KILLS = 6
"""For each kind of work and journal, over a hundred in all; `python -m tests.bench.kills` does two thousand."""


@pytest.mark.parametrize("log", [False, True], ids=["journal", "log"])
@pytest.mark.parametrize("work", WORKS, ids=[work.name for work in WORKS])
def test_nothing_said_to_be_done_is_lost(work: Work, log: bool, tmp_path: Path) -> None:
    """Killed in the middle of whatever it does, with either kind of journal: all is there and sound."""
    tally = kill(work, KILLS, 7, tmp_path, log=log)

    assert (tally.kills, tally.lost, tally.unsound) == (KILLS, 0, 0)


def test_the_control_comes_apart(tmp_path: Path) -> None:
    """State and history in two transactions are found apart after some kill; so would one of ours be."""
    assert any(kill(CONTROL, 1, seed, tmp_path / str(seed)).unsound for seed in range(60))
