"""Hand-built work for the planner, and shapes of work that hypothesis draws."""

from datetime import datetime, timedelta
from itertools import starmap
from typing import Any

from hypothesis import strategies as st

from queueboard.planning.order import USUAL, plan_work
from queueboard.values.plan import BenchWindow, BoxWork, KnifeWork, Plan, PlanRules, ProcessWork, RunUnderWay
from tests.plans import NOW, at

PLAIN = ProcessWork(name="plain", set_up_seconds=90, run_size=12)
SERRATED = ProcessWork(name="serrated", set_up_seconds=30, run_size=6)
THIN = ProcessWork(name="thin", set_up_seconds=75, run_size=3)
PROCESSES = (PLAIN, SERRATED, THIN)


def free(process: ProcessWork, *, run_size: int = 12) -> ProcessWork:
    """The same process with its belts already up."""
    return ProcessWork(name=process.name, set_up_seconds=0, run_size=run_size)


def knife_work(
    knife_id: int,
    minutes: int = 6,
    *,
    process: str = "plain",
    handling_minutes: int = 3,
    rework: bool = False,
    begun: bool = False,
) -> KnifeWork:
    """A knife for the bench; its tag is its id, split as box * 100 + number."""
    return KnifeWork(
        knife_id=knife_id,
        tag=f"{knife_id // 100}-{knife_id % 100}",
        process=process,
        seconds=minutes * 60,
        handling_minutes=handling_minutes,
        rework=rework,
        begun=begun,
    )


def box_work(number: int, *knives: KnifeWork, ship_by: datetime | None = None) -> BoxWork:
    """A box whose id is its number."""
    return BoxWork(box_id=number, number=number, ship_by=ship_by, knives=knives)


def bench_days(days: int = 10, *, minutes: int = 420) -> tuple[BenchWindow, ...]:
    """A stretch of bench time from 09:12, the time of NOW, on this and the following days."""
    starts = (at(NOW.hour, NOW.minute, days=day) for day in range(days))
    return tuple(BenchWindow(start=start, end=start + timedelta(minutes=minutes)) for start in starts)


def planned(
    *boxes: BoxWork,
    processes: tuple[ProcessWork, ...] = PROCESSES,
    windows: tuple[BenchWindow, ...] | None = None,
    fixed_order: tuple[tuple[int, ...], ...] = (),
    now: datetime = NOW,
    rules: PlanRules = USUAL,
    under_way: tuple[RunUnderWay, ...] = (),
) -> Plan:
    """The plan of these boxes on the ten days from NOW; boxes leave at 15:00."""
    windows = bench_days() if windows is None else windows
    leaves = tuple(at(15, days=day) for day in range(11))
    return plan_work(boxes, processes, windows, now, fixed_order, rules=rules, under_way=under_way, leaves=leaves).plan


def order_of(plan: Plan) -> tuple[int, ...]:
    """The knives in the order of the plan."""
    return tuple(knife_id for run in plan.runs for knife_id in run.knife_ids)


def runs_in(plan: Plan) -> tuple[tuple[int, ...], ...]:
    """The knives run by run: what a day list is fixed as."""
    return tuple(run.knife_ids for run in plan.runs)


SELDOM = st.sampled_from((False, False, False, False, True))
KNIVES = st.lists(
    st.tuples(
        st.integers(0, 30),
        st.sampled_from(tuple(process.name for process in PROCESSES)),
        st.booleans(),
        st.sampled_from((False, False, False, True)),
    ),
    max_size=6,
)
SHAPES = st.tuples(
    st.none() | st.sampled_from(tuple(at(hour, days=day) for hour in (10, 15, 17) for day in range(-2, 7))),
    st.none() | st.sampled_from(tuple(at(15, days=day) for day in range(-1, 5))),
    SELDOM,
    SELDOM,
    SELDOM,
    SELDOM,
    SELDOM,
    KNIVES,
)
"""What a box is but for its number: made once, for hypothesis looks long at a strategy that it has not seen yet."""


def _box(number: int, shape: tuple[Any, ...]) -> BoxWork:
    ship_by, label_by, promised_today, rush, this_next, waiting, ready_to_fetch, knives = shape
    return BoxWork(
        box_id=number,
        number=number,
        ship_by=ship_by,
        label_by=label_by,
        promised_today=promised_today,
        rush=rush,
        this_next=this_next,
        waiting=waiting,
        ready_to_fetch=ready_to_fetch,
        knives=tuple(
            knife_work(number * 100 + place, minutes, process=process, rework=rework, begun=begun)
            for place, (minutes, process, rework, begun) in enumerate(knives, 1)
        ),
    )


BOXES = st.lists(SHAPES, max_size=7).map(lambda some: tuple(starmap(_box, enumerate(some, 100))))
"""Up to seven boxes of up to six knives each, of every kind."""
