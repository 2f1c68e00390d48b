"""What the shop learns its minutes and its pace from: timed runs, and what was done on each day."""

from collections.abc import Callable

import pytest

from queueboard.calendar.days import ShopCalendar
from queueboard.planning.learning import MeasuredRun, WorkedDay, stays_out
from queueboard.records import asking
from queueboard.shop import moving, noting, receiving, running, undoing
from queueboard.shop.measuring import measured_runs, worked_days
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.settings_now import settings_in
from queueboard.shop.waiting import box_waits, knives_wait
from queueboard.values.new import NewKnife
from queueboard.words import Column, DeclineReason, Edge, WaitingFor
from tests.shop.place import box, by, chef, counter, parcel
from tests.shop.test_laws import go
from tests.shop.undo_running import only_run

DAY = 24 * 60
"""Minutes; NOW is a Monday, nine o'clock, and the bench has 270 minutes a weekday in two stretches."""


def measured(shop: Shop) -> tuple[MeasuredRun, ...]:
    """The measured runs as the planner takes them."""
    with shop.reading() as database:
        return measured_runs(database, settings_in(database))


def days(shop: Shop, *, after: int = 2 * DAY) -> tuple[WorkedDay, ...]:
    """The days on which something was done, as they are seen so many minutes after Monday, nine o'clock."""
    with shop.reading() as database:
        settings = settings_in(database)
        closed = asking.closed_days(database, asking.settings_id(database) or 0)
        return worked_days(database, ShopCalendar(settings, closed), by(minutes=after).now.astimezone(settings.zone))


def timed(shop: Shop, made: BoxPicture, *, seconds: int = 0, planned: int | None = None) -> None:
    """A run of all knives of a box that takes so many seconds."""
    running.start_run(shop, by(), "plain", box(shop, made.box.number).knives, 90, planned)
    running.finish_run(shop, by(minutes=seconds // 60), only_run(shop))


def test_a_timed_run_teaches_its_process(shop: Shop) -> None:
    """What is measured is hands-on time: from start to end without pauses and set-up, beside both estimates."""
    made = parcel(shop)
    running.start_run(shop, by(), "plain", (*made.knives, *counter(shop, name="Oake").knives), 90, 1500)
    running.pause_run(shop, by(minutes=10), only_run(shop))
    running.go_on_run(shop, by(minutes=15), only_run(shop))
    running.finish_run(shop, by(minutes=45), only_run(shop))

    (run,) = measured(shop)

    assert run == MeasuredRun(
        process=0,
        knives=5,
        boxes=2,
        starter_seconds=5 * 360,
        estimated_seconds=1500,
        measured_seconds=40 * 60 - 90,
    )
    assert stays_out(run) is None


def test_a_knife_that_was_taken_out_counts_on_neither_side(shop: Shop) -> None:
    """A run of three of which one was declined is a run of two, and its estimate is that of two."""
    made = parcel(shop)
    running.start_run(shop, by(), "plain", made.knives, 90, 900)
    noting.decline_knife(shop, by(), box(shop, 100).knives[0], DeclineReason.CRACKED)
    running.finish_run(shop, by(minutes=12), only_run(shop))

    (run,) = measured(shop)

    assert (run.knives, run.starter_seconds, run.estimated_seconds) == (2, 720, 600)


@pytest.mark.parametrize(
    ("finish", "minutes", "stays"),
    [
        (running.finish_run, 20, False),
        (running.finish_untimed, 20, True),
        (running.finish_run, 1, True),
        (running.finish_run, 5, True),
        (running.finish_run, 5.2, False),
        (running.finish_run, 60, True),
    ],
    ids=["timed", "without timing", "no longer than its set-up", "a fifth less", "a fifth", "twice too long"],
)
def test_what_was_not_measured_teaches_nothing(
    shop: Shop, finish: Callable[..., object], minutes: float, stays: bool
) -> None:
    """A run done without timing, one begun and finished in one go, and one left lying about stay out."""
    running.start_run(shop, by(), "plain", parcel(shop).knives, 90)
    finish(shop, by(minutes=minutes), only_run(shop))

    (run,) = measured(shop)

    assert (stays_out(run) is not None) is stays


def test_a_run_under_way_or_empty_is_not_measured(shop: Shop) -> None:
    """Only what is finished, and only while it has knives."""
    running.start_run(shop, by(), "plain", parcel(shop).knives, 90)
    assert measured(shop) == ()

    running.leave_run(shop, by(minutes=3), only_run(shop))

    assert measured(shop) == ()


def test_the_newest_hundred_runs_of_a_process_are_looked_at(shop: Shop) -> None:
    """Old runs fall out, so that the look stays short in a shop of ten years."""
    made = counter(shop, knives=1)
    for _ in range(101):
        timed(shop, made, seconds=600)
        moving.move_knives(shop, by(), box(shop, made.box.number).knives, Column.RECEIVED)

    assert len(measured(shop)) == 100


def test_a_day_counts_what_went_forward(shop: Shop) -> None:
    """What lay there in the morning, the starter seconds of what was done, one set-up, the bench's own seconds."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY + 30), made.knives[:3], Column.TESTING)
    moving.move_knives(shop, by(minutes=DAY + 40), made.knives[3:5], Column.ON_BENCH)
    moving.move_knives(shop, by(minutes=DAY + 60), box(shop, 100).knives[3:5], Column.READY)

    (tuesday,) = days(shop)

    assert tuesday.open_seconds == (9 * 360, *[0] * 9)
    assert tuesday.starter_seconds == (5 * 360, *[0] * 9)
    assert (tuesday.knives, tuesday.boxes) == (5, 1)
    assert (tuesday.set_up_seconds, tuesday.bench_seconds) == (90, 270 * 60)


def test_a_set_up_is_counted_when_the_process_changes(shop: Shop) -> None:
    """What moves in one go was worked process by process; plain, bread, plain again are two changes and the first."""
    made = counter(shop, knives=9)
    bread = NewKnife(kind="bread", edge=Edge.SERRATED)
    receiving.add_knife(shop, by(), made.box, bread)
    knives = box(shop, 100).knives
    moving.move_knives(shop, by(minutes=DAY), (knives[9], *knives[:2]), Column.TESTING)
    moving.move_knives(shop, by(minutes=DAY + 5), knives[2:3], Column.TESTING)

    (tuesday,) = days(shop)

    assert tuesday.set_up_seconds == 90 + 60 + 90
    assert (tuesday.starter_seconds[0], tuesday.starter_seconds[2]) == (3 * 360, 360)


def nothing_done(shop: Shop, made: BoxPicture) -> None:
    """Nobody was at the bench."""
    noting.note_box(shop, by(minutes=DAY), made.box, "the owner is ill")


def only_declined(shop: Shop, made: BoxPicture) -> None:
    """A declined knife is ready, but nobody worked on it."""
    noting.decline_knife(shop, by(minutes=DAY), made.knives[0], DeclineReason.CRACKED)


def taken_back(shop: Shop, made: BoxPicture) -> None:
    """What was done was undone."""
    actor = by(minutes=DAY)
    moving.move_knives(shop, actor, made.knives[:2], Column.TESTING)
    undoing.undo(shop, by(minutes=DAY + 1), actor.group_id)


@pytest.mark.parametrize("goes", [nothing_done, only_declined, taken_back], ids=lambda way: way.__name__)
def test_a_day_without_work_done_is_left_out(shop: Shop, goes: Callable[[Shop, BoxPicture], None]) -> None:
    """A day on which nobody was at the bench says nothing of the shop's pace."""
    goes(shop, parcel(shop, knives=9))

    assert days(shop) == ()


def box_waited(shop: Shop, made: BoxPicture) -> None:
    """The customer is asked about the whole box from Monday to Tuesday noon."""
    box_waits(shop, by(minutes=60), made.box, WaitingFor.ESTIMATE)
    box_waits(shop, by(minutes=DAY + 180), box(shop, 100).box, None)


def knives_waited(shop: Shop, made: BoxPicture) -> None:
    """All its knives wait for belts from Monday to Tuesday noon."""
    knives_wait(shop, by(minutes=60), made.knives, WaitingFor.BELTS)
    knives_wait(shop, by(minutes=DAY + 180), box(shop, 100).knives, None)


def came_later(shop: Shop, made: BoxPicture) -> None:
    """The first box was declined on Monday, and the same came again on Tuesday morning."""
    for knife in made.knives:
        noting.decline_knife(shop, by(minutes=60), knife, DeclineReason.CRACKED)
    for _ in made.knives:
        receiving.add_knife(shop, by(minutes=DAY + 10), box(shop, 100).box, chef())


@pytest.mark.parametrize("goes", [box_waited, knives_waited, came_later], ids=lambda way: way.__name__)
def test_the_morning_counts_what_could_be_worked_then(shop: Shop, goes: Callable[[Shop, BoxPicture], None]) -> None:
    """What waits, is ready or is not there yet when the bench opens does not make the day a full one."""
    goes(shop, parcel(shop, knives=9))
    other = counter(shop, knives=3, name="Oake")
    moving.move_knives(shop, by(minutes=DAY + 30), other.knives, Column.TESTING)

    (tuesday,) = days(shop)

    assert tuesday.open_seconds[0] == 3 * 360


def test_a_box_that_went_while_it_waited_had_work_before(shop: Shop) -> None:
    """What waited when it went did not wait from the first: the morning before keeps its work."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)
    moving.move_knives(shop, by(minutes=2 * DAY), box(shop, 100).knives, Column.READY)
    box_waits(shop, by(minutes=2 * DAY), box(shop, 100).box, WaitingFor.MONEY)
    before = days(shop, after=4 * DAY)

    go(shop, 100)

    assert [day.open_seconds[0] for day in before] == [9 * 360, 7 * 360]
    assert days(shop, after=4 * DAY) == before


def test_today_and_what_is_long_past_are_left_out(shop: Shop) -> None:
    """A day counts once it is over, and for ninety days."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)

    assert days(shop, after=DAY + 12 * 60) == ()
    assert len(days(shop, after=90 * DAY)) == 1
    assert days(shop, after=92 * DAY) == ()
