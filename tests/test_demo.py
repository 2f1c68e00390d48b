"""The invented shop has every word of the board in it on any date, each worked out by the calendar and the planner."""

from collections.abc import Callable, Iterable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from queueboard.phrases.announced import coming_boxes, expected_word
from queueboard.phrases.boxes import TO_FETCH, box_due_word
from queueboard.seedfiles import seed_text
from queueboard.shop.demo import morning_zone
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.undoing import steps, undo
from queueboard.values.actor import Actor
from queueboard.values.knife import Knife
from queueboard.words import (
    ON_BOARD,
    CloseStep,
    Condition,
    DeclineReason,
    Edge,
    LabelOwner,
    LabelState,
    LabelWord,
    Lateness,
    OrderWord,
    Packing,
    PromiseKind,
    RunReason,
    ThingState,
    WaitingFor,
)
from tests.shop.place import demo_shop, half_past_eight

DATES = {
    "a Monday": date(2026, 11, 23),
    "a Friday": date(2026, 11, 27),
    "the last day of the year": date(2026, 12, 31),
    "the day the clocks go back, a Sunday": date(2026, 11, 1),
    "the day the clocks go forward, a Sunday": date(2026, 3, 8),
    "a Saturday": date(2026, 6, 13),
    "a leap day": date(2028, 2, 29),
}
EVENING = datetime(2026, 11, 25, 22, 40, tzinfo=UTC)


@pytest.fixture(scope="module", params=DATES.values(), ids=list(DATES))
def picture(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Picture:
    """The demo's picture at half past eight on one of the dates."""
    return taken(tmp_path_factory.mktemp("demo"), half_past_eight(request.param))


def taken(folder: Path, now: datetime) -> Picture:
    """The picture of a fresh demo shop."""
    shop = demo_shop(folder / "demo.qb", now)
    try:
        return look(shop, now)
    finally:
        close_shop(shop)


def all_knives(picture: Picture) -> list[Knife]:
    """Every knife on hand."""
    return [knife for box in picture.boxes for knife in box.on_hand]


def boxes_where(picture: Picture, holds: Callable[[BoxPicture], bool]) -> list[int]:
    """The numbers of the boxes for which something holds."""
    return sorted(box.box.number for box in picture.boxes if holds(box))


def test_about_25_boxes_and_130_knives(picture: Picture) -> None:
    """The board is as full as a real one."""
    assert 24 <= len(boxes_where(picture, lambda b: not b.box.announced)) <= 28
    assert 125 <= len(all_knives(picture)) <= 137


def test_every_due_word_is_there(picture: Picture) -> None:
    """LATE, TODAY, TOMORROW, a weekday, a date, no date and TO FETCH stand behind some box."""
    words = {box_due_word(box, picture.now) for box in picture.boxes}
    weekdays = {f"{picture.now.date() + timedelta(days=days):%a}" for days in range(2, 7)}

    assert {"LATE", "TODAY", "TOMORROW", "no date", TO_FETCH} <= words
    assert words & weekdays
    assert any(len(word.split()) >= 3 for word in words)


def test_late_and_will_be_late_come_from_the_plan(picture: Picture) -> None:
    """LATE has its ship-by behind it; WILL BE LATE has it ahead, and a finish that the plan puts after it."""
    late = [box for box in picture.boxes if box.forecast.lateness is Lateness.LATE]
    will_be = [box for box in picture.boxes if box.forecast.lateness is Lateness.WILL_BE_LATE]

    assert late
    assert all(box.ship_by is not None and box.ship_by < picture.now for box in late)
    assert will_be
    for box in will_be:
        assert box.ship_by is not None
        assert box.forecast.finish is not None
        assert picture.now < box.ship_by < box.forecast.finish
        assert box.forecast.late_minutes > 0


def test_tight_boxes_and_a_run_under_way_are_there(picture: Picture) -> None:
    """Some boxes are on time but tight, though the bench can bear what was promised; somebody's run is paused."""
    (run,) = picture.runs

    assert any(box.forecast.lateness is Lateness.TIGHT for box in picture.boxes)
    assert not picture.plan.overloads
    assert (run.started_by, run.paused_at is not None, len(run.knife_ids)) == ("JT", True, 4)
    assert picture.plan.runs[0].under_way is not None


def test_the_shop_moves_what_it_does(picture: Picture) -> None:
    """Its last days were full and kept on the board, so that its pace is believable: not far under the starter's."""
    pace = picture.minutes.day_yield

    assert 0.7 < pace.mean < 0.9
    assert (pace.days, pace.left_out) == (6, 0)


def test_every_label_word_is_there(picture: Picture) -> None:
    """Labels die today, die tomorrow, are dead, are to buy, to buy today, and good."""
    assert {due.word for due in picture.labels_due} == set(LabelWord)


def test_every_reason_for_a_turn_is_there(picture: Picture) -> None:
    """The day list has a run for each reason, and tells what changed since it was fixed this morning."""
    assert {run.why for run in picture.plan.runs} == set(RunReason)
    assert {change.what for change in picture.plan.changes} == {OrderWord.NEW, OrderWord.LAST_CHANCE}


def test_every_kind_of_waiting_is_there_with_its_age(picture: Picture) -> None:
    """Boxes and knives wait for each of the reasons, for different numbers of days."""
    waits = [(box.box.waiting_for, box.box.waiting_since) for box in picture.boxes]
    waits += [(knife.waiting_for, knife.waiting_since) for knife in all_knives(picture)]

    assert {reason for reason, _ in waits if reason is not None} == set(WaitingFor)
    assert len({since.date() for _, since in waits if since is not None}) >= 4
    assert picture.day_line.waiting >= len(WaitingFor) - 1


def _words_on_knives(knives: Iterable[Knife]) -> set[object]:
    return {word for knife in knives for word in (knife.column, knife.edge, knife.condition)}


def test_every_word_of_a_knife_is_there(picture: Picture) -> None:
    """All columns, edges and conditions; a declined, a reworked and a looked-for knife; marks, wishes, notes."""
    knives = all_knives(picture)

    assert {*ON_BOARD, *Edge, *Condition} <= _words_on_knives(knives)
    assert [k.tag for k in knives if k.declined is DeclineReason.CRACKED] == ["424-3"]
    assert {"423-1", "425-6"} <= {k.tag for k in knives if k.rework}
    assert [k.tag for k in knives if k.looking_for] == ["407-3"]
    assert any(k.mark for k in knives)
    assert any(k.wish for k in knives)
    assert any(k.note for k in knives)


def test_every_word_of_a_box_is_there(picture: Picture) -> None:
    """Every packing, promise, owner and state of a label, flag; not opened; not here; half gone; a thing looked for."""
    boxes = picture.boxes

    assert {box.box.packing for box in boxes} >= set(Packing)
    assert {box.promise.kind for box in boxes if box.promise} == set(PromiseKind)
    assert {(box.label.owner, box.label.state) for box in boxes if box.label} >= {
        (LabelOwner.CUSTOMER, LabelState.HERE),
        (LabelOwner.CUSTOMER, LabelState.TO_BUY),
        (LabelOwner.SHOP, LabelState.HERE),
        (LabelOwner.SHOP, LabelState.TO_BUY),
    }
    assert boxes_where(picture, lambda b: b.box.rush) == [429]
    assert boxes_where(picture, lambda b: b.box.this_next) == [430]
    assert boxes_where(picture, lambda b: b.box.never_slip) == [419]
    assert boxes_where(picture, lambda b: not b.box.opened and not b.box.announced) == [433]
    assert boxes_where(picture, lambda b: b.box.announced) == [435, 436]
    assert [expected_word(box, picture.now).split()[0] for box in coming_boxes(picture)] == ["NOT", "EXPECTED"]
    assert boxes_where(picture, lambda b: bool(b.on_hand) and len(b.on_hand) < len(b.knives)) == [403, 407]
    assert boxes_where(picture, lambda b: any(t.state is ThingState.LOOKING for t in b.things)) == [407]


def test_the_stories_of_the_trade_are_there(picture: Picture) -> None:
    """One surname twice, two look-alikes, a restaurant's large box, a note that says another number, a second date."""
    surnames = [box.customer.name.split()[-1] for box in picture.boxes if "Tallis" in box.customer.name]

    assert surnames == ["Tallis", "Tallis"]
    assert boxes_where(picture, lambda b: bool(b.look_alikes)) == [422, 423]
    assert boxes_where(picture, lambda b: len(b.knives) >= 20) == [419]
    mismatch = boxes_where(picture, lambda b: b.box.note_says not in {None, b.box.counted})
    assert mismatch == [417]
    assert boxes_where(picture, lambda b: len(b.promises) == 2) == [405]


def test_a_close_out_is_half_done(picture: Picture) -> None:
    """One box stands in the middle of its close-out: counted, not agreeing, some tags ticked, and nothing told."""
    (box,) = [box for box in picture.boxes if box.close_out is not None]

    assert box.close_out is not None
    assert box.close_check is not None
    assert box.close_check.step is CloseStep.TICK
    assert 0 < len(box.close_out.ticked) < len(box.on_hand)
    assert not box.close_check.going


def test_nothing_happened_after_now(picture: Picture) -> None:
    """Whatever the hour, every move, promise and wait of the demo lies in the past."""
    assert picture.saved_at is not None
    assert picture.saved_at <= picture.now
    assert all(knife.moved_at <= picture.now for knife in all_knives(picture))


def test_it_is_morning_in_the_demo_at_any_hour() -> None:
    """Wherever the machine's clock stands, the demo lies where the day has just begun."""
    for hour in range(48):
        now = datetime(2026, 11, 25, tzinfo=UTC) + timedelta(minutes=30 * hour)
        local = now.astimezone(ZoneInfo(morning_zone(now)))
        assert (6, 0) <= (local.hour, local.minute) < (11, 0)


def test_late_in_the_evening_nothing_is_missing(tmp_path: Path) -> None:
    """Taken at night, the demo still has a box for today, one for tomorrow, and a label that dies today."""
    picture = taken(tmp_path, EVENING)

    words = {box_due_word(box, picture.now) for box in picture.boxes}
    assert {"LATE", "TODAY", "TOMORROW"} <= words
    assert LabelWord.DIES_TODAY in {due.word for due in picture.labels_due}


@pytest.fixture
def demo(tmp_path: Path) -> Iterable[Shop]:
    """A demo shop that may be changed."""
    shop = demo_shop(tmp_path / "demo.qb", EVENING)
    yield shop
    close_shop(shop)


def test_what_happened_last_can_be_undone(demo: Shop) -> None:
    """The demo was made by the shop's own operations: its last step can be taken back like any other."""
    newest = steps(demo, "MB")[0]

    undo(demo, Actor(initials="MB", now=EVENING), newest.group_id, "only trying")

    assert steps(demo, "MB")[0].group_id != newest.group_id


def test_the_seed_names_nobody_twice() -> None:
    """Each box number and each customer of the script stands there once."""
    lines = seed_text("demo.toml").splitlines()
    numbers = [line for line in lines if line.startswith("number = ")]
    names = [line for line in lines if line.startswith("name = ")]

    assert len(numbers) == len(set(numbers))
    assert len(names) == len(set(names))
