"""Worked examples of fewest late jobs, of greatest lateness, and of set-ups and batches.

values/moore_hodgson.json names the source and the standing of each example; values/family_set_ups.json and
values/batch_set_ups.json hold optimal values that were computed, each by two methods.
"""

import json
from itertools import pairwise
from pathlib import Path
from typing import NotRequired, TypedDict

import pytest

from queueboard.planning.evaluation import Batch, evaluate
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueuePlan
from tests.outside.jobs import jobs_queue

VALUES = Path(__file__).parent / "values"


class Example(TypedDict):
    """Jobs of one machine and what is known of them."""

    id: str
    p: list[int]
    d: list[int]
    source: str
    standing: str
    min_late: NotRequired[int]
    edd_lmax: NotRequired[int]


class Family(TypedDict):
    """Jobs with a set-up of their family at every change of family; every job is done when it ends."""

    id: str
    p: list[int]
    w: list[int]
    d: list[int]
    family: list[int]
    setup: list[int]
    min_late: int
    min_weighted_late: int
    min_Lmax: int
    min_sum_T: int
    min_sum_wT: int
    min_sum_wC: int
    witness_1based: dict[str, list[int]]


class Batched(TypedDict):
    """Jobs of one family with a set-up before every batch; a job is done when its batch is."""

    id: str
    p: list[int]
    w: list[int]
    d: list[int]
    setup: int
    min_Lmax: int
    min_sum_C: int
    min_sum_wC: int
    min_late: int
    witness: dict[str, tuple[list[int], list[int]]]


EXAMPLES: list[Example] = json.loads((VALUES / "moore_hodgson.json").read_text(encoding="utf-8"))
FAMILIES: list[Family] = json.loads((VALUES / "family_set_ups.json").read_text(encoding="utf-8"))["instances"]
BATCHED: list[Batched] = json.loads((VALUES / "batch_set_ups.json").read_text(encoding="utf-8"))["instances"]


def named(example: Example | Family | Batched) -> str:
    """What a test of it is called."""
    return example["id"]


def lateness(queue: Queue, plan: QueuePlan) -> dict[int, int]:
    """For each job its finish less its due date."""
    return {box.id: plan.finish[box.id] - queue.cutoffs[box.due or 0] for box in queue.boxes}


@pytest.mark.parametrize("example", [e for e in EXAMPLES if "min_late" in e], ids=named)
def test_as_few_are_late_as_the_source_says(example: Example) -> None:
    """Moore and Hodgson's rule, worked by the planner on boxes of one knife, reaches the printed number."""
    assert len(plan_queue(jobs_queue(example["p"], example["d"])).late) == example.get("min_late")


@pytest.mark.parametrize("example", [e for e in EXAMPLES if "edd_lmax" in e], ids=named)
def test_the_greatest_lateness_is_what_the_source_says(example: Example) -> None:
    """Sharing the pain, which is earliest due date, reaches the printed greatest lateness."""
    queue = jobs_queue(example["p"], example["d"])

    assert max(lateness(queue, plan_queue(queue, earliest_due_first=True)).values()) == example.get("edd_lmax")


def family_queue(example: Family, *, weights: bool = False) -> Queue:
    """Runs of one knife, so that every job is done when it ends; a set-up is saved while the family stays."""
    return jobs_queue(
        example["p"],
        example["d"],
        weights=example["w"] if weights else None,
        families=example["family"],
        set_ups=example["setup"],
    )


@pytest.mark.parametrize("example", FAMILIES, ids=named)
def test_with_family_set_ups_the_fewest_are_late(example: Family) -> None:
    """The plan has as few late as any of the 40,320 sequences."""
    assert len(plan_queue(family_queue(example), restarts=30).late) == example["min_late"]


def test_with_family_set_ups_hardly_more_weight_is_late_than_must_be() -> None:
    """In all but one of the examples no sequence has less weight late; in that one it is 11 instead of 9."""
    over = [
        plan_queue(family_queue(example, weights=True), restarts=30).score.late_weight - example["min_weighted_late"]
        for example in FAMILIES
    ]

    assert min(over) >= 0
    assert sorted(over)[:-1] == [0] * (len(FAMILIES) - 1)
    assert max(over) <= 2


@pytest.mark.parametrize("example", FAMILIES, ids=named)
def test_family_set_ups_are_counted_as_in_the_example(example: Family) -> None:
    """The best sequences, evaluated, have the values that were computed for them."""
    queue = family_queue(example)
    seen: dict[str, int] = {}
    for what, sequence in example["witness_1based"].items():
        plan = evaluate(queue, [(example["family"][job - 1], (job - 1,)) for job in sequence])
        late, weights = lateness(queue, plan), example["w"]
        seen[what] = {
            "min_late": len(plan.late),
            "min_weighted_late": sum(weights[job] for job in plan.late),
            "min_Lmax": max(late.values()),
            "min_sum_T": sum(max(0, more) for more in late.values()),
            "min_sum_wT": sum(weights[job] * max(0, more) for job, more in late.items()),
            "min_sum_wC": sum(weights[job] * end for job, end in plan.finish.items()),
        }[what]

    known = {key: value for key, value in example.items() if key in seen}
    assert seen
    assert seen == known


def batch_queue(example: Batched) -> Queue:
    """Runs of all sizes, and no set-up saved."""
    size = len(example["p"])
    return jobs_queue(example["p"], example["d"], set_ups=[example["setup"]], run_size=size, saved_percent=0)


@pytest.mark.parametrize("example", BATCHED, ids=named)
def test_with_batches_the_fewest_are_late(example: Batched) -> None:
    """The plan has as few late as any sequence cut into batches in any way."""
    assert len(plan_queue(batch_queue(example), restarts=30).late) == example["min_late"]


@pytest.mark.parametrize("example", BATCHED, ids=named)
def test_batches_are_counted_as_in_the_example(example: Batched) -> None:
    """The best sequences and batchings, evaluated, have the values that were computed for them."""
    queue = batch_queue(example)
    seen: dict[str, int] = {}
    for what, (sequence, ends) in example["witness"].items():
        plan = evaluate(queue, _batches(sequence, ends))
        seen[what] = {
            "min_Lmax": max(lateness(queue, plan).values()),
            "min_sum_C": plan.score.completion,
            "min_sum_wC": sum(example["w"][job] * end for job, end in plan.finish.items()),
            "min_late": len(plan.late),
        }[what]

    assert seen
    assert seen == {key: value for key, value in example.items() if key in seen}


def _batches(sequence: list[int], ends: list[int]) -> list[Batch]:
    """The batches of a sequence of jobs counted from 1, each ending after so many of them."""
    return [(0, tuple(job - 1 for job in sequence[a:b])) for a, b in pairwise([0, *ends, len(sequence)])]
