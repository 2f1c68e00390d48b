"""A label that dies lifts its box in the plan where that saves it, and nobody pays for one that cannot be saved."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from queueboard.words import Lateness, RunReason
from tests.planning.work import bench_days, box_work, knife_work, order_of, planned
from tests.plans import at

DAY = bench_days(10, minutes=120)
"""Two hours of bench time a day."""


def test_a_dying_label_lifts_its_box() -> None:
    """Promised for Friday, its label dies today: it comes before a box promised for tomorrow, which keeps its day."""
    dies = replace(box_work(1, knife_work(101, 60), ship_by=at(15, days=4)), label_by=at(15))
    tomorrow = box_work(2, knife_work(201, 100), ship_by=at(15, days=1))

    plan = planned(tomorrow, dies, windows=DAY)

    assert order_of(plan) == (101, 201)
    assert plan.runs[0].why is RunReason.LABEL_TODAY
    assert {one.lateness for one in plan.forecasts} <= {Lateness.ON_TIME, Lateness.TIGHT}
    without = planned(tomorrow, replace(dies, label_by=None), windows=DAY)
    assert order_of(without) == (201, 101)


def test_a_label_that_cannot_be_saved_lifts_nobody() -> None:
    """Three hours of work for a label that dies in two: the box goes by its promise, behind what is due sooner."""
    hopeless = replace(box_work(1, knife_work(101, 180), ship_by=at(15, days=4)), label_by=at(15))
    tomorrow = box_work(2, knife_work(201, 100), ship_by=at(15, days=1))
    later = box_work(3, knife_work(301, 100), ship_by=at(15, days=2))

    plan = planned(later, hopeless, tomorrow, windows=DAY)

    assert order_of(plan) == (201, 301, 101)
    assert RunReason.LABEL_TODAY not in {run.why for run in plan.runs}


def test_a_label_that_cannot_be_saved_costs_no_promise() -> None:
    """Its own promise holds too: given up for the label alone, it is not late."""
    hopeless = replace(box_work(1, knife_work(101, 180), ship_by=at(15, days=1)), label_by=at(15))
    large = box_work(2, knife_work(201, 180), ship_by=at(15, days=3))

    plan = planned(large, hopeless, windows=DAY)

    assert order_of(plan) == (101, 201)
    assert all(one.lateness not in {Lateness.LATE, Lateness.WILL_BE_LATE} for one in plan.forecasts)


@given(st.lists(st.tuples(st.integers(5, 90), st.integers(0, 5), st.integers(0, 5)), min_size=1, max_size=6))
def test_labels_that_are_all_lost_change_nothing(boxes: list[tuple[int, int, int]]) -> None:
    """Where no label can be saved the plan is the one without labels."""
    work = [
        box_work(n, knife_work(n * 100 + 1, minutes + 130), ship_by=at(15, days=day))
        for n, (minutes, day, _) in enumerate(boxes, 1)
    ]
    dying = [replace(box, label_by=at(10)) for box in work]

    assert order_of(planned(*dying, windows=DAY)) == order_of(planned(*work, windows=DAY))
