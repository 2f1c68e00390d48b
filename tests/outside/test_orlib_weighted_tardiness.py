"""One machine, no set-ups: the weighted tardiness sets of OR-Library (J. E. Beasley), 40, 50 and 100 jobs.

values/orlib_weighted_tardiness.json: processing times, weights and due dates, and the published best weighted
tardiness (MIT licence, (c) 2010 J. E. Beasley). Fewest late by Moore and Hodgson's rule, least greatest lateness by
earliest due date and least late weight by dynamic programming were computed from them by exact methods; the sequences,
which attain the published value, were found by a local search.
"""

import json
from itertools import accumulate
from pathlib import Path
from typing import NotRequired, TypedDict

import pytest

from queueboard.planning.evaluation import evaluate
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue
from tests.outside.jobs import jobs_queue


class Row(TypedDict):
    """An instance with its answers."""

    set: str
    i: int
    p: list[int]
    w: list[int]
    d: list[int]
    min_late: int
    edd_lmax: int
    min_weighted_late: int
    edd_late: int
    best_sum_wT: int
    sequence: NotRequired[list[int]]


FILE = Path(__file__).parent / "values" / "orlib_weighted_tardiness.json"
ROWS: list[Row] = json.loads(FILE.read_text(encoding="utf-8"))
SETS = {name: [row for row in ROWS if row["set"] == name] for name in ("wt40", "wt50", "wt100")}


def queue_of(row: Row, *, weights: bool = False) -> Queue:
    """The jobs as boxes of one knife on a bench without set-ups."""
    return jobs_queue(row["p"], row["d"], weights=row["w"] if weights else None)


@pytest.mark.parametrize("name", SETS)
def test_the_fewest_jobs_are_late(name: str) -> None:
    """In every instance the plan makes as few jobs late as Moore and Hodgson's rule."""
    assert SETS[name]
    for row in SETS[name]:
        assert len(plan_queue(queue_of(row)).late) == row["min_late"], row["i"]


@pytest.mark.parametrize("name", SETS)
def test_sharing_the_pain_makes_the_greatest_lateness_least(name: str) -> None:
    """In every instance earliest due date has the least greatest lateness (Jackson's rule)."""
    for row in SETS[name]:
        plan = plan_queue(queue_of(row), earliest_due_first=True)

        assert max(plan.finish[job] - due for job, due in enumerate(row["d"])) == row["edd_lmax"], row["i"]


@pytest.mark.parametrize("name", SETS)
def test_the_weight_that_is_late_is_close_to_the_least(name: str) -> None:
    """Over a set, jobs being weighted, the late weight is at most 8 % over the least, and in no instance below it."""
    ours = {row["i"]: plan_queue(queue_of(row, weights=True)).score.late_weight for row in SETS[name]}

    assert all(ours[row["i"]] >= row["min_weighted_late"] for row in SETS[name])
    assert sum(ours.values()) <= 1.08 * sum(row["min_weighted_late"] for row in SETS[name])


def test_finishes_of_the_best_known_sequences_give_their_published_value() -> None:
    """Worked in the sequences found, the finishes give the published weighted tardiness."""
    rows = [row for row in ROWS if "sequence" in row]
    assert len(rows) > 200
    for row in rows:
        sequence = [job - 1 for job in row.get("sequence", [])]
        plan = evaluate(queue_of(row), [(0, (job,)) for job in sequence])

        assert [plan.finish[job] for job in sequence] == list(accumulate(row["p"][job] for job in sequence))
        lateness = [max(0, plan.finish[job] - due) for job, due in enumerate(row["d"])]
        assert sum(w * late for w, late in zip(row["w"], lateness, strict=True)) == row["best_sum_wT"], row["i"]
