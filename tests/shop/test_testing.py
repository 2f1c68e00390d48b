"""The test of an edge: by feel with one key, by the gauge where it is asked for, and the second look."""

import pytest

from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.records.runs import run_by_id
from queueboard.records.tables import KnifeRow
from queueboard.shop.gauging import edge, read_spot
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.running import finish_run, start_run
from queueboard.shop.testing import judge_edge, let_go_by_eye, look_twice, prove_tray
from queueboard.shop.undoing import undo
from queueboard.values.edge import EdgeTest
from queueboard.values.knife import Knife
from queueboard.words import Column, DeclineReason, EdgeTestWay, SecondLook
from tests.shop.place import box, by, counter
from tests.shop.undo_edges import at_the_test, knives_now


def now(shop: Shop, knife: Knife) -> Knife:
    """The knife as it stands."""
    return next(one for one in knives_now(shop, knife.box_number) if one.id == knife.id)


def last_test(shop: Shop, knife: Knife) -> EdgeTest:
    """The newest test of a knife."""
    return edge(shop, knife).tests[-1]


def test_ok_by_feel_is_one_move(shop: Shop) -> None:
    """From the bench straight to ready is an OK by feel, with who."""
    made = counter(shop)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    move_knives(shop, by("K"), knives_now(shop, made.box.number), Column.READY)

    tests = [last_test(shop, knife) for knife in made.knives]
    assert [(one.way, one.ok, one.belt, one.tested_by) for one in tests] == [(EdgeTestWay.FEEL, True, "", "K")] * 2


def test_not_ok_goes_back_to_a_belt(shop: Shop) -> None:
    """Back from testing is not OK, with the belt it goes back to and who found it; a belt must be its own."""
    made = counter(shop)
    move_knives(shop, by(), made.knives, Column.TESTING)
    first, second = knives_now(shop, made.box.number)
    move_knives(shop, by("K"), [first], Column.ON_BENCH)
    with pytest.raises(TypedError, match="no belt P40 for"):
        judge_edge(shop, by(), second, ok=False, belt="P40")
    judge_edge(shop, by("K"), second, ok=False, belt="P240")

    assert [(last_test(shop, k).ok, last_test(shop, k).belt) for k in (first, second)] == [
        (False, "16 um"),
        (False, "P240"),
    ]
    assert all(knife.column is Column.ON_BENCH and knife.rework == 1 for knife in knives_now(shop, made.box.number))


def test_a_tray_stops_at_the_test_where_the_gauge_is_asked(shop: Shop) -> None:
    """Of a tray that goes to ready the knife for which the gauge is asked stays at the test; alone it is refused."""
    knife = at_the_test(shop)
    other = counter(shop, name="other", knives=1).knives[0]
    move_knives(shop, by(), [other], Column.ON_BENCH)
    asked = now(shop, other)
    assert asked.gauge is not None
    move_knives(shop, by(), [asked], Column.READY)
    assert now(shop, other).column is Column.TESTING

    with pytest.raises(RuleError, match=f"gauge is asked for {knife.tag}"):
        move_knives(shop, by(), [now(shop, knife)], Column.READY)


def test_a_run_finished_straight_to_ready_leaves_the_asked_one_at_the_test(shop: Shop) -> None:
    """The others go on, and the run is over."""
    at_the_test(shop)
    made = counter(shop, name="run", knives=2)
    run_id = start_run(shop, by("K"), "plain", knives_now(shop, made.box.number), 90)
    first, second = knives_now(shop, made.box.number)
    with shop.writing(by(minutes=1), "by hand") as writing:
        writing.change(KnifeRow, second.id, None, gauge=None)
    run = run_by_id(shop.database, run_id)
    assert run is not None
    finish_run(shop, by("K", minutes=30), run, Column.READY)

    assert [now(shop, k).column for k in (first, second)] == [Column.TESTING, Column.READY]


def test_ready_needs_every_spot_read_or_somebody_who_lets_it_go(shop: Shop) -> None:
    """One spot unread: refused with its name. By eye it goes, with who; where nobody asked, by eye means nothing."""
    made = counter(shop, knives=2)
    at_the_test(shop)
    move_knives(shop, by(), made.knives[:1], Column.ON_BENCH)
    knife = now(shop, made.knives[0])
    read_spot(shop, by(), knife, "heel", 180)
    read_spot(shop, by(), knife, "middle", 180)
    with pytest.raises(RuleError, match=r"not read yet after the work \(tip\)"):
        judge_edge(shop, by(), knife, ok=True)
    let_go_by_eye(shop, by("K"), knife)

    assert now(shop, knife).column is Column.READY
    assert (last_test(shop, knife).way, last_test(shop, knife).tested_by) == (EdgeTestWay.EYE, "K")


def test_readings_from_before_a_failed_test_do_not_count_again(shop: Shop) -> None:
    """After a not OK the edge was worked: its old readings cannot make it ready."""
    knife = at_the_test(shop)
    judge_edge(shop, by(minutes=1), knife, ok=False)
    with pytest.raises(RuleError, match="heel, middle, tip"):
        judge_edge(shop, by(minutes=2), now(shop, knife), ok=True)
    for spot in ("heel", "middle", "tip"):
        read_spot(shop, by(minutes=3), now(shop, knife), spot, 170)
    judge_edge(shop, by(minutes=4), now(shop, knife), ok=True)

    assert [(one.way, one.ok) for one in edge(shop, knife).tests] == [
        (EdgeTestWay.GAUGE, False),
        (EdgeTestWay.GAUGE, True),
    ]


@pytest.mark.parametrize(
    ("choice", "stands"),
    [
        (SecondLook.ONE_MORE, Column.ON_BENCH),
        (SecondLook.LOWER, Column.READY),
        (SecondLook.DECLINE, Column.READY),
    ],
)
def test_the_second_not_ok_is_a_second_look(shop: Shop, choice: SecondLook, stands: Column) -> None:
    """A plain move back is refused; the choice with its reason decides where the knife goes and what it costs."""
    (made,) = counter(shop, knives=1).knives
    move_knives(shop, by(), [made], Column.TESTING)
    move_knives(shop, by(minutes=1), [now(shop, made)], Column.ON_BENCH)
    move_knives(shop, by(minutes=2), [now(shop, made)], Column.TESTING)
    with pytest.raises(RuleError, match="a second look is due"):
        move_knives(shop, by(minutes=3), [now(shop, made)], Column.ON_BENCH)
    with pytest.raises(ReasonNeededError, match="Say why"):
        look_twice(shop, by(minutes=3), now(shop, made), choice, " ")
    look_twice(shop, by("K", minutes=3), now(shop, made), choice, "steel too soft")

    knife = now(shop, made)
    assert knife.column is stands
    assert (knife.declined is DeclineReason.NO_EDGE) == (choice is SecondLook.DECLINE)
    assert shop.database.rows("SELECT choice, why, chosen_by FROM second_look") == [(choice, "steel too soft", "K")]
    assert edge(shop, knife).not_ok == 0


def test_a_second_look_needs_a_first_not_ok(shop: Shop) -> None:
    """A knife that was never found not OK has nothing to be looked at twice."""
    with pytest.raises(RuleError, match="was not found not OK before"):
        look_twice(shop, by(), at_the_test(shop), SecondLook.LOWER, "soft")


def test_what_is_not_in_hand_is_not_tested(shop: Shop) -> None:
    """A knife that is not begun is refused with where it is."""
    made = counter(shop, knives=1)

    with pytest.raises(RuleError, match="is not at the test: it is received"):
        judge_edge(shop, by(), made.knives[0], ok=True)
    assert box(shop, made.box.number).knives[0].column is Column.RECEIVED


def test_a_tray_is_tested_in_one_step(shop: Shop) -> None:
    """All but the one typed go to ready, that one to the bench, and one undo takes all of it back."""
    made = counter(shop, knives=3)
    for column in (Column.ON_BENCH, Column.TESTING):
        move_knives(shop, by(), knives_now(shop, made.box.number), column)
    knives = knives_now(shop, made.box.number)
    act = by("K")

    prove_tray(shop, act, knives, knives[1:2])
    assert [knife.column for knife in knives_now(shop, made.box.number)] == [
        Column.READY,
        Column.ON_BENCH,
        Column.READY,
    ]

    undo(shop, by("K"), act.group_id)
    assert {knife.column for knife in knives_now(shop, made.box.number)} == {Column.TESTING}


def test_a_tray_of_knives_to_be_read_is_refused(shop: Shop) -> None:
    """By feel alone none of them is ready; the sentence says which key reads them."""
    knife = at_the_test(shop)

    with pytest.raises(RuleError, match=r"The gauge is asked for .* E reads it"):
        prove_tray(shop, by(), [knife], [])
