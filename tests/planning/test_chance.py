"""How likely a box is late, by the normal formula."""

from dataclasses import replace
from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.planning.chance import (
    HEAVY,
    BoxChance,
    Doubt,
    Overload,
    alone,
    chance_late,
    chances,
    overloads,
    stretches,
)
from queueboard.planning.evaluation import Batch, evaluate
from queueboard.planning.learning import BOX_SD, KNIFE_CV, MeasuredRun, learn
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueueBox
from tests.planning.queues import DAY, KNIVES, box_of, doubt_of, queue_of, queues

Knives = list[tuple[int, int]]

SIX_SIGMA = 1e-9
"""About the chance of straying past six sigma, from which nobody tells one chance from another."""
SURE = 0.965
"""Up to here the chance never falls when work is added before.

Work of m seconds, which by itself strays by at most 0.54 m, moves the spread by at most as much; so the distance in
spreads, once below 0, cannot come nearer than 1 / 0.54 = 1.85, where the formula says 0.968.
"""


def batches_of(queue: Queue) -> list[Batch]:
    """The runs of the plan of a queue."""
    return [(run.process, run.knife_ids) for run in plan_queue(queue).runs]


def chance_of(box_id: int, queue: Queue, batches: list[Batch], doubt: Doubt) -> BoxChance:
    """What is said of one box when these runs are worked."""
    return next(c for c in chances(queue, evaluate(queue, batches), doubt) if c.box_id == box_id)


@pytest.mark.parametrize(
    ("spreads", "late"), [(0, 0.5), (1, 0.15866), (1.2816, 0.1), (1.96, 0.025), (-1.6449, 0.95), (3, 0.00135)]
)
def test_the_formula_is_the_normal_table(spreads: float, late: float) -> None:
    """Upper tails of the standard normal table as every handbook prints them (from memory)."""
    assert chance_late(spreads * 50, 2500) == pytest.approx(late, abs=2e-5)


def test_without_doubt_it_is_or_is_not() -> None:
    """No variance: on time to the second is on time."""
    assert chance_late(0, 0) == 0
    assert chance_late(-1, 0) == 1


def test_the_variance_by_hand() -> None:
    """Two knives of one box and one of another, counted by hand: knives, boxes, processes, shop and day."""
    queue = queue_of(box_of(1, 0, (0, 600), (0, 300)), box_of(2, 0, (1, 400)))
    doubt = doubt_of()
    plan = evaluate(queue, [(0, (100, 101)), (1, (200,))])
    last = stretches(queue, plan)[-1]

    knives = KNIFE_CV**2 * (600**2 + 300**2 + 400**2)
    boxes = BOX_SD**2 * (900**2 + 400**2)
    processes = 0.25**2 * (900**2 + 400**2)
    shop = (0.15 * 1300) ** 2
    assert last.end == 90 + 900 + 60 + 400
    assert last.variance(doubt) == pytest.approx(knives + boxes + processes + shop)
    assert doubt.bench_variance(DAY) == pytest.approx((0.156 * DAY) ** 2)
    said = chance_of(2, queue, [(0, (100, 101)), (1, (200,))], doubt)
    spread = sqrt(knives + boxes + processes + shop + (0.156 * DAY) ** 2)
    assert said.chance_late == pytest.approx(chance_late((DAY - 1450) / spread, 1))


def test_the_chance_is_taken_at_the_box_s_own_last_run() -> None:
    """Work that is due at the same cut-off but is done after the box does not touch its chance."""
    first, other = box_of(1, 0, (0, 900)), box_of(2, 0, *[(1, 900)] * 12)
    alone_said = chance_of(1, queue_of(first), [(0, (100,))], doubt_of())
    both = queue_of(first, other)
    batches: list[Batch] = [(0, (100,)), (1, tuple(knife.id for knife in other.knives))]

    assert chance_of(1, both, batches, doubt_of()) == alone_said
    assert chance_of(2, both, batches, doubt_of()).chance_late > alone_said.chance_late


def test_every_day_strays_by_itself() -> None:
    """Half of today is left, then whole days: their parts before the cut-off are squared one by one."""
    doubt = doubt_of(yield_sd=0.1, days=(5000, 8000, 10000))

    assert doubt.days_before(5000 + 8000 + 10000 + 3000) == [5000, 8000, 10000, 3000]
    assert doubt.days_before(4000) == [4000]
    assert doubt.bench_variance(6000) == pytest.approx(500**2 + 100**2)
    assert doubt.bench_variance(-1) == 0


def test_an_announced_box_makes_all_behind_it_less_sure() -> None:
    """What nobody has seen strays more, from the first of its knives on."""
    seen = box_of(1, 0, (0, 600))
    unseen = replace(seen, unseen_variance=90000.0)
    plan = evaluate(queue_of(seen), [(0, (100,))])

    assert stretches(queue_of(unseen), plan)[0].noise == stretches(queue_of(seen), plan)[0].noise + 90000
    assert alone(unseen, 3).noise == stretches(queue_of(unseen), plan)[0].noise


@given(queues(first_due=-1))
def test_a_chance_is_a_chance_and_agrees_with_the_minutes(queue: Queue) -> None:
    """Within 0 and 1; above a half exactly when the plan has the box late; sure for what is late already."""
    plan = plan_queue(queue)
    late_already = {box.id for box in queue.boxes if box.due == -1}

    for said in chances(queue, plan, doubt_of()):
        assert 0 <= said.chance_late <= 1
        assert (said.spare_seconds < 0) == (said.box_id in plan.late)
        assert (said.chance_late > 0.5) == (said.spare_seconds < 0)
        assert said.chance_late == 1 or said.box_id not in late_already


@given(queues(), KNIVES, st.data())
def test_a_box_added_before_makes_nobody_surer(
    queue: Queue, knives: list[tuple[int, int]], data: st.DataObject
) -> None:
    """Work put in anywhere never lowers the chance of being late of any box, but where that is all but certain."""
    batches = batches_of(queue)
    new = box_of(90, 3, *[(0, seconds) for _, seconds in knives][:10])
    place = data.draw(st.integers(0, len(batches)))
    more = replace(queue, boxes=(*queue.boxes, new))
    added: list[Batch] = [*batches[:place], (0, tuple(knife.id for knife in new.knives)), *batches[place:]]
    after = {said.box_id: said.chance_late for said in chances(more, evaluate(more, added), doubt_of())}

    for said in chances(queue, evaluate(queue, batches), doubt_of()):
        assert after[said.box_id] >= min(said.chance_late, SURE) - 1e-12


@given(queues(), st.integers(1, 1900), st.tuples(st.integers(500, 30000), st.integers(500, 30000)))
def test_fewer_minutes_make_nobody_surer(queue: Queue, fewer: int, days: tuple[int, int]) -> None:
    """When bench seconds before the cut-offs fall, no box's chance of being late does.

    Past six sigma it may, by less than can be told: what falls away of a last long day strays more than it bears.
    """
    batches, doubt = batches_of(queue), doubt_of(days=days)
    less = replace(queue, cutoffs=tuple(cutoff - fewer for cutoff in queue.cutoffs))
    before = chances(queue, evaluate(queue, batches), doubt)

    for said, now in zip(before, chances(less, evaluate(less, batches), doubt), strict=True):
        assert now.chance_late >= said.chance_late - SIX_SIGMA


@given(queues())
def test_what_was_learned_makes_the_work_surer(queue: Queue) -> None:
    """Ten thousand measured knives make the work of every run stray less than the priors do."""
    run = MeasuredRun(
        process=0, knives=9999, boxes=999, starter_seconds=10**6, estimated_seconds=10**6, measured_seconds=10**6
    )
    learned = learn([run, replace(run, process=1), replace(run, process=2)], 3)
    surer = Doubt(factors=learned.processes, yield_sd=0.156, days=(DAY,))

    for stretch in stretches(queue, plan_queue(queue)):
        assert stretch.variance(surer) < stretch.variance(doubt_of())


@given(queues())
def test_the_work_only_grows_and_ends_as_the_whole_queue(queue: Queue) -> None:
    """Run by run seconds and noise grow; at the end they are those of all boxes together, set-ups apart."""
    ends = stretches(queue, plan_queue(queue))
    total = [alone(box, 3) for box in queue.boxes]

    for before, after in pairwise(ends):
        assert after.noise >= before.noise
        assert all(late >= early for early, late in zip(before.seconds, after.seconds, strict=True))
    assert ends[-1].seconds == tuple(map(sum, zip(*(one.seconds for one in total), strict=True)))
    assert ends[-1].noise == pytest.approx(sum(one.noise for one in total))


def test_a_heavy_overload_is_said_instead_of_a_chance() -> None:
    """A cut-off with half a day more than fits names the seconds; one with less, and all before and after, do not."""
    fits, heavy = box_of(1, 0, (0, 900)), box_of(2, 1, *[(0, 1000)] * 10)
    queue = queue_of(fits, heavy, cutoffs=(1000, 5900, 30000))
    doubt = doubt_of(days=(10000,))

    assert overloads(queue, doubt) == (Overload(cutoff=1, seconds=90 + 900 + 10000 - 5900),)
    assert [said.overloaded for said in chances(queue, plan_queue(queue), doubt)] == [False, True]
    assert overloads(queue, doubt_of(days=(int(5090 / HEAVY) + 1,))) == ()


def test_boxes_past_their_cut_off_press_on_the_first() -> None:
    """What should have left already counts against the first cut-off, and it is surely late."""
    queue = queue_of(box_of(1, -1, *[(0, 1000)] * 10), cutoffs=(2000,))
    doubt = doubt_of(days=(10000,))

    assert overloads(queue, doubt) == (Overload(cutoff=0, seconds=90 + 10000 - 2000),)
    assert overloads(replace(queue, cutoffs=()), doubt) == ()
    (said,) = chances(queue, plan_queue(queue), doubt)
    assert said.chance_late == 1


def test_only_promised_work_has_a_chance() -> None:
    """A box without a promise, and one that has no knife left, are not spoken of."""
    queue = queue_of(box_of(1, None, (0, 900)), QueueBox(id=2, due=0, knives=()))

    assert chances(queue, plan_queue(queue), doubt_of()) == ()
