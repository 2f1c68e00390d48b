"""What holds for every plan, whatever the work."""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from queueboard.values.plan import BenchWindow, BoxWork, Plan, PlanRules
from queueboard.words import Lateness, OrderWord, RunReason
from tests.planning.work import BOXES, PROCESSES, bench_days, order_of, planned, runs_in
from tests.plans import NOW

SIZES = {process.name: process.run_size for process in PROCESSES}
SET_UPS = {process.name: process.set_up_seconds for process in PROCESSES}


def workable(boxes: Sequence[BoxWork]) -> list[int]:
    """The knives that must be in the plan."""
    return sorted(knife.knife_id for box in boxes if not box.waiting for knife in box.knives)


def instant_after(seconds: int, windows: Sequence[BenchWindow]) -> datetime | None:
    """When this much bench time has been worked, counted second by second; None beyond the windows."""
    left = seconds
    for window in windows:
        length = round((window.end.astimezone(UTC) - window.start.astimezone(UTC)).total_seconds())
        if left <= length:
            return window.start.astimezone(UTC) + timedelta(seconds=left)
        left -= length
    return None


@given(BOXES)
def test_every_workable_knife_is_there_exactly_once(boxes: tuple[BoxWork, ...]) -> None:
    """Every knife of a box that does not wait stands in exactly one run."""
    assert sorted(order_of(planned(*boxes))) == workable(boxes)


@given(BOXES)
def test_no_run_is_mixed_or_too_big(boxes: tuple[BoxWork, ...]) -> None:
    """A run holds one process, and no more knives than fit."""
    process_of = {knife.knife_id: knife.process for box in boxes for knife in box.knives}

    for run in planned(*boxes).runs:
        assert {process_of[knife_id] for knife_id in run.knife_ids} == {run.process}
        assert 1 <= len(run.knife_ids) <= SIZES[run.process]


@given(BOXES)
def test_the_times_add_up_from_the_runs_alone(boxes: tuple[BoxWork, ...]) -> None:
    """Minutes, set-ups, clock and finishes counted again by hand from the list of runs agree with the plan."""
    seconds_of = {knife.knife_id: knife.seconds for box in boxes for knife in box.knives}
    windows = bench_days(3, minutes=97)
    plan = planned(*boxes, windows=windows)
    seconds, process, ends = 0, "", dict[int, datetime | None]()

    for run in plan.runs:
        assert run.start_second == seconds
        paid = 0 if run.process == process else SET_UPS[run.process]
        assert run.set_up_seconds == paid
        seconds += paid + sum(seconds_of[knife_id] for knife_id in run.knife_ids)
        assert run.end_second == seconds
        if run.end_second > run.start_second:
            assert run.end == instant_after(seconds, windows)
        process = run.process
        ends.update(dict.fromkeys(run.knife_ids, run.end))

    for box, seen in zip(sorted(boxes, key=lambda b: b.box_id), plan.forecasts, strict=True):
        finishes = [ends[k.knife_id] for k in box.knives if not box.waiting]
        known = [end for end in finishes if end is not None]
        assert seen.finish == (max(known) if known and len(known) == len(finishes) else None)


@given(BOXES.flatmap(lambda boxes: st.tuples(st.just(boxes), st.permutations(boxes))))
def test_the_order_of_the_input_does_not_matter(pair: tuple[tuple[BoxWork, ...], list[BoxWork]]) -> None:
    """The same boxes in another order give the very same plan."""
    boxes, shuffled = pair

    assert planned(*shuffled) == planned(*boxes)


@given(BOXES)
def test_what_is_on_the_bench_and_set_next_leads(boxes: tuple[BoxWork, ...]) -> None:
    """Nothing is planned ahead of the bench in use, and nothing else ahead of what a person set next."""
    by_hand = (RunReason.BEGUN, RunReason.THIS_NEXT)
    places = [by_hand.index(run.why) if run.why in by_hand else 2 for run in planned(*boxes).runs]

    assert places == sorted(places)


@given(BOXES, st.integers(1, 3))
def test_more_people_never_work_a_knife_twice(boxes: tuple[BoxWork, ...], people: int) -> None:
    """Each of several people works one run at a time, and every knife is worked once."""
    plan = planned(*boxes, rules=PlanRules(people=people))

    assert sorted(order_of(plan)) == workable(boxes)
    for moment in {run.start_second for run in plan.runs}:
        assert sum(run.start_second <= moment < run.end_second for run in plan.runs) <= people


@given(BOXES)
def test_lateness_says_what_the_clock_says(boxes: tuple[BoxWork, ...]) -> None:
    """LATE means ship-by has passed, WILL BE LATE that it has not; only these two carry minutes, TIGHT does not."""
    ship_by = {box.box_id: box.ship_by for box in boxes}
    in_time = (Lateness.ON_TIME, Lateness.TIGHT)

    for seen in planned(*boxes).forecasts:
        due = ship_by[seen.box_id]
        assert (seen.lateness in in_time) == (seen.late_minutes == 0)
        if seen.lateness not in in_time:
            assert due is not None
            assert (due < NOW) == (seen.lateness is Lateness.LATE)


@given(BOXES)
def test_a_plan_fixed_as_it_stands_is_the_same_plan(boxes: tuple[BoxWork, ...]) -> None:
    """Fixing the day list changes nothing and is no news."""
    plan = planned(*boxes)

    assert planned(*boxes, fixed_order=runs_in(plan)) == plan


@given(BOXES.flatmap(lambda boxes: st.tuples(st.just(boxes), st.permutations(workable(boxes)), st.integers(0, 5))))
@settings(max_examples=200)
def test_a_fixed_order_is_kept(drawn: tuple[tuple[BoxWork, ...], list[int], int]) -> None:
    """Whatever list was fixed, what is neither begun nor a new last chance keeps its order; what is new comes last."""
    boxes, order, new = drawn
    listed = order[new:]

    plan = planned(*boxes, fixed_order=tuple((knife_id,) for knife_id in listed))

    assert sorted(order_of(plan)) == workable(boxes)
    moved = begun_or_last_chance(plan)
    assert [k for k in order_of(plan) if k in listed and k not in moved] == [k for k in listed if k not in moved]
    assert not listed or tail_is_new(plan, set(listed) | moved)


def begun_or_last_chance(plan: Plan) -> set[int]:
    """Knives that may lead a fixed list, or were moved up in it."""
    leading = {RunReason.BEGUN, RunReason.THIS_NEXT}
    moved = {change.tag for change in plan.changes if change.what is OrderWord.LAST_CHANCE}
    return {
        knife_id
        for run in plan.runs
        for knife_id in run.knife_ids
        if run.why in leading or f"{knife_id // 100}-{knife_id % 100}" in moved
    }


def tail_is_new(plan: Plan, known: set[int]) -> bool:
    """True when no known knife stands behind one that is not."""
    order = order_of(plan)
    return all(knife_id not in known for knife_id in order[len([k for k in order if k in known]) :])
