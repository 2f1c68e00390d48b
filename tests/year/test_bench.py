"""The invented bench works what the plan says, and no more than its seconds."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.planning.evaluation import Batch
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueuePlan
from tests.planning.queues import queues
from tests.year.bench import Bench, work_off
from tests.year.world import Knife

SPLITS = st.lists(st.integers(1, 9000), min_size=1, max_size=30)


def knives_of(queue: Queue) -> dict[int, Knife]:
    """Knives that take exactly what the queue says."""
    every = (knife for box in queue.boxes for knife in box.knives)
    return {knife.id: Knife(knife.id, knife.process, knife.seconds, knife.seconds) for knife in every}


def bench_of(queue: Queue) -> Bench:
    """A bench with the queue's set-ups, at which a repeated one costs nothing."""
    return Bench([process.set_up_seconds for process in queue.processes], queue.set_up_now)


def left_of(plan: QueuePlan, knives: dict[int, Knife]) -> list[Batch]:
    """The runs with the knives that are not finished."""
    runs = ((r.process, tuple(one for one in r.knife_ids if knives[one].left_seconds > 0)) for r in plan.runs)
    return [(process, knife_ids) for process, knife_ids in runs if knife_ids]


@given(queues())
def test_what_is_worked_is_what_was_planned(queue: Queue) -> None:
    """With sure minutes every knife is done when its run ends by the plan, each saved set-up included."""
    queue = replace(queue, saved_percent=100)
    plan, knives = plan_queue(queue), knives_of(queue)
    done = work_off(bench_of(queue), left_of(plan, knives), knives, 10**7)

    for run in plan.runs:
        assert all(done.finished_at[knife_id] == pytest.approx(run.end) for knife_id in run.knife_ids)
    assert done.set_up_seconds == plan.score.set_up


@given(queues(), st.integers(1, 20000))
def test_the_next_morning_s_plan_knows_what_the_bench_is_set_up_for(queue: Queue, first_day: int) -> None:
    """Planned anew after a broken-off day, the rest is again worked as planned, to the second."""
    queue = replace(queue, saved_percent=100)
    knives, bench = knives_of(queue), bench_of(queue)
    work_off(bench, left_of(plan_queue(queue), knives), knives, first_day)
    bench.owed_seconds = 0.0
    rest = replace(
        queue,
        set_up_now=bench.mounted,
        boxes=tuple(
            replace(
                box,
                knives=tuple(
                    replace(knife, seconds=round(knives[knife.id].left_seconds))
                    for knife in box.knives
                    if knives[knife.id].left_seconds > 0
                ),
            )
            for box in queue.boxes
        ),
    )
    plan = plan_queue(rest)
    done = work_off(bench, left_of(plan, knives), knives, 10**7)

    assert done.set_up_seconds == plan.score.set_up
    for run in plan.runs:
        assert all(done.finished_at[knife_id] == pytest.approx(run.end) for knife_id in run.knife_ids)


@given(queues(), SPLITS)
def test_finished_and_left_are_the_whole_under_any_split(queue: Queue, days: list[int]) -> None:
    """Wherever closing falls, a knife in hand gives nothing away: worked and left are all there was, day by day."""
    plan, knives, bench = plan_queue(queue), knives_of(queue), bench_of(queue)
    total = sum(knife.true_seconds for knife in knives.values())
    worked = 0.0
    for seconds in days:
        batches = left_of(plan, knives)
        done = work_off(bench, batches, knives, seconds)
        worked += done.knife_seconds
        left = sum(knife.left_seconds for knife in knives.values())

        assert worked + left == pytest.approx(total)
        assert done.knife_seconds + done.set_up_seconds <= seconds + 1e-6
        if left:
            assert done.knife_seconds + done.set_up_seconds == pytest.approx(seconds)


@given(queues(), SPLITS)
def test_a_split_loses_no_set_up(queue: Queue, days: list[int]) -> None:
    """However the days are cut, the plan takes as long as in one go."""
    queue = replace(queue, saved_percent=100)
    plan, knives, bench = plan_queue(queue), knives_of(queue), bench_of(queue)
    spent = 0.0
    for seconds in [*days, 10**7]:
        done = work_off(bench, left_of(plan, knives), knives, seconds)
        spent += done.knife_seconds + done.set_up_seconds

    assert spent == pytest.approx(plan.runs[-1].end)
