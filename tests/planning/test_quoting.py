"""Promises for new boxes, held against the plan with the box really in it."""

from collections.abc import Sequence
from dataclasses import replace
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.planning.announcing import Guess, announced
from queueboard.planning.chance import alone, chances
from queueboard.planning.evaluation import Batch, evaluate
from queueboard.planning.placing import Held, Margins, Place, Promised, places, promised, rooms
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueueBox, QueuePlan
from queueboard.planning.quoting import Quote, can_do, quote, rush_seconds
from tests.planning.queues import DAY, KNIVES, box_of, doubt_of, queue_of, queues

Knives = list[tuple[int, int]]
BARE = Margins(spreads=0)
"""Planned seconds alone."""
MARGINS = st.builds(
    Margins,
    spreads=st.sampled_from((0.0, 0.5, 1.28)),
    constant_seconds=st.integers(0, 1800),
    walk_in_seconds=st.integers(0, 1800),
)
NEW = 90


def ledger_of(queue: Queue) -> Promised:
    """The promises that the plan of a queue keeps."""
    return promised(queue, plan_queue(queue), doubt_of())


def with_box(ledger: Promised, box: QueueBox, place: Place, due: int) -> QueuePlan:
    """The plan with the new box really worked at its place."""
    runs: Sequence[Batch] = [(run.process, run.knife_ids) for run in ledger.plan.runs]
    queue = replace(ledger.queue, boxes=(*ledger.queue.boxes, replace(box, due=due)))
    return evaluate(queue, [*runs[: place.run], *place.block.batches, *runs[place.run :]])


def quoted(ledger: Promised, box: QueueBox, margins: Margins, offered: Sequence[int] | None = None) -> Quote:
    """The quote that there must be."""
    found = quote(ledger, box, margins, offered)
    assert found is not None
    return found


def far(queue: Queue) -> Queue:
    """The queue with one more cut-off, so far away that it bears everything."""
    return replace(queue, cutoffs=(*queue.cutoffs, queue.cutoffs[-1] + 10**6))


@given(queues(), KNIVES, MARGINS)
def test_a_promise_keeps_every_promise_already_made(queue: Queue, knives: Knives, margins: Margins) -> None:
    """Worked where the quote says, the new box is on time, and so is everybody who was, in the planned seconds."""
    ledger, box = ledger_of(far(queue)), box_of(NEW, None, *knives)
    found = quoted(ledger, box, margins)
    after = with_box(ledger, box, found.place, found.cutoff)

    assert set(after.late) <= set(ledger.plan.late)
    assert after.finish[NEW] == found.place.work.end
    assert found.open_seconds + found.own_seconds + found.spare_seconds == ledger.queue.cutoffs[found.cutoff]
    assert found.spare_seconds >= found.kept_seconds - 1


@given(queues(), KNIVES, MARGINS)
def test_one_cut_off_earlier_is_refused(queue: Queue, knives: Knives, margins: Margins) -> None:
    """The quoted cut-off can be done, and so can every later one; none before it can."""
    ledger, box = ledger_of(far(queue)), box_of(NEW, None, *knives)
    found = quoted(ledger, box, margins)

    answers = [can_do(ledger, box, cutoff, margins).yes for cutoff in range(len(ledger.queue.cutoffs))]
    assert answers == [cutoff >= found.cutoff for cutoff in range(len(answers))]


@given(queues(), KNIVES)
def test_no_earlier_place_keeps_all_promises(queue: Queue, knives: Knives) -> None:
    """Worked in one go before any earlier run, the new box makes somebody late who was not."""
    ledger, box = ledger_of(far(queue)), box_of(NEW, None, *knives)
    found = quoted(ledger, box, BARE)
    honest = {one.box_id: one.cutoff for one in ledger.held}
    told = replace(ledger.queue, boxes=tuple(replace(one, due=honest.get(one.id)) for one in ledger.queue.boxes))
    ledger = promised(told, evaluate(told, [(run.process, run.knife_ids) for run in ledger.plan.runs]), doubt_of())
    if found.place.run:
        earlier = next(one for one in _places(ledger, box) if one.run == found.place.run - 1)
        assert with_box(ledger, box, earlier, found.cutoff).score.late_weight > 0


def _places(ledger: Promised, box: QueueBox) -> list[Place]:
    return list(places(ledger, box, BARE))


@given(queues(), KNIVES)
def test_what_a_no_costs_is_what_happens(queue: Queue, knives: Knives) -> None:
    """Whom an answer names, and by how much, is who is late when the wish is granted all the same."""
    ledger, box = ledger_of(far(queue)), box_of(NEW, None, *knives)
    for cutoff in range(len(ledger.queue.cutoffs)):
        answer = can_do(ledger, box, cutoff, BARE)
        if answer.costs:
            wish = [place for place in _places(ledger, box) if place.work.end <= ledger.queue.cutoffs[cutoff]]
            granted = [with_box(ledger, box, place, cutoff) for place in wish]
            hurt = [{one for one in plan.late if one not in ledger.plan.late} for plan in granted]
            assert {cost.box_id for cost in answer.costs} in hurt
            assert answer.presses is not None


def test_a_no_names_whom_it_makes_late() -> None:
    """Two hours for tomorrow, where one hour is free before the box that is due then: half an hour's work too much."""
    queue = queue_of(box_of(1, 0, (0, 3000)), box_of(2, 1, (0, 6000)), cutoffs=(4000, 12000, 40000))
    ledger = ledger_of(queue)
    answer = can_do(ledger, box_of(NEW, None, (0, 5000)), 1, BARE)

    assert not answer.yes
    assert [(cost.box_id, cost.late_seconds) for cost in answer.costs] == [(2, 90 + 9000 + 5000 - 12000)]
    assert can_do(ledger, box_of(NEW, None, (0, 2900)), 1, BARE).yes


def test_a_box_that_is_too_big_for_the_wish_costs_nobody() -> None:
    """Longer than all seconds before the cut-off: no, and nobody else has to do with it."""
    ledger = ledger_of(queue_of(box_of(1, 0, (0, 3000))))
    answer = can_do(ledger, box_of(NEW, None, (0, 3 * DAY)), 0, BARE)

    assert (answer.yes, answer.costs, answer.presses) == (False, (), None)


def test_an_empty_bench_promises_the_first_cut_off() -> None:
    """Nothing is open: the first cut-off that the box fits before, and nobody binds."""
    ledger = ledger_of(queue_of())
    found = quoted(ledger, box_of(NEW, None, (0, 3000)), BARE)

    assert (found.cutoff, found.open_seconds, found.own_seconds, found.binds) == (0, 0, 3090, None)
    assert found.chance_holds > 0.99
    assert quoted(ledger, box_of(NEW, None, (0, DAY)), BARE).cutoff == 1


def test_passed_cut_offs_are_never_promised() -> None:
    """A cut-off that has gone by bears nothing, not even a box without work."""
    queue = queue_of(cutoffs=(-5000, 10000))
    ledger = promised(queue, evaluate(queue, ()), doubt_of())

    assert quoted(ledger, box_of(NEW, None, (0, 10)), BARE).cutoff == 1
    assert not can_do(ledger, box_of(NEW, None), 0, BARE).yes


def test_no_cut_off_bears_it() -> None:
    """More work than all cut-offs hold has no quote."""
    assert quote(ledger_of(queue_of()), box_of(NEW, None, (0, 5 * DAY)), BARE) is None
    assert quote(ledger_of(queue_of(cutoffs=())), box_of(NEW, None, (0, 60)), BARE) is None


def test_a_box_leaves_only_when_it_can() -> None:
    """Only the offered cut-offs are promised: a parcel does not leave by the counter."""
    ledger = ledger_of(queue_of())

    assert quoted(ledger, box_of(NEW, None, (0, 60)), BARE, offered=(3, 1)).cutoff == 1


def test_the_box_that_binds_is_named() -> None:
    """What stands in the way of an earlier place is the box with the least to spare behind it."""
    queue = queue_of(box_of(1, 0, (0, 19800)), box_of(2, 3, (1, 3000)))
    found = quoted(ledger_of(queue), box_of(NEW, None, (0, 600)), BARE)

    assert found.place.run == 1
    assert found.cutoff == 1
    assert found.binds == Held(box_id=1, run=0, cutoff=0, late=False)


def test_margins_push_the_promise_out() -> None:
    """A constant on top, spreads, and seconds kept for walk-ins each move the quote to the next cut-off."""
    ledger = ledger_of(queue_of(box_of(1, 0, (0, 12000))))
    box = box_of(NEW, None, (0, 5000))

    assert quoted(ledger, box, BARE).cutoff == 0
    assert quoted(ledger, box, Margins(spreads=0, constant_seconds=3000)).cutoff == 1
    assert quoted(ledger, box, Margins(spreads=1.28)).cutoff == 1
    assert quoted(ledger, box, Margins(spreads=0, walk_in_seconds=3000)).cutoff == 1


def test_a_late_box_holds_its_honest_cut_off() -> None:
    """A box that misses its own cut-off is not pushed past the next one it can still make."""
    queue = queue_of(box_of(1, 0, (0, 25000)), cutoffs=(20000, 26000, 90000))
    found = quoted(ledger_of(queue), box_of(NEW, None, (0, 2000)), BARE)

    assert found.place.run == 1
    assert found.binds == Held(box_id=1, run=0, cutoff=1, late=True)


@given(queues(), MARGINS, st.integers(0, 3))
def test_rush_seconds_can_be_worked(queue: Queue, margins: Margins, cutoff: int) -> None:
    """Work of as many seconds as are left fits some place by the cut-off, and a second more fits none."""
    ledger = ledger_of(queue)
    left = rush_seconds(ledger, cutoff, margins)

    def fits(seconds: int) -> bool:
        return any(
            start.end + seconds + ledger.kept_seconds(start, cutoff, margins) <= queue.cutoffs[cutoff]
            and seconds <= room.seconds
            for start, room in zip(ledger.starts, rooms(ledger, margins), strict=True)
        )

    assert left == 0 or fits(left)
    assert not fits(left + 1)


@given(queues(), KNIVES)
def test_the_chance_is_the_one_that_the_plan_will_say(queue: Queue, knives: Knives) -> None:
    """The chance told with a promise is the chance of the box once it stands in the plan."""
    ledger, box = ledger_of(far(queue)), box_of(NEW, None, *knives)
    found = quoted(ledger, box, Margins())
    plan = with_box(ledger, box, found.place, found.cutoff)
    told = replace(ledger.queue, boxes=(*ledger.queue.boxes, replace(box, due=found.cutoff)))
    said = next(one for one in chances(told, plan, doubt_of()) if one.box_id == NEW)

    assert found.chance_holds == pytest.approx(1 - said.chance_late)


@given(st.integers(1, 12), st.integers(60, 900))
def test_an_announced_box_strays_as_a_product_does(said: int, seconds: int) -> None:
    """Its variance is that of count times average, counted out over two equally likely values of each."""
    guess = Guess(process=1, knife_seconds=seconds)
    box = announced(guess, NEW, 9000, said)
    count_step, average_step = said * guess.said_spread, seconds * guess.knife_spread
    totals = [(said + a) * (seconds + b) for a in (count_step, -count_step) for b in (average_step, -average_step)]

    assert box.unseen_variance == pytest.approx(sum((total - said * seconds) ** 2 for total in totals) / 4)
    assert [knife.id for knife in box.knives] == list(range(9000, 9000 + said))
    assert alone(box, 3).end == said * seconds


def test_an_announced_box_is_promised_later_than_one_received() -> None:
    """What nobody has counted or seen needs more kept free; without a number said, more still."""
    guess = Guess(process=0, knife_seconds=900)
    ledger = ledger_of(queue_of())
    received = box_of(NEW, None, *[(0, 900)] * 6)
    kept = [
        quoted(ledger, box, Margins()).kept_seconds
        for box in (received, announced(guess, NEW, 9000, 6), announced(guess, NEW, 9000, None))
    ]

    assert kept[0] < kept[1] < kept[2]


def test_nothing_promised_behind_leaves_room_without_end() -> None:
    """Behind the last promise any amount of work hurts nobody."""
    assert rooms(ledger_of(queue_of(box_of(1, 0, (0, 600)))), BARE)[-1].seconds == inf
