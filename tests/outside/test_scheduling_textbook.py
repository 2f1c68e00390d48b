"""The order by ship-by against worked examples of earliest due date (one bench, one process, no set-up).

values/scheduling_textbook.json names the source and the standing of each example. That earliest due date makes the
greatest lateness least is Jackson's rule of 1955 (from memory).
"""

import json
from datetime import timedelta
from itertools import permutations
from pathlib import Path
from typing import NotRequired, TypedDict

import pytest

from queueboard.planning.order import plan_work
from queueboard.values.plan import BenchWindow, BoxWork, KnifeWork, Plan, PlanRules, ProcessWork
from queueboard.words import Lateness
from tests.plans import NOW


class Job(TypedDict):
    """A job of an example; minutes and due count from the start."""

    name: str
    minutes: int
    due: int


class Example(TypedDict):
    """An example, with what its source says of earliest due date."""

    id: str
    jobs: list[Job]
    source: str
    standing: str
    sequence: NotRequired[list[str]]
    total_flow: NotRequired[int]
    total_tardiness: NotRequired[int]
    late: NotRequired[int]
    max_lateness: NotRequired[int]


FILE = Path(__file__).parent / "values" / "scheduling_textbook.json"
EXAMPLES: list[Example] = json.loads(FILE.read_text(encoding="utf-8"))["examples"]
WITH_SEQUENCE = [example for example in EXAMPLES if "sequence" in example]
WITH_LATENESS = [example for example in EXAMPLES if "max_lateness" in example]


def plan_of(jobs: list[Job]) -> Plan:
    """The plan of these jobs, each a box of one knife, on a bench that never closes."""
    boxes = tuple(
        BoxWork(
            box_id=place,
            number=place,
            ship_by=NOW + timedelta(minutes=job["due"]),
            knives=(
                KnifeWork(
                    knife_id=place, tag=job["name"], process="plain", seconds=job["minutes"] * 60, handling_minutes=0
                ),
            ),
        )
        for place, job in enumerate(jobs)
    )
    process = ProcessWork(name="plain", set_up_seconds=0, run_size=1)
    windows = (BenchWindow(start=NOW, end=NOW + timedelta(days=1)),)
    return plan_work(boxes, (process,), windows, NOW, rules=PlanRules(earliest_due_first=True)).plan


def greatest_lateness(jobs: tuple[Job, ...]) -> int:
    """The greatest minutes between due and end when the jobs are done in this order."""
    end, worst = 0, -(10**9)
    for job in jobs:
        end += job["minutes"]
        worst = max(worst, end - job["due"])
    return worst


@pytest.mark.parametrize("example", WITH_SEQUENCE, ids=lambda example: example["id"])
def test_the_order_by_ship_by_is_the_published_sequence(example: Example) -> None:
    """The knives come in the printed sequence, and take the printed flow time in all."""
    plan = plan_of(example["jobs"])

    assert [example["jobs"][run.knife_ids[0]]["name"] for run in plan.runs] == example["sequence"]
    assert sum(run.end_second for run in plan.runs) == 60 * example["total_flow"]


@pytest.mark.parametrize("example", WITH_SEQUENCE, ids=lambda example: example["id"])
def test_the_late_minutes_are_the_published_tardiness(example: Example) -> None:
    """The forecasts are late by the printed tardiness in all, and by as many jobs as printed."""
    forecasts = plan_of(example["jobs"]).forecasts
    late = [seen for seen in forecasts if seen.lateness is Lateness.WILL_BE_LATE]

    assert sum(seen.late_minutes for seen in forecasts) == example["total_tardiness"]
    assert len(late) == example.get("late", len(late))


@pytest.mark.parametrize("example", WITH_LATENESS, ids=lambda example: example["id"])
def test_the_greatest_lateness_is_the_published_one(example: Example) -> None:
    """The box that is latest is late by the published greatest lateness."""
    assert max(seen.late_minutes for seen in plan_of(example["jobs"]).forecasts) == example["max_lateness"]


@pytest.mark.parametrize("example", [e for e in EXAMPLES if len(e["jobs"]) <= 6], ids=lambda example: example["id"])
def test_no_other_sequence_has_a_smaller_greatest_lateness(example: Example) -> None:
    """Jackson's rule: of all sequences, tried one by one, none keeps the latest box less late."""
    ours = tuple(example["jobs"][run.knife_ids[0]] for run in plan_of(example["jobs"]).runs)

    assert greatest_lateness(ours) == min(greatest_lateness(order) for order in permutations(example["jobs"]))
