"""The script over instance files, and freshly drawn queues of every load."""

import json
from pathlib import Path

import pytest

from queueboard.planning.planner import plan_queue
from tests.plan_queues import main
from tests.planning.fresh_queues import LOADS, fresh_queue
from tests.planning.instances import queue_of
from tests.planning.test_planner_invariants import earliest_due, late_weight, moore_hodgson
from tests.planning.tick_evaluator import WrongPlanError, outcome


@pytest.mark.parametrize("load", LOADS)
def test_fresh_queues_have_no_more_late_than_box_by_box(load: str) -> None:
    """In thirty queues of a load, also long ones, neither rule that works box by box leaves fewer late."""
    for seed in range(30):
        queue = queue_of(fresh_queue(seed, load, 6 + 3 * seed))
        late = late_weight(queue, plan_queue(queue))

        assert late <= moore_hodgson(queue)
        assert late <= earliest_due(queue)


def test_the_script_prints_a_line_for_each_instance(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each file but the reference gives one line of JSON, with what the runs come to in ticks."""
    instance = fresh_queue(1, "medium", 8)
    (tmp_path / "b.json").write_text(json.dumps(instance), encoding="utf-8")
    (tmp_path / "a.json").write_text(json.dumps(fresh_queue(2, "tight", 8)), encoding="utf-8")
    (tmp_path / "reference.json").write_text("{}", encoding="utf-8")

    main([str(tmp_path)])

    lines = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert [line["id"] for line in lines] == ["a", "b"]
    plan = plan_queue(queue_of(instance), restarts=30)
    assert lines[1]["late"] == len(plan.late)
    assert 6 * lines[1]["tardiness_ticks"] == plan.score.tardiness
    assert 6 * lines[1]["setup_ticks"] == plan.score.set_up
    assert lines[1]["milliseconds"] > 0


def test_runs_that_are_no_plan_are_not_evaluated() -> None:
    """A knife left out, worked twice or in a run of another process is told."""
    instance = fresh_queue(1, "medium", 8)
    runs = [(run.process, run.knife_ids) for run in plan_queue(queue_of(instance)).runs]
    process, knives = runs[0]

    for wrong in (runs[1:], [*runs, runs[0]], [((process + 1) % len(instance["procs"]), knives), *runs[1:]]):
        with pytest.raises(WrongPlanError):
            outcome(instance, wrong)
