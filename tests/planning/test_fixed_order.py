"""A day list that was fixed stays as it is, but for what is begun and for new last chances."""

from dataclasses import replace

from queueboard.values.plan import BoxWork, OrderChange
from queueboard.words import OrderWord
from tests.planning.work import box_work, knife_work, planned, runs_in
from tests.plans import at


def four_boxes() -> list[BoxWork]:
    """Four boxes of one plain knife each, due on the next four days."""
    return [box_work(n, knife_work(n * 100 + 1), ship_by=at(15, days=n)) for n in (1, 2, 3, 4)]


FIXED = ((301,), (101,), (401,), (201,))


def test_the_fixed_order_is_kept() -> None:
    """The list stands as it was fixed, whatever the ranks would say, and nothing has changed."""
    plan = planned(*four_boxes(), fixed_order=FIXED)

    assert runs_in(plan) == FIXED
    assert plan.changes == ()


def test_a_new_box_goes_to_the_end() -> None:
    """What came in since goes behind the list, even when it is due sooner, and is named."""
    plan = planned(
        *four_boxes(), replace(box_work(5, knife_work(501), ship_by=at(9, days=1)), rush=True), fixed_order=FIXED
    )

    assert runs_in(plan) == (*FIXED, (501,))
    assert plan.changes == (OrderChange(tag="5-1", what=OrderWord.NEW),)


def test_a_new_last_chance_goes_to_the_front() -> None:
    """What is promised for today goes ahead of a list that did not know of it."""
    plan = planned(*four_boxes(), box_work(5, knife_work(501), ship_by=at(16)), fixed_order=FIXED)

    assert runs_in(plan) == ((501,), *FIXED)
    assert plan.changes == (OrderChange(tag="5-1", what=OrderWord.LAST_CHANCE),)


def test_a_new_last_chance_goes_behind_its_equals() -> None:
    """Of two boxes for the same time the one that was in the list stays ahead."""
    listed = box_work(7, knife_work(701), ship_by=at(16))

    plan = planned(*four_boxes(), listed, box_work(5, knife_work(501), ship_by=at(16)), fixed_order=((701,), *FIXED))

    assert runs_in(plan) == ((701,), (501,), *FIXED)


def test_this_next_stays_next() -> None:
    """A walk-in promised for today goes behind the box that was pinned and ahead of the others for today."""
    pinned = replace(box_work(6, knife_work(601), ship_by=at(15, days=2)), this_next=True)
    today = box_work(7, knife_work(701), ship_by=at(17))

    plan = planned(
        *four_boxes(), pinned, today, box_work(5, knife_work(501), ship_by=at(16)), fixed_order=((601,), (701,), *FIXED)
    )

    assert runs_in(plan) == ((601,), (501,), (701,), *FIXED)
    assert plan.changes == (OrderChange(tag="5-1", what=OrderWord.LAST_CHANCE),)


def test_a_listed_knife_that_becomes_a_last_chance_moves_up() -> None:
    """A listed box marked 'this next' moves to the front, and the others keep their order."""
    boxes = four_boxes()
    boxes[1] = replace(boxes[1], this_next=True)

    plan = planned(*boxes, fixed_order=FIXED)

    assert runs_in(plan) == ((201,), (301,), (101,), (401,))
    assert plan.changes == (OrderChange(tag="2-1", what=OrderWord.LAST_CHANCE),)


def test_last_chances_that_lead_the_list_stay_as_fixed() -> None:
    """Two boxes for today, fixed in an order of the person's own, are no news."""
    boxes = [box_work(n, knife_work(n * 100 + 1), ship_by=at(14 + n)) for n in (1, 2)]

    plan = planned(*boxes, *four_boxes()[2:], fixed_order=((201,), (101,), (401,), (301,)))

    assert runs_in(plan) == ((201,), (101,), (401,), (301,))
    assert plan.changes == ()


def test_what_is_begun_leads() -> None:
    """A knife put on the bench out of turn leads, ahead of a new last chance: a bench in use is never reordered."""
    boxes = four_boxes()
    boxes[3] = box_work(4, knife_work(401, begun=True), ship_by=at(15, days=4))

    plan = planned(*boxes, box_work(5, knife_work(501), ship_by=at(16)), fixed_order=FIXED)

    assert runs_in(plan) == ((401,), (501,), (301,), (101,), (201,))
    assert [change.tag for change in plan.changes] == ["5-1"]


def test_what_is_done_drops_out_quietly() -> None:
    """A knife of the list without open work is skipped and the others keep their order."""
    plan = planned(*four_boxes()[1:], fixed_order=FIXED)

    assert runs_in(plan) == ((301,), (401,), (201,))
    assert plan.changes == ()


def test_a_run_of_the_list_stays_one_run() -> None:
    """Knives that were fixed as one run stay together, whatever a fresh plan would do; one that is done drops out."""
    boxes = [box_work(n, knife_work(n * 100 + 1), ship_by=at(15, days=n)) for n in (1, 2, 3)]

    plan = planned(*boxes, fixed_order=((201,), (301, 999, 101)))

    assert runs_in(plan) == ((201,), (301, 101))


def test_a_last_chance_that_the_list_would_miss_moves_up() -> None:
    """A box for today stands behind an hour of other work since the bench was lost this morning: it goes ahead."""
    today = box_work(1, knife_work(101, 10), ship_by=at(9, 42))
    other = box_work(2, knife_work(201, 60), ship_by=at(15, days=2))

    plan = planned(today, other, fixed_order=((201,), (101,)))

    assert runs_in(plan) == ((101,), (201,))
    assert plan.changes == (OrderChange(tag="1-1", what=OrderWord.LAST_CHANCE),)
