"""What the receiving form tells while a box is typed: the earliest day, its sum, yes or no to a day."""

from datetime import time

import pytest

from queueboard.board.desk import Desk
from queueboard.board.forms import promise_line
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.shop.opening import Shop
from queueboard.shop.picture import Picture
from queueboard.shop.promising import promise
from queueboard.shop.wishing import Advice, Wish, advise
from queueboard.values.new import NewPromise
from queueboard.words import GoesBy, PromiseKind
from tests.board.dump import dump
from tests.board.host import SMALL, Host, until
from tests.board.typing import fill
from tests.shop.place import NOW, by, chef, counter, picture

COUNTER_BOX = ("verrin", "<1>", "<1>")
"""A box over the counter, fetched by the customer."""
PARCEL_BOX = ("verrin", "<2>", "<2>")


def host(shop: Shop) -> Host:
    """An app that shows the form."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: ReceiveScreen(desk))


def form(app: Host) -> ReceiveScreen:
    """The form on top."""
    assert isinstance(app.screen, ReceiveScreen)
    return app.screen


async def test_the_first_line_of_knives_brings_the_earliest_day(two_boxes: Shop) -> None:
    """Before any knife nothing is told; after a line the day stands there, with its sum and the key that takes it."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "4", "")
        assert "earliest" not in dump(app)
        assert "F3" not in dump(app)

        await fill(pilot, "4 chef 8")

        assert "earliest: ready by Mon 9 Nov" in dump(app)
        assert "+ this box 26 + to spare" in dump(app)
        assert "room for a rush:" in dump(app)
        assert "F3 the day" in dump(app)


async def test_f3_takes_the_day_and_leaves_the_cursor(two_boxes: Shop) -> None:
    """The earliest day stands in its field as if typed, the cursor stays, and it can be done."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *PARCEL_BOX, "4", "", "4 chef 8")
        before = app.focused
        await pilot.press("f3")
        await pilot.pause()

        assert (app.focused, form(app).promised.day.value) == (before, "2026-11-13")
        assert "Fri 13 Nov: yes" in dump(app)


async def test_a_day_typed_is_answered_before_enter(two_boxes: Shop) -> None:
    """Whoever is asked “can you do it Tuesday?” reads the answer as soon as the day can be read."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "4", "", "4 chef 8")
        form(app).promised.day.value = "t"
        await pilot.pause()
        assert "room for a rush:" in dump(app)
        form(app).promised.day.value = "tue"
        await until(pilot, lambda: "Tue 10 Nov: yes" in dump(app))


async def test_a_no_says_whom_it_would_make_late(two_boxes: Shop) -> None:
    """A wish that costs somebody a promise names box and customer; a name is shown as it was typed."""
    for _ in range(4):
        counter(two_boxes, name="[b]Ola[/b] Brandt", knives=10)
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "32", "", "32 chef 8")
        form(app).promised.day.value = "tue"
        await until(pilot, lambda: "Tue 10 Nov: no" in dump(app))
        said = " ".join(dump(app).split())

    assert "it would make box" in said
    assert "[b]Ola[/b] Brandt" in said


async def test_a_no_is_taken_in_only_when_it_is_meant(two_boxes: Shop) -> None:
    """The first time nothing is stored and the sentence says why; the same once more is the person's own will."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "90", "", "90 chef 8")
        form(app).promised.day.value = "today"
        await until(pilot, lambda: ": no" in dump(app))
        await pilot.press("f2")

        assert "The answer to that day is no. The same key once more tells it all the same." in dump(app)
        assert len(picture(two_boxes).boxes) == 2

        await pilot.press("f2")
        await until(pilot, lambda: len(picture(two_boxes).boxes) == 3)


async def test_a_promise_by_a_time_waits_for_its_time(two_boxes: Shop) -> None:
    """By a time is answered once the time is there too."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "1", "", "chef 8")
        promised = form(app).promised
        promised.kind.take(PromiseKind.BY_TIME)
        promised.day.value = "tue"
        await pilot.pause()
        assert "Tue 10 Nov" not in dump(app)
        promised.time.value = "16:00"
        await until(pilot, lambda: "Tue 10 Nov 16:00: yes" in dump(app))


async def test_a_day_of_shipping_does_without_the_carrier(two_boxes: Shop) -> None:
    """The day a parcel leaves comes before the day it is in hand."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *PARCEL_BOX, "1", "", "chef 8")
        form(app).promised.kind.take(PromiseKind.SHIPS_BY)
        await until(pilot, lambda: "earliest: ships by Mon 9 Nov" in dump(app))


async def test_a_round_takes_what_is_ready_the_day_before(two_boxes: Shop) -> None:
    """What is ready today goes on tomorrow's round; today's round is a no."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "1", "", "chef 8")
        form(app).promised.kind.take(PromiseKind.NEXT_ROUND)
        await until(pilot, lambda: "earliest: on the round of Tue 10 Nov" in dump(app))
        await pilot.press("f3")
        await until(pilot, lambda: "Tue 10 Nov: yes" in dump(app))
        form(app).promised.day.value = "today"
        await until(pilot, lambda: "Mon 9 Nov: no" in dump(app))


async def test_a_box_that_is_not_opened_is_told_no_day(two_boxes: Shop) -> None:
    """What nobody has counted is not promised: the lines go with the knives, and F3 does nothing."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "4", "", "4 chef 8")
        form(app).came.at = 3
        await until(pilot, lambda: "earliest" not in dump(app))
        await pilot.press("f3")

        assert form(app).promised.day.value == ""
        assert "F3" not in dump(app)


@pytest.mark.parametrize("typed", ["", "three", "61", "999999"])
async def test_carrier_days_that_are_none_bring_no_day(two_boxes: Shop, typed: str) -> None:
    """Without the carrier's days nobody knows when a parcel is in hand."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *PARCEL_BOX, "4", "", "4 chef 8")
        assert "earliest" in dump(app)
        form(app).carrier_days.value = typed
        await until(pilot, lambda: "earliest" not in dump(app))


async def test_it_is_asked_once_for_each_change(two_boxes: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """Typing a note, walking about and looking again at the same shop ask nothing anew."""
    asked: list[Wish] = []

    def counted(seen: Picture, wish: Wish) -> Advice | None:
        asked.append(wish)
        return advise(seen, wish)

    monkeypatch.setattr(promise_line, "advise", counted)
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "4", "", "4 chef 8")
        before = len(asked)
        form(app).note.value = "shelf 2"
        form(app).things.value = "roll"
        await pilot.pause()
        form(app).show(app.desk.picture)
        assert len(asked) == before

        form(app).promised.day.value = "fri"
        await pilot.pause()
        assert len(asked) == before + 1


async def test_another_window_s_promise_counts_at_once(two_boxes: Shop) -> None:
    """When another window takes in work, the room shown is what is left now."""
    app = host(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *COUNTER_BOX, "4", "", "4 chef 8")
        advice = form(app).when.advice
        assert advice is not None
        made = counter(two_boxes, knives=9)
        told = NewPromise(kind=PromiseKind.BY_TIME, day=NOW.date(), at=time(16), told_to="Ms Verrin", reason="waits")
        promise(two_boxes, by(), made.box, told)
        form(app).refresh_picture()
        await pilot.pause()
        now = form(app).when.advice

    assert now is not None
    assert now.room_today < advice.room_today


def test_a_box_that_could_not_be_taken_in_is_not_asked_about(two_boxes: Shop) -> None:
    """No knives, or more than a box may hold, bring no day; as many as it may hold do get an answer."""
    seen = picture(two_boxes)

    def about(knives: int) -> Advice | None:
        return advise(seen, Wish(knives=(chef(),) * knives, goes_by=GoesBy.PICK_UP))

    assert (about(0), about(1000)) == (None, None)
    assert about(999) is not None
