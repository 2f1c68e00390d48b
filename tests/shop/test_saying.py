"""What was said of boxes and told to customers, against what was seen."""

from collections.abc import Callable
from datetime import date, datetime, timedelta

import pytest

from queueboard.records import asking
from queueboard.seedfiles import seed_text
from queueboard.shop import announcing, closing, moving, noting, promising, receiving, saying, undoing
from queueboard.shop.looking import look
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.values.measured import SaidSeen, SaidTenth, ToldSeen
from queueboard.values.new import NewBox, NewPromise
from queueboard.words import CameBy, Column, DeclineReason, GoesBy, Lateness, PromiseKind, Settling
from tests.shop.place import NOW, box, by, counter, parcel, state
from tests.shop.undo_announcing import announced
from tests.shop.undo_closing import close

MONDAY = date(2026, 11, 9)
DUE = NOW + timedelta(hours=6)
"""Three in the afternoon."""


def say(shop: Shop, *made: BoxPicture, permille: int = 150, day: date = MONDAY, due: datetime = DUE) -> None:
    """Say of boxes how likely they are late."""
    saying.say_chances(shop, by(), day, [(one.box.id, due, permille) for one in made])


def seen(shop: Shop, *, hours: int = 48) -> tuple[SaidSeen, ...]:
    """What is seen so many hours after Monday, nine o'clock."""
    return saying.said_versus_seen(shop, NOW + timedelta(hours=hours))


def told(shop: Shop, *, days: int = 10) -> tuple[ToldSeen, ...]:
    """Which dates were kept, seen so many days later."""
    return saying.told_versus_seen(shop, NOW + timedelta(days=days))


def goes(shop: Shop, number: int, *, minutes: int) -> None:
    """All of a box is ready and goes, so many minutes after Monday, nine o'clock."""
    then = by(minutes=minutes)
    moving.move_knives(shop, by(minutes=minutes), box(shop, number).on_hand, Column.READY)
    closing.begin_close_out(shop, by(minutes=minutes), box(shop, number).box)
    closing.count(shop, by(minutes=minutes), close(shop, number), box(shop, number).ready_count)
    closing.confirm_names(shop, by(minutes=minutes), close(shop, number))
    closing.confirm_label(shop, by(minutes=minutes), close(shop, number), "self")
    closing.settle(shop, by(minutes=minutes), close(shop, number), Settling.ON_ACCOUNT)
    closing.send_off(shop, then, close(shop, number))


def test_the_first_look_of_a_day_counts(shop: Shop) -> None:
    """What is said later that day of the same box changes nothing; of another box it is kept; the next day anew."""
    first, second = parcel(shop), counter(shop)
    assert not saying.is_said(shop, MONDAY)
    say(shop, first, permille=150)
    assert saying.is_said(shop, MONDAY)

    say(shop, first, second, permille=900)
    say(shop, first, permille=400, day=MONDAY + timedelta(days=1))

    assert [(one.day.day, one.number, one.late_permille) for one in seen(shop)] == [
        (9, 100, 150),
        (9, 101, 900),
        (10, 100, 400),
    ]
    assert not [step for step in undoing.steps(shop, "J") if step.operation == "say_chances"]


def test_saying_nothing_stores_nothing(shop: Shop) -> None:
    """A morning without promised boxes leaves no line."""
    before = state(shop)
    say(shop)

    assert state(shop) == before


@pytest.mark.parametrize(("minutes", "late"), [(359, False), (360, False), (361, True)])
def test_a_box_is_late_when_its_last_knife_is_ready_after_its_cut_off(shop: Shop, minutes: int, late: bool) -> None:
    """Ready to the minute is in time; the last knife decides, and one that was declined is ready."""
    made = parcel(shop)
    say(shop, made)
    noting.decline_knife(shop, by(minutes=30), made.knives[0], DeclineReason.CRACKED)
    moving.move_knives(shop, by(minutes=60), made.knives[1:2], Column.READY)
    moving.move_knives(shop, by(minutes=70), made.knives[2:], Column.TESTING)
    moving.move_knives(shop, by(minutes=minutes), box(shop, 100).knives[2:], Column.READY)

    (one,) = seen(shop)

    assert (one.ready_at, one.late) == (by(minutes=minutes).now, late)


def test_what_is_not_over_is_not_judged(shop: Shop) -> None:
    """Nothing is seen before the cut-off; after it a box that is not ready is late."""
    say(shop, parcel(shop))

    assert seen(shop, hours=5) == ()
    assert [one.late for one in seen(shop, hours=7)] == [True]


def test_leaving_and_coming_back_does_not_make_a_box_late(shop: Shop) -> None:
    """A box that was ready in time and is brought back into the shop later was ready in time."""
    made = parcel(shop)
    say(shop, made)
    goes(shop, 100, minutes=60)
    assert [one.late for one in seen(shop)] == [False]

    undoing.undo(shop, by(minutes=900), undoing.steps(shop, "J")[0].group_id, "the van had left")

    assert [one.late for one in seen(shop)] == [False]


def test_a_knife_that_comes_back_from_ready_is_judged_by_its_last_time(shop: Shop) -> None:
    """Not sharp after all: the box was ready when the knife was ready again."""
    made = parcel(shop, knives=1)
    say(shop, made)
    for minutes, to in ((60, Column.READY), (90, Column.ON_BENCH), (400, Column.READY)):
        moving.move_knives(shop, by(minutes=minutes), box(shop, 100).knives, to)

    assert [(one.ready_at, one.late) for one in seen(shop)] == [(by(minutes=400).now, True)]


def test_what_never_came_is_not_judged(shop: Shop) -> None:
    """A box that is only announced, one called off, and one whose receiving was taken back say nothing of the shop."""
    expected, off = announced(shop), announced(shop)
    mistake = counter(shop)
    received = undoing.steps(shop, "J")[0]
    say(shop, expected, off, mistake)
    announcing.call_off(shop, by(), off.box, "sold the knives")
    undoing.undo(shop, by(), received.group_id, "twice")

    assert seen(shop) == ()
    assert told(shop) == ()


def test_an_unopened_box_past_its_cut_off_is_late(shop: Shop) -> None:
    """It stood at the door, and the shop had promised."""
    customer = receiving.add_customer(shop, by(), name="Oake")
    unopened = NewBox(
        customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, knives=(), opened=False
    )
    say(shop, box(shop, receiving.receive_box(shop, by(), unopened)))

    assert [one.late for one in seen(shop)] == [True]


def test_what_is_long_past_is_left_out(shop: Shop) -> None:
    """After a year it says little of the shop as it is."""
    say(shop, parcel(shop))

    assert len(seen(shop, hours=365 * 24)) == 1
    assert seen(shop, hours=367 * 24) == ()
    assert len(told(shop, days=365)) == 1
    assert told(shop, days=370) == ()


def test_chances_are_gathered_by_tenths(shop: Shop) -> None:
    """How often something was said, what on average, and how often it was so; certainty is in the last tenth."""
    boxes = [parcel(shop, knives=1, name=f"Oake {n}") for n in range(5)]
    for made, permille in zip(boxes, (0, 99, 100, 950, 1000), strict=True):
        say(shop, made, permille=permille)
    moving.move_knives(shop, by(), [k for made in boxes[:3] for k in made.knives], Column.READY)

    assert saying.in_tenths(seen(shop)) == (
        SaidTenth(from_percent=0, said=2, said_permille=50, late=0),
        SaidTenth(from_percent=10, said=1, said_permille=100, late=0),
        SaidTenth(from_percent=90, said=2, said_permille=975, late=2),
    )


DAY = 24 * 60


@pytest.mark.parametrize(("minutes", "kept"), [(DAY, True), (DAY + 7 * 60, True), (DAY + 7 * 60 + 1, False)])
def test_a_pick_up_is_kept_when_it_is_ready(shop: Shop, minutes: int, kept: bool) -> None:
    """Promised for Tuesday: ready by four in the afternoon holds, whenever it is fetched."""
    counter(shop)
    moving.move_knives(shop, by(minutes=minutes), box(shop, 100).knives, Column.READY)

    (one,) = told(shop)

    assert (one.kept, one.done_at, one.replaced) == (kept, by(minutes=minutes).now, False)
    assert (one.kind, one.day, one.cut_off.hour) == (PromiseKind.DAY, date(2026, 11, 10), 16)


@pytest.mark.parametrize(
    ("minutes", "kept"), [(DAY, True), (DAY + 10 * 60, True), (2 * DAY, False)], ids=["morning", "evening", "next day"]
)
def test_a_parcel_is_kept_when_it_goes(shop: Shop, minutes: int, kept: bool) -> None:
    """In hand by Friday with two days on the way, one of them no carrier's day: it has to leave on Tuesday."""
    parcel(shop)
    goes(shop, 100, minutes=minutes)

    (one,) = told(shop)

    assert one.cut_off.date() == date(2026, 11, 10)
    assert (one.kept, one.done_at) == (kept, by(minutes=minutes).now)


def ready_only(shop: Shop) -> None:
    """Ready, but still in the shop."""
    moving.move_knives(shop, by(), box(shop, 100).knives, Column.READY)


def nothing(shop: Shop) -> None:
    """Nothing was done."""


@pytest.mark.parametrize("happens", [ready_only, nothing], ids=lambda one: one.__name__)
def test_a_parcel_that_is_still_here_is_not_kept(shop: Shop, happens: Callable[[Shop], None]) -> None:
    """Ready is not gone."""
    parcel(shop)
    happens(shop)

    assert [(one.kept, one.done_at) for one in told(shop)] == [(False, None)]


def test_each_date_told_is_judged(shop: Shop) -> None:
    """The first date stays broken when a later one was told and kept; a date that lies ahead is not judged."""
    made = counter(shop)
    for day in (12, 30):
        later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, day), told_to="Ms Verrin", reason="belts late")
        promising.promise(shop, by(), box(shop, made.box.number).box, later)
    moving.move_knives(shop, by(minutes=3 * DAY), box(shop, 100).knives, Column.READY)

    assert [(one.day.day, one.kept, one.replaced) for one in told(shop)] == [(10, False, True), (12, True, True)]


FLU = "\n[[closures]]\nfirst = 2026-11-{first:02}\nlast = 2026-11-13\nreason = 'flu'\n"


@pytest.mark.parametrize("first", [2, 9, 10])
def test_days_closed_later_bring_no_told_date_forward(shop: Shop, first: int) -> None:
    """Told on Monday for Tuesday, closed for the week afterwards: it is over on Tuesday at four, and was not kept."""
    counter(shop)
    take_settings(shop, by(minutes=30), seed_text("settings.toml") + FLU.format(first=first))

    assert told(shop, days=1) == ()
    (one,) = told(shop, days=2)
    assert (one.kept, one.cut_off) == (False, datetime(2026, 11, 10, 16, tzinfo=one.cut_off.tzinfo))


@pytest.mark.parametrize(("first", "hour"), [(2, 9), (9, 9), (10, 16)])
def test_a_box_is_late_by_no_more_than_it_was_owed(shop: Shop, first: int, hour: int) -> None:
    """With days closed since its date was told, its cut-off comes forward to the telling, not to days before it."""
    counter(shop)
    take_settings(shop, by(minutes=30), seed_text("settings.toml") + FLU.format(first=first))

    seen = look(shop, NOW + timedelta(hours=8)).boxes[0]
    assert seen.ship_by == datetime(2026, 11, 9, hour, tzinfo=seen.ship_by.tzinfo if seen.ship_by else None)
    assert seen.forecast.lateness is Lateness.LATE
    assert seen.honest_day == date(2026, 11, 16)


def test_what_was_said_is_found_by_its_day(shop: Shop) -> None:
    """The boxes of one day, and of no other."""
    made = parcel(shop)
    say(shop, made)

    assert asking.boxes_said(shop.database, MONDAY) == {made.box.id}
    assert asking.boxes_said(shop.database, MONDAY + timedelta(days=1)) == frozenset()
