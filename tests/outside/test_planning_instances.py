"""Forty invented bench queues against reference answers of a constraint solver.

values/planning_instances/ holds the queues and reference.json: the fewest late boxes, the least tardiness given that,
the least set-up given both, and whether each is proven. Invented work and computed answers, no published values. The
outcome of our runs is worked out in ticks by an evaluator that shares nothing with the planner.
"""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path
from random import Random
from statistics import mean
from typing import TypedDict

from queueboard.planning.planner import DAY_LIST, plan_queue
from tests.planning.instances import Instance, files_in, queue_of
from tests.planning.test_planner_invariants import earliest_due, late_weight, moore_hodgson
from tests.planning.tick_evaluator import Outcome, outcome

FOLDER = Path(__file__).parent / "values" / "planning_instances"


class Answer(TypedDict):
    """The reference answer to an instance, in ticks."""

    late: int
    tardiness_ticks: int
    setup_ticks: int
    proven: list[bool]


REFERENCE: dict[str, Answer] = json.loads((FOLDER / "reference.json").read_text(encoding="utf-8"))


@cache
def instances() -> dict[str, Instance]:
    """The instances by name."""
    return {path.stem: json.loads(path.read_text(encoding="utf-8")) for path in files_in([FOLDER])}


@cache
def outcomes() -> dict[str, Outcome]:
    """What our day list's plan of each instance comes to."""
    found = {}
    for name, instance in instances().items():
        plan = plan_queue(queue_of(instance), restarts=DAY_LIST)
        found[name] = outcome(instance, [(run.process, run.knife_ids) for run in plan.runs])
        assert (plan.score.late_weight, plan.score.tardiness, plan.score.set_up) == (
            found[name].late_weight,
            6 * found[name].tardiness,
            6 * found[name].set_up,
        )
    return found


def test_as_few_boxes_are_late_as_can_be() -> None:
    """The fewest late boxes are found in all forty queues; in each of them the fewest are proven."""
    assert len(outcomes()) == 40
    assert {name: len(seen.late) for name, seen in outcomes().items()} == {
        name: answer["late"] for name, answer in REFERENCE.items()
    }


def test_tardiness_is_close_to_the_least() -> None:
    """Summed over all queues the tardiness is at most 4 % over the reference."""
    least = sum(answer["tardiness_ticks"] for answer in REFERENCE.values())

    assert sum(seen.tardiness for seen in outcomes().values()) <= 1.04 * least


def test_set_up_is_close_to_the_least() -> None:
    """Where late boxes and tardiness are the reference's, set-up is on average at most 3 % over it."""
    ratios = [
        seen.set_up / REFERENCE[name]["setup_ticks"]
        for name, seen in outcomes().items()
        if (len(seen.late), seen.tardiness) == (REFERENCE[name]["late"], REFERENCE[name]["tardiness_ticks"])
    ]

    assert len(ratios) >= 38
    assert mean(ratios) <= 1.03


def test_no_queue_has_more_late_than_box_by_box() -> None:
    """Neither rule that works box by box leaves fewer late, even when the plan is made at once."""
    for instance in instances().values():
        queue = queue_of(instance)
        late = late_weight(queue, plan_queue(queue))

        assert late <= moore_hodgson(queue)
        assert late <= earliest_due(queue)


def test_names_and_order_do_not_decide_who_is_late() -> None:
    """With boxes renamed, and boxes and knives shuffled, the same boxes are late."""
    dice = Random(3)  # noqa: S311 drawn queues, no secret
    for name, instance in instances().items():
        queue = queue_of(instance)
        names = dice.sample(range(100, 1_000), len(queue.boxes))
        boxes = [
            replace(box, id=new, knives=tuple(dice.sample(box.knives, len(box.knives))))
            for box, new in zip(queue.boxes, names, strict=True)
        ]
        other = replace(queue, boxes=tuple(dice.sample(boxes, len(boxes))))
        late = {names.index(box) for box in plan_queue(other, restarts=DAY_LIST).late}

        assert late == {place for place, box in enumerate(queue.boxes) if box.id in outcomes()[name].late}
