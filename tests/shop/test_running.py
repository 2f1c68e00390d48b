"""Runs at the bench: who has which knife, what the clock counts, and what a run is when other steps come between."""

from collections.abc import Callable, Sequence

import pytest

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.records.runs import open_runs, run_by_id
from queueboard.shop import moving, noting, receiving, running, undoing
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.waiting import knives_wait
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.words import Column, DeclineReason, WaitingFor
from tests.shop.place import NOW, box, by, chef, counter, parcel, state
from tests.shop.undo_running import begun, only_run


def knives_now(shop: Shop, run: BenchRun) -> tuple[Knife, ...]:
    """The knives of a run as they stand."""
    found = [knife for seen in (box(shop, 100),) for knife in seen.knives if knife.id in run.knife_ids]
    return tuple(found)


def run_now(shop: Shop, run: BenchRun) -> BenchRun:
    """The run as it is stored, under way or over."""
    found = run_by_id(shop.database, run.id)
    assert found is not None
    return found


def test_a_run_brings_its_knives_to_the_bench(shop: Shop) -> None:
    """Knives that are begun stand on the bench, with the one who has them, what they take and the set-up."""
    made = parcel(shop)
    moving.move_knives(shop, by(), made.knives[:1], Column.ON_BENCH)

    running.start_run(shop, by("K"), "plain", box(shop, made.box.number).knives, 90, 900)

    run = only_run(shop)
    assert {knife.column for knife in box(shop, made.box.number).knives} == {Column.ON_BENCH}
    assert (run.started_by, run.process, len(run.knife_ids)) == ("K", "plain", 3)
    assert (run.nominal_seconds, run.planned_seconds, run.set_up_seconds) == (3 * 360 + 90, 990, 90)


def test_pauses_do_not_count(shop: Shop) -> None:
    """Started, paused when the bell rings, gone on with, finished: what counts is the time between, paused or not."""
    run = begun(shop)
    running.pause_run(shop, by(minutes=4), run)
    assert only_run(shop).worked_seconds(by(minutes=60).now) == 240
    running.go_on_run(shop, by(minutes=10), only_run(shop))
    assert only_run(shop).worked_seconds(by(minutes=11).now) == 300

    done = running.finish_run(shop, by(minutes=20), only_run(shop))

    assert done.worked_seconds(NOW) == (20 - 6) * 60
    assert done.timed
    assert not open_runs(shop.database)
    assert {knife.column for knife in knives_now(shop, run)} == {Column.TESTING}


def test_a_paused_run_is_finished_as_of_its_pause(shop: Shop) -> None:
    """What is finished without going on first has worked until it was paused."""
    running.pause_run(shop, by(minutes=5), begun(shop))

    done = running.finish_run(shop, by(minutes=50), only_run(shop), Column.READY)

    assert done.worked_seconds(NOW) == 300
    assert {knife.column for knife in knives_now(shop, done)} == {Column.READY}


def test_a_clock_set_back_takes_no_time(shop: Shop) -> None:
    """A run that was finished before it began, by a clock set back in between, took no time at all."""
    assert running.finish_run(shop, by(minutes=-5), begun(shop)).worked_seconds(NOW) == 0


def test_two_people_never_have_the_same_knife(shop: Shop) -> None:
    """A knife in a run under way is refused with who has it, and nothing of the second run is stored."""
    run = begun(shop)
    other = counter(shop, name="Oake")
    before = state(shop)

    with pytest.raises(RuleError, match="100-1 is in J's run"):
        running.start_run(shop, by("K"), "plain", (*other.knives, *knives_now(shop, run)), 90)

    assert state(shop) == before


def test_a_person_has_one_run_going_on(shop: Shop) -> None:
    """A second run is refused until the first is paused; and the first does not go on beside the second."""
    run = begun(shop)
    other = counter(shop, name="Oake")
    with pytest.raises(RuleError, match="J has a run of plain going on"):
        running.start_run(shop, by(), "plain", other.knives, 90)
    running.pause_run(shop, by(), run)
    running.start_run(shop, by(), "plain", other.knives, 90)

    with pytest.raises(RuleError, match="J has a run of plain going on"):
        running.go_on_run(shop, by(), run_now(shop, run))
    assert len(open_runs(shop.database)) == 2


def test_two_people_have_a_run_each(shop: Shop) -> None:
    """What one person has going on does not keep another from the bench."""
    begun(shop)
    running.start_run(shop, by("K"), "plain", counter(shop, name="Oake").knives, 90)

    assert [run.started_by for run in open_runs(shop.database)] == ["J", "K"]


def test_done_without_timing(shop: Shop) -> None:
    """The knives go on, the time counts for nothing; thrown away it does so too, before or after the end."""
    assert not running.finish_untimed(shop, by(minutes=9), begun(shop)).timed
    again = box(shop, 100).knives
    running.start_run(shop, by(), "plain", again, 90)
    running.throw_away(shop, by(), only_run(shop))
    first = running.finish_run(shop, by(minutes=9), only_run(shop))
    assert not first.timed
    running.start_run(shop, by(), "plain", box(shop, 100).knives, 90)
    second = running.finish_run(shop, by(minutes=9), only_run(shop))
    assert second.timed

    running.throw_away(shop, by(minutes=10), second)

    assert not run_now(shop, second).timed
    with pytest.raises(RuleError, match="counts for nothing already"):
        running.throw_away(shop, by(minutes=10), run_now(shop, second))


def test_a_run_that_is_left_has_not_begun(shop: Shop) -> None:
    """Its knives are received again, but those that went forward; no knife is lost and no time counts."""
    run = begun(shop)
    moving.move_knives(shop, by(), knives_now(shop, run)[:1], Column.TESTING)

    running.leave_run(shop, by(minutes=3), run)

    assert [knife.column for knife in box(shop, 100).knives] == [Column.TESTING, Column.RECEIVED, Column.RECEIVED]
    assert not open_runs(shop.database)
    assert (len(run_now(shop, run).knife_ids), run_now(shop, run).timed) == (1, False)


def test_knives_that_go_forward_one_by_one_finish_the_run(shop: Shop) -> None:
    """Each stays counted; the last one stops the clock, and one that comes back before is in the run again."""
    run = begun(shop)
    moving.move_knives(shop, by(minutes=5), knives_now(shop, run)[:2], Column.TESTING)
    moving.move_knives(shop, by(minutes=6), knives_now(shop, run)[:1], Column.ON_BENCH)
    assert only_run(shop).knife_ids == run.knife_ids

    moving.move_knives(shop, by(minutes=8), knives_now(shop, run), Column.TESTING)

    over = run_now(shop, run)
    assert (over.worked_seconds(NOW), over.timed, over.knife_ids) == (480, True, run.knife_ids)


def taken_back(shop: Shop, knife: Knife) -> None:
    """Moved to received."""
    moving.move_knives(shop, by("K", minutes=2), [knife], Column.RECEIVED)


def put_to_wait(shop: Shop, knife: Knife) -> None:
    """Waiting for a part."""
    knives_wait(shop, by("K", minutes=2), [knife], WaitingFor.PART)


def declined(shop: Shop, knife: Knife) -> None:
    """Declined at the bench."""
    noting.decline_knife(shop, by("K", minutes=2), knife, DeclineReason.CRACKED)


def struck(shop: Shop, knife: Knife) -> None:
    """Struck: it never existed."""
    receiving.strike_knife(shop, by("K", minutes=2), knife, "counted twice")


OTHER_WAYS: Sequence[Callable[[Shop, Knife], None]] = (taken_back, put_to_wait, declined, struck)


@pytest.mark.parametrize("leaves", OTHER_WAYS, ids=lambda way: way.__name__)
def test_a_knife_that_leaves_another_way_is_out_of_the_run(shop: Shop, leaves: Callable[[Shop, Knife], None]) -> None:
    """The run goes on without it, and undo brings it back into the run."""
    run = begun(shop)
    before = state(shop)

    leaves(shop, knives_now(shop, run)[0])

    assert only_run(shop).knife_ids == run.knife_ids[1:]
    undoing.undo(shop, by("K", minutes=3), undoing.steps(shop, "K")[0].group_id)
    assert state(shop) == before


@pytest.mark.parametrize("leaves", OTHER_WAYS, ids=lambda way: way.__name__)
def test_a_run_whose_last_knife_leaves_is_over_without_time(shop: Shop, leaves: Callable[[Shop, Knife], None]) -> None:
    """Nothing was done in it; undo takes it up again with its clock as it was."""
    made = parcel(shop)
    running.start_run(shop, by(), "plain", made.knives[:1], 90)
    run, before = only_run(shop), state(shop)

    leaves(shop, box(shop, 100).knives[0])

    assert not open_runs(shop.database)
    assert (run_now(shop, run).knife_ids, run_now(shop, run).timed) == ((), False)
    undoing.undo(shop, by("K", minutes=3), undoing.steps(shop, "K")[0].group_id)
    assert state(shop) == before


def test_the_last_knife_taken_back_leaves_the_time_of_the_others(shop: Shop) -> None:
    """A run of which some knives went forward is over, timed, when the last one is taken back."""
    run = begun(shop)
    moving.move_knives(shop, by(minutes=5), knives_now(shop, run)[1:], Column.TESTING)

    taken_back(shop, knives_now(shop, run)[0])

    over = run_now(shop, run)
    assert (over.knife_ids, over.timed) == (run.knife_ids[1:], True)
    assert over.finished_at is not None


def test_a_second_window_cannot_finish_what_is_over(shop: Shop) -> None:
    """Two windows on one run: the second is told that it is over, or that it was changed, and stores nothing."""
    run = begun(shop)
    other = open_shop(shop.path)
    running.pause_run(other, by("K"), run)
    with pytest.raises(ChangedError, match="K has just changed"):
        running.throw_away(shop, by(), run)
    moving.move_knives(other, by("K"), knives_now(shop, run), Column.TESTING)
    before = state(shop)

    for act in (running.finish_run, running.finish_untimed, running.pause_run, running.go_on_run, running.leave_run):
        with pytest.raises(RuleError, match="is over already"):
            act(shop, by(), run)

    assert state(shop) == before
    close_shop(other)


def test_undo_never_gives_a_knife_to_two_people(shop: Shop) -> None:
    """A finished run is not taken up again while one of its knives is back at the bench in another's run."""
    run, finished = begun(shop), by()
    moving.move_knives(shop, by(), knives_now(shop, run)[:1], Column.TESTING)
    running.finish_run(shop, finished, run)
    running.start_run(shop, by("K"), "plain", box(shop, 100).knives[:1], 90)
    before = state(shop)

    with pytest.raises(RuleError, match="100-1 is in K's run"):
        undoing.undo(shop, by(), finished.group_id)

    assert state(shop) == before


def test_undo_never_gives_one_person_two_runs(shop: Shop) -> None:
    """A pause is not taken back while its person has begun another run; the sentence says so."""
    run, paused = begun(shop), by()
    running.pause_run(shop, paused, run)
    running.start_run(shop, by(), "plain", counter(shop, name="Oake").knives, 90)

    with pytest.raises(RuleError, match="Another run of that person is going on"):
        undoing.undo(shop, by(), paused.group_id)


@pytest.mark.parametrize(
    ("process", "set_up", "planned", "says"),
    [
        ("polish", 90, None, "no process called 'polish'"),
        ("plain", -1, None, "outside 0 to 14400"),
        ("plain", 14_401, None, "outside 0 to 14400"),
        ("plain", 90, -1, "cannot give the knives -1"),
    ],
)
def test_a_run_that_makes_no_sense_is_refused(
    shop: Shop, process: str, set_up: int, planned: int | None, says: str
) -> None:
    """An unknown process and impossible seconds have their sentence."""
    with pytest.raises(TypedError, match=says):
        running.start_run(shop, by(), process, parcel(shop).knives, set_up, planned)


def test_what_cannot_be_in_a_run_is_refused(shop: Shop) -> None:
    """No knife, the same knife twice, a waiting knife, another end than testing or ready."""
    made = parcel(shop)
    with pytest.raises(TypedError, match="No knife"):
        running.start_run(shop, by(), "plain", (), 90)
    with pytest.raises(RuleError, match="in the run already"):
        running.start_run(shop, by(), "plain", made.knives[:1] * 2, 90)
    knives_wait(shop, by(), made.knives[:1], WaitingFor.BELTS)
    with pytest.raises(RuleError, match="waits for belts"):
        running.start_run(shop, by(), "plain", box(shop, 100).knives, 90)
    running.start_run(shop, by(), "plain", box(shop, 100).knives[1:], 90)

    with pytest.raises(RuleError, match="to testing or to ready"):
        running.finish_run(shop, by(), only_run(shop), Column.GONE)


def test_a_knife_added_meanwhile_is_in_no_run(shop: Shop) -> None:
    """A run is what it was begun with."""
    run = begun(shop)
    receiving.add_knife(shop, by(), box(shop, 100).box, chef())

    assert only_run(shop).knife_ids == run.knife_ids
