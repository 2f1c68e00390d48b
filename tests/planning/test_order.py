"""The day list: who comes first, what is worked together, and what it takes by the clock."""

from dataclasses import replace

import pytest

from queueboard.errors import QueueboardError
from queueboard.planning.errors import PlanError
from queueboard.values.plan import BoxWork, PlanRules, ProcessWork, RunUnderWay
from queueboard.words import Lateness, RunReason
from tests.planning.work import PLAIN, SERRATED, bench_days, box_work, free, knife_work, order_of, planned
from tests.plans import NOW, at


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

    assert sorted((run.process, run.minutes) for run in plan.runs) == [("plain", 25), ("serrated", 6)]
    assert plan.forecasts[0].finish == at(9, 43)
    assert plan.forecasts[0].minutes_left == 31
    assert plan.work_minutes_today == 31


def test_a_set_up_is_paid_by_each_change_of_process() -> None:
    """90 s before the plain run and 30 s before the serrated one make 31 minutes into 33."""
    plan = planned(walk_in())

    assert sorted(run.set_up_seconds for run in plan.runs) == [30, 90]
    assert plan.runs[-1].end_second == 33 * 60


def test_a_second_run_of_the_same_process_pays_nothing() -> None:
    """Three knives in runs of two: the belts are up for the second run."""
    two = ProcessWork(name="plain", set_up_seconds=60, run_size=2)

    plan = planned(box_work(1, knife_work(101), knife_work(102), knife_work(103)), processes=(two,))

    assert [(run.knife_ids, run.set_up_seconds) for run in plan.runs] == [((101, 102), 60), ((103,), 0)]
    assert plan.runs[-1].end_second == 19 * 60


def test_seconds_are_kept_until_they_are_told() -> None:
    """Four set-ups of 20 s between two processes add 80 s in all, not none and not four minutes."""
    twenty = tuple(ProcessWork(name=name, set_up_seconds=20, run_size=1) for name in ("plain", "thin"))
    boxes = tuple(
        box_work(n, knife_work(n * 100 + 1, 400, process=("plain", "thin")[n % 2]), ship_by=at(16, 20, days=n - 1))
        for n in range(1, 5)
    )

    plan = planned(*boxes, processes=twenty)

    assert [run.end_second for run in plan.runs] == [n * (400 * 60 + 20) for n in range(1, 5)]


def test_the_bench_and_what_was_set_next_lead() -> None:
    """What lies on the bench comes first, then what a person set next, whatever is due; then what is due soonest."""
    begun = box_work(1, knife_work(101, begun=True))
    pinned = replace(box_work(2, knife_work(201), ship_by=at(15, days=5)), this_next=True)
    today = box_work(3, knife_work(301), ship_by=at(15))

    plan = planned(today, pinned, begun, box_work(4, knife_work(401)), processes=(free(PLAIN, run_size=1),))

    assert order_of(plan) == (101, 201, 301, 401)
    assert [run.why for run in plan.runs] == [
        RunReason.BEGUN,
        RunReason.THIS_NEXT,
        RunReason.DUE_TODAY,
        RunReason.NO_PROMISE,
    ]


def test_a_label_that_dies_is_a_cut_off() -> None:
    """A box whose label dies today is due today, whatever was promised; one that is dead already moves nothing up."""
    due = at(15, days=3)
    dies = replace(box_work(1, knife_work(101), ship_by=due), label_by=at(15))
    dead = replace(box_work(2, knife_work(201), ship_by=due), label_by=at(15, days=-1))
    other = box_work(3, knife_work(301), ship_by=at(15, days=2))

    plan = planned(dies, dead, other, processes=(free(PLAIN, run_size=1),))

    assert order_of(plan) == (101, 301, 201)
    assert plan.runs[0].why is RunReason.LABEL_TODAY


HEAVY = box_work(1, knife_work(101, 60), ship_by=at(10, 12))


@pytest.mark.parametrize(
    "heavy",
    [
        pytest.param(replace(HEAVY, rush=True), id="rush"),
        pytest.param(replace(HEAVY, never_slip=True), id="never slip"),
        pytest.param(replace(HEAVY, put_off=True), id="put off once"),
    ],
)
def test_a_box_that_must_not_slip_is_not_given_up(heavy: BoxWork) -> None:
    """Where one of two boxes must be late, it is not the one with a weight, though it takes longer."""
    light = box_work(2, knife_work(201, 20), ship_by=at(10, 12))

    late = {
        forecast.box_id
        for forecast in planned(heavy, light, processes=(free(PLAIN),)).forecasts
        if forecast.lateness is Lateness.WILL_BE_LATE
    }

    assert late == {2}


def test_who_cannot_be_on_time_stands_behind_who_can() -> None:
    """With two boxes for an hour and eighty minutes of work the longer one is late, and says so as its reason."""
    boxes = [box_work(n, knife_work(n * 100 + 1, n * 20), ship_by=at(10, 12)) for n in (1, 3)]

    plan = planned(*boxes, processes=(free(PLAIN, run_size=1),))

    assert [(run.knife_ids, run.why) for run in plan.runs] == [
        ((101,), RunReason.DUE_TODAY),
        ((301,), RunReason.LATE_EITHER_WAY),
    ]


def test_sharing_the_pain_gives_up_nobody() -> None:
    """With the switch set, boxes come by their ship-by, whoever is late for it."""
    long, short = (
        box_work(1, knife_work(101, 90), ship_by=at(10, 12)),
        box_work(2, knife_work(201, 20), ship_by=at(10, 30)),
    )
    share = PlanRules(earliest_due_first=True)

    assert order_of(planned(long, short, processes=(free(PLAIN, run_size=1),), rules=share)) == (101, 201)
    assert order_of(planned(long, short, processes=(free(PLAIN, run_size=1),))) == (201, 101)


def test_a_run_under_way_stays_whole_and_with_its_person() -> None:
    """Two people: K's run goes on as it was begun and takes what is left of it; J works the next run beside it."""
    begun = [replace(knife_work(100 + n, 10, begun=True), run_id=7) for n in (1, 2)]
    under_way = (RunUnderWay(run_id=7, by="K", worked_seconds=300),)
    rules = PlanRules(people=2)

    plan = planned(box_work(1, *begun), box_work(2, knife_work(201, 10)), rules=rules, under_way=under_way)

    assert [(run.knife_ids, run.start_second, run.end_second) for run in plan.runs] == [
        ((101, 102), 0, 900),
        ((201,), 0, 90 + 600),
    ]
    assert plan.runs[0].under_way == under_way[0]


def test_what_is_due_together_is_grouped_by_process() -> None:
    """Two boxes of one cut-off share their runs: all plain knives, then all serrated ones."""
    boxes = [
        box_work(n, knife_work(n * 100 + 1), knife_work(n * 100 + 2, process="serrated"), ship_by=at(15, days=1))
        for n in (1, 2)
    ]

    assert sorted(run.knife_ids for run in planned(*boxes).runs) == [(101, 201), (102, 202)]


def test_what_is_late_already_is_due_together() -> None:
    """Boxes that missed different days share their runs now: their order among each other saves nobody."""
    boxes = [
        box_work(n, knife_work(n * 100 + 1), knife_work(n * 100 + 2, process="serrated"), ship_by=at(15, days=-n))
        for n in (1, 2)
    ]

    assert sorted(sorted(run.knife_ids) for run in planned(*boxes).runs) == [[101, 201], [102, 202]]


def test_work_is_pulled_ahead_where_it_saves_a_set_up() -> None:
    """A box for the day after tomorrow shares the runs of one for tomorrow when that makes nobody late."""
    early = box_work(1, knife_work(101), knife_work(102, process="serrated"), ship_by=at(10, days=1))
    later = box_work(2, knife_work(201), knife_work(202, process="serrated"), ship_by=at(15, days=2))

    plan = planned(early, later)

    assert sum(run.set_up_seconds for run in plan.runs) == 90 + 30
    assert all(forecast.lateness is Lateness.ON_TIME for forecast in plan.forecasts)


def test_nobody_is_made_late_to_save_a_set_up() -> None:
    """With no minute to spare before ten o'clock the later box waits for a set-up of its own."""
    early = box_work(1, knife_work(101, 20), knife_work(102, 24, process="serrated"), ship_by=at(9, 58))
    later = box_work(2, knife_work(201), knife_work(202, process="serrated"), ship_by=at(15, days=2))

    plan = planned(early, later)

    assert set(order_of(plan)[:2]) == {101, 102}
    assert plan.forecasts[0].lateness is Lateness.TIGHT
    assert plan.forecasts[0].slack_minutes == 0


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

    assert (plan.runs[0].start, plan.runs[0].end, plan.runs[0].end_second) == (NOW, None, 6000)


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
