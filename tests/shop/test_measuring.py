"""What the shop learns its minutes and its pace from: timed runs, and days on which the work never ran out."""

from collections.abc import Callable

import pytest

from queueboard.calendar.days import ShopCalendar
from queueboard.planning.learning import FullDay, MeasuredRun, stays_out
from queueboard.records import asking
from queueboard.shop import moving, noting, receiving, running, undoing
from queueboard.shop.measuring import full_days, measured_runs
from queueboard.shop.numbers import settings_in
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.waiting import box_waits, knives_wait
from queueboard.values.new import NewKnife
from queueboard.words import Column, DeclineReason, Edge, WaitingFor
from tests.shop.place import box, by, counter, parcel
from tests.shop.test_laws import go
from tests.shop.undo_running import only_run

DAY = 24 * 60
"""Minutes; NOW is a Monday, nine o'clock, and the bench has 270 minutes a weekday in two stretches."""


def measured(shop: Shop) -> tuple[MeasuredRun, ...]:
    """The measured runs as the planner takes them."""
    with shop.reading() as database:
        return measured_runs(database, settings_in(database))


def days(shop: Shop, *, after: int = 2 * DAY) -> tuple[FullDay, ...]:
    """The full days as they are seen so many minutes after Monday, nine o'clock."""
    with shop.reading() as database:
        settings = settings_in(database)
        closed = asking.closed_days(database, asking.settings_id(database) or 0)
        return full_days(database, ShopCalendar(settings, closed), by(minutes=after).now.astimezone(settings.zone))


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
        (running.finish_run, 60, True),
    ],
    ids=["timed", "without timing", "no longer than its set-up", "twice too long"],
)
def test_what_was_not_measured_teaches_nothing(
    shop: Shop, finish: Callable[..., object], minutes: int, stays: bool
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


def test_a_full_day_counts_what_went_forward(shop: Shop) -> None:
    """Tuesday never ran out of work: the starter seconds of what was done, one set-up, and the bench's own seconds."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY + 30), made.knives[:3], Column.TESTING)
    moving.move_knives(shop, by(minutes=DAY + 40), made.knives[3:5], Column.ON_BENCH)
    moving.move_knives(shop, by(minutes=DAY + 60), box(shop, 100).knives[3:5], Column.READY)

    (tuesday,) = days(shop)

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


def ran_out(shop: Shop, made: BoxPicture) -> None:
    """All done by noon."""
    moving.move_knives(shop, by(minutes=DAY + 120), made.knives, Column.TESTING)


def box_waited(shop: Shop, made: BoxPicture) -> None:
    """Some done, then the customer is asked about the rest for an hour."""
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)
    box_waits(shop, by(minutes=DAY + 20), made.box, WaitingFor.ESTIMATE)
    box_waits(shop, by(minutes=DAY + 80), box(shop, 100).box, None)


def knives_waited(shop: Shop, made: BoxPicture) -> None:
    """Some done, the others wait for belts for an hour."""
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)
    knives_wait(shop, by(minutes=DAY + 20), made.knives[2:], WaitingFor.BELTS)
    knives_wait(shop, by(minutes=DAY + 80), box(shop, 100).knives[2:], None)


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


@pytest.mark.parametrize(
    "goes", [ran_out, box_waited, knives_waited, nothing_done, only_declined, taken_back], ids=lambda way: way.__name__
)
def test_a_day_that_was_not_full_is_left_out(shop: Shop, goes: Callable[[Shop, BoxPicture], None]) -> None:
    """A day on which nobody could have gone on, or nobody did, says nothing of the shop's pace."""
    goes(shop, parcel(shop, knives=9))

    assert days(shop) == ()


def test_work_that_waits_beside_other_work_does_not_matter(shop: Shop) -> None:
    """A day is full while some other knife needs the bench; and what runs out after bench hours is no matter."""
    box_waited(shop, parcel(shop, knives=9))
    other = counter(shop, knives=9, name="Oake")
    moving.move_knives(shop, by(minutes=DAY + 7 * 60), other.knives, Column.TESTING)

    (tuesday,) = days(shop)

    assert tuesday.starter_seconds[0] == 11 * 360


def test_a_box_that_went_while_it_waited_had_work_before(shop: Shop) -> None:
    """What waited when it went did not wait from the first: the full day before stays full."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)
    moving.move_knives(shop, by(minutes=2 * DAY), box(shop, 100).knives, Column.READY)
    box_waits(shop, by(minutes=2 * DAY), box(shop, 100).box, WaitingFor.MONEY)
    assert len(days(shop, after=4 * DAY)) == 1

    go(shop, 100)

    assert len(days(shop, after=4 * DAY)) == 1


def test_today_and_what_is_long_past_are_left_out(shop: Shop) -> None:
    """A day counts once it is over, and for ninety days."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)

    assert days(shop, after=DAY + 12 * 60) == ()
    assert len(days(shop, after=90 * DAY)) == 1
    assert days(shop, after=92 * DAY) == ()
