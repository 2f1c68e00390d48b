"""A finished run in words: how long it took, and whether anything is learned from that."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from queueboard.phrases.bench import finished_words
from queueboard.values.measured import BenchRun

BEGUN = datetime(2026, 11, 26, 14, 0, tzinfo=UTC)
RUN = BenchRun(
    id=1,
    version=1,
    process="plain",
    knife_ids=(1, 2, 3, 4),
    started_at=BEGUN,
    started_by="MB",
    nominal_seconds=1590,
    planned_seconds=1590,
    set_up_seconds=90,
)
"""Four knives in 25 minutes, after a set-up of 90 seconds."""


@pytest.mark.parametrize(
    ("seconds", "says"),
    [
        (90 + 39, "too soon after it began to count its time"),
        (90 + 299, "Nothing is learned from its time, less than a fifth of its estimate"),
        (90 + 300, "x throws its time away"),
        (90 + 3000, "x throws its time away"),
        (90 + 3001, "Nothing is learned from its time, over twice its estimate"),
    ],
)
def test_a_finished_run_says_whether_its_time_teaches_anything(seconds: int, says: str) -> None:
    """The same bounds as learning has: a fifth of the estimate and twice the estimate, both still counted."""
    done = replace(RUN, finished_at=BEGUN + timedelta(seconds=seconds))

    assert says in finished_words(done, "417-1, 417-2", "testing")


def test_a_run_done_without_timing_says_so() -> None:
    """Nobody is told to throw away a time that does not count."""
    done = replace(RUN, finished_at=BEGUN + timedelta(minutes=20), timed=False)

    assert finished_words(done, "417-1", "ready") == "Run of plain done without timing, to ready: 417-1"
