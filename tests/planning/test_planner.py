"""Plans of small queues that can be followed by hand, queues at the edge of sense, and those without any."""

from dataclasses import replace

import pytest

from queueboard.planning.buckets import slack
from queueboard.planning.errors import PlanError
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueuePlan, QueueProcess


def box(box_id: int, due: int | None, *knives: tuple[int, int], weight: int = 1) -> QueueBox:
    """A box of knives given by process and seconds; their ids are 100 times its own and on."""
    return QueueBox(
        id=box_id,
        due=due,
        weight=weight,
        knives=tuple(
            QueueKnife(id=100 * box_id + place, process=process, seconds=seconds)
            for place, (process, seconds) in enumerate(knives)
        ),
    )


def queue(*boxes: QueueBox, cutoffs: tuple[int, ...] = (100, 200, 300), run_size: int = 10, saved: int = 100) -> Queue:
    """A bench of three processes with set-ups of 20 seconds."""
    return Queue(
        boxes=boxes,
        processes=(QueueProcess(set_up_seconds=20, run_size=run_size),) * 3,
        cutoffs=cutoffs,
        saved_percent=saved,
    )


def order(plan: QueuePlan) -> list[tuple[int, ...]]:
    """The knives of each run."""
    return [run.knife_ids for run in plan.runs]


def test_an_empty_queue_is_an_empty_plan() -> None:
    """Without boxes, cut-offs and processes there is nothing to do and nobody late."""
    plan = plan_queue(Queue(boxes=(), processes=(), cutoffs=()))

    assert (plan.runs, plan.finish, plan.late, plan.honest) == ((), {}, (), {})


def test_a_box_without_knives_is_never_late() -> None:
    """It needs no bench, even when its cut-off has passed, and has no finish."""
    plan = plan_queue(queue(box(1, -1), box(2, 0, (0, 10))))

    assert plan.finish == {2: 30}
    assert plan.late == ()


def test_work_of_one_process_is_done_together_where_it_fits() -> None:
    """The later box's knife is pulled ahead of the other process, which saves its set-up and makes nobody late."""
    plan = plan_queue(queue(box(1, 0, (0, 20)), box(2, 1, (1, 20)), box(3, 2, (0, 20))))

    assert order(plan) == [(100, 300), (200,)]
    assert plan.score.set_up == 40


def test_work_is_not_pulled_ahead_of_somebody_who_would_be_late() -> None:
    """When the first cut-off has no room for it, the later box's knife waits and pays its own set-up."""
    plan = plan_queue(queue(box(1, 0, (0, 75)), box(2, 1, (1, 75)), box(3, 2, (0, 20))))

    assert order(plan) == [(100,), (200,), (300,)]
    assert plan.late == ()


def test_a_cut_off_begins_with_the_process_the_one_before_ended_with() -> None:
    """Both need two processes; the one in the middle is set up once."""
    plan = plan_queue(queue(box(1, 0, (0, 25), (1, 25)), box(2, 1, (1, 30), (2, 25))))

    assert [run.process for run in plan.runs] == [0, 1, 1, 2]
    assert plan.score.set_up == 60


def test_what_is_set_up_now_is_worked_first() -> None:
    """The bench's set-up is not paid again when its process may begin."""
    work = queue(box(1, 0, (0, 20), (1, 20)))

    assert [run.process for run in plan_queue(replace(work, set_up_now=1)).runs] == [1, 0]
    assert plan_queue(replace(work, set_up_now=1)).score.set_up == 20


def test_when_not_everybody_can_be_helped_the_long_box_waits() -> None:
    """One box is late instead of two, and gets the first cut-off that bears it."""
    plan = plan_queue(queue(box(1, 0, (0, 90)), box(2, 0, (0, 30)), box(3, 0, (0, 30))))

    assert plan.late == (1,)
    assert plan.honest == {1: 1}
    assert plan.score.tardiness == 100


def test_a_box_that_must_not_slip_stays() -> None:
    """With more weight than the two others together the long box is on time."""
    plan = plan_queue(queue(box(1, 0, (0, 70), weight=3), box(2, 0, (0, 30)), box(3, 0, (0, 30))))

    assert plan.late == (2, 3)


def test_sharing_the_pain_gives_nobody_up() -> None:
    """Earliest due date first: the long box keeps its turn, and those behind it are late."""
    boxes = queue(box(1, 0, (0, 150)), box(2, 1, (0, 40)), box(3, 1, (1, 10)))
    shared = plan_queue(boxes, earliest_due_first=True)

    assert order(shared) == [(100,), (200,), (300,)]
    assert shared.late == (1, 2, 3)
    assert plan_queue(boxes).late == (1,)


def test_a_box_whose_cut_off_has_passed_is_late_from_now_on() -> None:
    """It is late whatever is done, and takes nobody's time: its tardiness is the next cut-off that bears it."""
    plan = plan_queue(queue(box(1, -1, (0, 50)), box(2, 0, (1, 70))))

    assert plan.late == (1,)
    assert plan.honest == {1: 1}
    assert plan.score.tardiness == 200


def test_cut_offs_may_lie_in_the_past() -> None:
    """What was due before now is late, with the first cut-off still ahead for its date."""
    plan = plan_queue(queue(box(1, 0, (0, 10)), box(2, 1, (0, 10)), cutoffs=(-50, 0, 100)))

    assert plan.late == (1, 2)
    assert plan.honest == {1: 2, 2: 2}


def test_work_beyond_every_cut_off_has_no_date_of_its_own() -> None:
    """When the last cut-off is too early the date is beyond them all, and the tardiness runs to its finish."""
    plan = plan_queue(queue(box(1, 0, (0, 1_000))))

    assert plan.honest == {1: 3}
    assert plan.score.tardiness == 1_020 - 100


def test_what_was_promised_to_nobody_comes_last() -> None:
    """It comes after what was promised, and first what goes on with the process that is set up."""
    plan = plan_queue(queue(box(1, None, (0, 20)), box(2, None, (1, 20)), box(3, 0, (1, 30))))

    assert order(plan) == [(300,), (200,), (100,)]
    assert plan.score.set_up == 40


def test_without_cut_offs_everything_is_grouped() -> None:
    """Only work that was promised to nobody, and no cut-off: each process is set up once."""
    plan = plan_queue(queue(box(1, None, (0, 5), (1, 5)), box(2, None, (0, 5), (1, 5)), cutoffs=()))

    assert plan.score.set_up == 40


def test_ten_thousand_knives_in_one_box() -> None:
    """They are a thousand runs of ten, and the box ends with the last of them."""
    plan = plan_queue(queue(box(1, 0, *[(0, 1)] * 10_000), saved=0))

    assert len(plan.runs) == 1_000
    assert plan.finish == {1: 10_000 + 1_000 * 20}


def test_knives_and_set_ups_that_take_no_time() -> None:
    """Nothing takes any time, so nobody is late, even at a cut-off that is now."""
    work = queue(box(1, 0, (0, 0)), box(2, 1, (1, 0)), cutoffs=(0, 5))
    plan = plan_queue(replace(work, processes=(QueueProcess(set_up_seconds=0, run_size=10),) * 2))

    assert plan.late == ()
    assert set(plan.finish.values()) == {0}


def test_half_a_second_of_a_repeated_set_up_counts_whole() -> None:
    """A set-up of 5 s, half of it saved, costs 3 s again."""
    odd = QueueProcess(set_up_seconds=5, run_size=1)
    work = replace(queue(box(1, 0, (0, 1), (0, 1)), saved=50), processes=(odd,))

    assert [run.set_up_seconds for run in plan_queue(work).runs] == [5, 3]


def test_each_process_has_a_run_size_of_its_own() -> None:
    """A process of which two fit in a run pays three set-ups for five knives, and is so late; a bigger one pays one."""
    two, ten = QueueProcess(set_up_seconds=20, run_size=2), QueueProcess(set_up_seconds=20, run_size=10)
    five = box(1, 0, *[(0, 10)] * 5)
    plans = [
        plan_queue(replace(queue(five, box(2, 2, *[(1, 1)] * 5), saved=0), processes=(process, ten)))
        for process in (two, ten)
    ]

    assert [[len(run.knife_ids) for run in plan.runs if run.process == 0] for plan in plans] == [[2, 2, 1], [5]]
    assert [plan.late for plan in plans] == [(1,), ()]
    assert [sorted(len(run.knife_ids) for run in plan.runs if run.process == 1) for plan in plans] == [[5], [5]]


def test_slack_counts_set_ups_and_what_is_due() -> None:
    """Seconds left before each cut-off, boxes without a place and those beyond the last cut-off left out."""
    work = queue(box(1, 0, (0, 30)), box(2, 1, (0, 40)), box(3, 0, (2, 10)), box(4, 0, (2, 10)))

    assert slack(work, {1: 0, 2: 1, 3: 3}) == (50, 90, 190)


GOOD = queue(box(1, 0, (0, 10)), box(2, 1, (1, 10)))


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        (queue(run_size=0), "Process 0 has a run size of 0; at least 1 knife must fit in a run."),
        (replace(GOOD, saved_percent=101), "A repeated set-up saves 101 percent; give a share from 0 to 100."),
        (replace(GOOD, saved_percent=-1), "A repeated set-up saves -1 percent; give a share from 0 to 100."),
        (
            replace(GOOD, cutoffs=(5, 5)),
            "The cut-off at 5 s comes after the one at 5 s; give them in order, each once.",
        ),
        (replace(GOOD, set_up_now=3), "The bench is set up for process 3, which is none of the 3."),
        (
            replace(GOOD, processes=(QueueProcess(set_up_seconds=-1, run_size=1),) * 2),
            "Process 0 has a set-up of -1 s; give 0 or more.",
        ),
        (
            replace(GOOD, processes=(QueueProcess(set_up_seconds=5, repeat_set_up_seconds=6, run_size=1),) * 2),
            "Process 0 has a repeated set-up of 6 s, more than the 5 s of a first one; give at most as much.",
        ),
        (queue(box(1, 3, (0, 1))), "Box 1 is due at cut-off 3; give one of the 3 from 0 on, or -1."),
        (queue(box(1, -2, (0, 1))), "Box 1 is due at cut-off -2; give one of the 3 from 0 on, or -1."),
        (queue(box(1, 0, (0, 1), weight=0)), "Box 1 has a weight of 0; give 1 or more."),
        (queue(box(1, 0, (3, 1))), "Knife 100 needs process 3, which is none of the 3."),
        (queue(box(1, 0, (0, -1))), "Knife 100 takes -1 s; give 0 or more."),
        (queue(box(1, 0), box(1, 1)), "Box 1 is in the queue twice; nothing was planned."),
        (
            queue(box(1, 0, (0, 1)), replace(box(1, 0, (0, 1)), id=2)),
            "Knife 100 is in the queue twice; nothing was planned.",
        ),
    ],
)
def test_a_queue_without_meaning_is_refused_with_a_sentence(wrong: Queue, sentence: str) -> None:
    """The sentence names the figure and says what to give instead."""
    with pytest.raises(PlanError) as caught:
        plan_queue(wrong)

    assert str(caught.value) == sentence


def test_a_process_that_nobody_needs_does_not_matter() -> None:
    """The third process is never set up."""
    assert {run.process for run in plan_queue(GOOD).runs} == {0, 1}


def test_equal_knives_of_two_boxes_are_told_apart_by_their_boxes_and_not_by_their_ids() -> None:
    """Which of two equal knives is pulled ahead follows from what their boxes hold: other ids, the same score."""
    boxes = (
        QueueBox(id=2, due=None, weight=2, knives=_knives((20, 7), (21, 11))),
        QueueBox(id=3, due=0, knives=_knives((30, 17))),
        QueueBox(id=4, due=None, knives=_knives((40, 13), (41, 22))),
        QueueBox(id=5, due=None, knives=_knives((50, 11), (51, 30), (52, 7))),
    )
    other = tuple(replace(box, knives=tuple(replace(knife, id=99 - knife.id) for knife in box.knives)) for box in boxes)
    scores = {plan_queue(queue(*some, cutoffs=(75, 80, 85, 90), run_size=2, saved=0)).score for some in (boxes, other)}

    assert len(scores) == 1


def _knives(*knives: tuple[int, int]) -> tuple[QueueKnife, ...]:
    """Knives of the first process, each with its id and seconds."""
    return tuple(QueueKnife(id=knife_id, process=0, seconds=seconds) for knife_id, seconds in knives)
