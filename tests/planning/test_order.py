"""The day list: who comes first, what is worked together, and what it takes by the clock."""

from dataclasses import replace
from datetime import timedelta

import pytest

from queueboard.errors import QueueboardError
from queueboard.planning.errors import PlanError
from queueboard.values.plan import BoxWork, ProcessWork
from queueboard.words import RunReason
from tests.planning.work import PLAIN, SERRATED, bench_days, box_work, free, knife_work, order_of, planned
from tests.plans import NOW, TODAY, at


def walk_in() -> BoxWork:
    """Two chef knives (one chipped), a paring knife and a bread knife, promised for 16:00.

    The minutes are the shop's defaults by kind and condition: common practice, no source.
    """
    return box_work(
        214,
        knife_work(21401, 6),
        knife_work(21402, 15),
        knife_work(21403, 4),
        knife_work(21404, 6, process="serrated"),
        ship_by=at(16),
    )


def test_a_counter_box_takes_its_hands_on_minutes() -> None:
    """With the belts up, 6 + 15 + 4 + 6 minutes from 09:12 are 31, done at 09:43."""
    plan = planned(walk_in(), processes=(free(PLAIN), free(SERRATED)))

    assert [(run.process, run.minutes, run.start_minute, run.end_minute) for run in plan.runs] == [
        ("plain", 25, 0, 25),
        ("serrated", 6, 25, 31),
    ]
    assert plan.forecasts[0].finish == at(9, 43)
    assert plan.forecasts[0].minutes_left == 31
    assert plan.work_minutes_today == 31


def test_a_set_up_is_paid_by_each_change_of_process() -> None:
    """90 s before the plain run and 30 s before the serrated one make 31 minutes into 33."""
    plan = planned(walk_in())

    assert [run.set_up_seconds for run in plan.runs] == [90, 30]
    # 90 s and 25 min are 26.5, told as 27; the half minute is not lost: 31 min and 120 s are 33.
    assert [(run.start_minute, run.end_minute) for run in plan.runs] == [(0, 27), (27, 33)]


def test_a_second_run_of_the_same_process_pays_nothing() -> None:
    """Three knives in runs of two: the belts are up for the second run."""
    two = ProcessWork(name="plain", set_up_seconds=60, run_size=2)

    plan = planned(box_work(1, knife_work(101), knife_work(102), knife_work(103)), processes=(two,))

    assert [(run.knife_ids, run.set_up_seconds) for run in plan.runs] == [((101, 102), 60), ((103,), 0)]
    assert plan.runs[-1].end_minute == 19


def test_roundings_do_not_pile_up() -> None:
    """Four set-ups of 20 s between two processes add one minute in all, not none and not four."""
    twenty = tuple(ProcessWork(name=name, set_up_seconds=20, run_size=1) for name in ("plain", "thin"))
    boxes = tuple(
        box_work(n, knife_work(n * 100 + 1, 10, process=("plain", "thin")[n % 2]), ship_by=at(12, days=n))
        for n in range(1, 5)
    )

    plan = planned(*boxes, processes=twenty)

    assert [run.end_minute for run in plan.runs] == [10, 21, 31, 41]


def one_of_each_rank() -> tuple[BoxWork, ...]:
    """A box for each rank, numbered in the order in which they must come."""
    friday = at(15, days=1)
    return (
        box_work(1, knife_work(101, begun=True)),
        replace(box_work(2, knife_work(201)), this_next=True),
        box_work(3, knife_work(301), ship_by=at(15, days=-1)),
        box_work(4, knife_work(401), ship_by=at(15)),
        replace(box_work(5, knife_work(501), ship_by=friday), label_last_day=TODAY),
        replace(box_work(6, knife_work(601), ship_by=friday), label_last_day=TODAY + timedelta(days=1)),
        replace(box_work(7, knife_work(701), ship_by=at(15, days=5)), rush=True),
        box_work(8, knife_work(801, rework=True), ship_by=at(15, days=6)),
        box_work(9, knife_work(901), ship_by=friday),
        box_work(10, knife_work(1001), ship_by=at(15, days=4)),
        box_work(11, knife_work(1101)),
    )


def test_the_ranks_follow_the_trade() -> None:
    """Begun, this next, promised today, labels that die, rush, rework, by ship-by, then what was never promised."""
    plan = planned(*reversed(one_of_each_rank()))

    assert order_of(plan) == (101, 201, 301, 401, 501, 601, 701, 801, 901, 1001, 1101)
    assert list(dict.fromkeys(run.why for run in plan.runs)) == list(RunReason)


def test_a_label_that_is_dead_already_moves_nothing_up() -> None:
    """Hurrying cannot save a label whose last day was yesterday."""
    dead = replace(box_work(1, knife_work(101), ship_by=at(15, days=3)), label_last_day=TODAY - timedelta(days=1))

    plan = planned(dead, box_work(2, knife_work(201), ship_by=at(15, days=2)))

    assert order_of(plan) == (201, 101)


def test_what_is_due_together_is_grouped_by_process() -> None:
    """Two boxes of one cut-off share their runs: all plain knives, then all serrated ones."""
    boxes = [
        box_work(n, knife_work(n * 100 + 1), knife_work(n * 100 + 2, process="serrated"), ship_by=at(15, days=1))
        for n in (1, 2)
    ]

    assert [run.knife_ids for run in planned(*boxes).runs] == [(101, 201), (102, 202)]


def test_what_is_late_already_is_due_together() -> None:
    """Boxes that missed different days share their runs now: their order among each other saves nobody."""
    boxes = [
        box_work(n, knife_work(n * 100 + 1), knife_work(n * 100 + 2, process="serrated"), ship_by=at(15, days=-n))
        for n in (1, 2)
    ]

    assert [run.knife_ids for run in planned(*boxes).runs] == [(201, 101), (202, 102)]


def test_an_earlier_cut_off_of_the_day_is_not_held_up_by_a_later_one() -> None:
    """A box for ten o'clock does not wait for a run shared with boxes for the afternoon."""
    early = box_work(2, knife_work(201), knife_work(202, process="serrated"), ship_by=at(10, days=1))
    later = box_work(1, knife_work(101), knife_work(102, process="serrated"), ship_by=at(15, days=1))

    assert [run.knife_ids for run in planned(early, later).runs] == [(201,), (202,), (102,), (101,)]


def test_a_group_goes_on_with_the_belts_that_are_up() -> None:
    """The next day's group starts with the process on which the day before ended: one set-up less."""
    first = box_work(1, knife_work(101), knife_work(102, process="serrated"), ship_by=at(15, days=1))
    second = box_work(2, knife_work(201), knife_work(202, process="serrated"), ship_by=at(15, days=2))

    plan = planned(first, second)

    assert [run.process for run in plan.runs] == ["plain", "serrated", "serrated", "plain"]
    assert [run.set_up_seconds for run in plan.runs] == [90, 30, 0, 90]


def test_a_run_may_stop_overnight() -> None:
    """A run that is longer than what is left today goes on at the next bench time."""
    plan = planned(box_work(1, knife_work(101, 100)), processes=(free(PLAIN),), windows=bench_days(2, minutes=60))

    assert (plan.runs[0].start, plan.runs[0].end) == (NOW, at(9, 52, days=1))
    assert (plan.bench_minutes_today, plan.work_minutes_today) == (60, 60)


def test_work_that_ends_at_closing_time_ends_today() -> None:
    """An hour of work fills an hour of bench; what follows starts the next day."""
    boxes = (box_work(1, knife_work(101, 60), ship_by=at(17)), box_work(2, knife_work(201, 5), ship_by=at(17, days=1)))

    plan = planned(*boxes, processes=(free(PLAIN),), windows=bench_days(2, minutes=60))

    assert plan.runs[0].end == at(10, 12)
    assert plan.runs[1].start == at(9, 12, days=1)
    assert plan.work_minutes_today == 60


def test_a_run_beyond_the_known_bench_time_has_no_clock() -> None:
    """Beyond the horizon a run keeps its minutes and loses its clock."""
    plan = planned(box_work(1, knife_work(101, 100)), processes=(free(PLAIN),), windows=bench_days(1, minutes=60))

    assert (plan.runs[0].start, plan.runs[0].end, plan.runs[0].end_minute) == (NOW, None, 100)


def test_bench_time_that_has_passed_is_not_counted() -> None:
    """A stretch that began before now counts from now on, and one that ended before now not at all."""
    plan = planned(box_work(1, knife_work(101, 30)), processes=(free(PLAIN),), now=at(15, 42))

    assert plan.bench_minutes_today == 30
    assert plan.runs[0].end == at(16, 12)


def test_a_waiting_box_is_not_worked() -> None:
    """A box that waits for an answer is in no run and still has a forecast."""
    plan = planned(replace(box_work(1, knife_work(101)), waiting=True))

    assert plan.runs == ()
    assert plan.forecasts[0].minutes_left == 6


def test_handling_is_told_apart() -> None:
    """A run tells the handling minutes of its knives, and they move no finish."""
    plan = planned(box_work(1, knife_work(101, 10, handling_minutes=90)), processes=(free(PLAIN),))

    assert plan.runs[0].handling_minutes == 90
    assert plan.forecasts[0].finish == at(9, 22)


@pytest.mark.parametrize(
    ("boxes", "processes", "said"),
    [
        ((), (ProcessWork(name="plain", set_up_seconds=0, run_size=0),), "Process plain has a run size of 0"),
        ((box_work(4, knife_work(403)),), (SERRATED,), "Knife 4-3 needs the process plain"),
        ((box_work(4, knife_work(403)), box_work(5, knife_work(403))), (PLAIN,), "Knife 4-3 is in the work twice"),
    ],
)
def test_work_without_meaning_is_refused(
    boxes: tuple[BoxWork, ...], processes: tuple[ProcessWork, ...], said: str
) -> None:
    """A run size of 0, an unknown process and a knife given twice are refused with a sentence."""
    with pytest.raises(PlanError) as caught:
        planned(*boxes, processes=processes)

    assert said in str(caught.value)
    assert isinstance(caught.value, QueueboardError)
    assert isinstance(caught.value, ValueError)


def test_nothing_to_do_is_an_empty_plan() -> None:
    """A shop without boxes has no runs and a bench full of free minutes."""
    plan = planned()

    assert (plan.runs, plan.forecasts, plan.bench_minutes_today) == ((), (), 420)
