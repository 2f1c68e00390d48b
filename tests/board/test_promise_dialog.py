"""Telling a date of a box on the board: what the plan says, what can honestly be told, yes or no to a day."""

from datetime import date
from pathlib import Path

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.promising import promise
from queueboard.shop.wishing import Wish, advise, wish_again
from queueboard.values.new import NewPromise
from queueboard.words import GoesBy, Lateness, PromiseKind
from tests.board.answering import COUNTER, answered, refused
from tests.board.dump import dump
from tests.board.host import SMALL, Host, until
from tests.shop.place import NOW, box, by, chef, counter, parcel, picture, planned_box, small_shop
from tests.shop.undo_announcing import announced

TODAY = date(2026, 11, 9)


def test_an_open_box_is_asked_about_like_a_new_one(shop: Shop, tmp_path: Path) -> None:
    """Its own work is not counted twice: the offer is that of a new box in a shop where it never was."""
    parcel(shop, knives=9)
    own = counter(shop, knives=4)
    other = small_shop(tmp_path / "other")
    parcel(other, knives=9)

    again = advise(picture(shop), wish_again(own, None, PromiseKind.DAY))
    new = advise(picture(other), Wish(knives=(chef(),) * 4, goes_by=GoesBy.PICK_UP))
    close_shop(other)

    assert again is not None
    assert new is not None
    assert (again.offer, again.room_today) == (new.offer, new.room_today)


@pytest.mark.parametrize("field", ["day", "told"])
async def test_f3_takes_the_earliest_day_from_any_field(two_boxes: Shop, field: str) -> None:
    """The day that can be told stands in its field, the cursor stays where it was."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.PromiseDialog(desk, box(two_boxes, COUNTER).box.id))
    async with app.run_test(size=SMALL) as pilot:
        dialog = app.screen
        assert isinstance(dialog, dialogs.PromiseDialog)
        where = dialog.promised.day if field == "day" else dialog.told
        where.focus()
        await pilot.press("f3")
        await pilot.pause()

        assert (app.focused, dialog.promised.day.value) == (where, "2026-11-09")
        assert "Mon 9 Nov: yes" in dump(app)


async def test_the_day_taken_is_told(two_boxes: Shop) -> None:
    """F3, Enter, whom and why: the earliest day is the second promise."""
    box_id = box(two_boxes, COUNTER).box.id

    assert await answered(
        two_boxes, lambda desk: dialogs.PromiseDialog(desk, box_id), "<f3>", "<enter>", "Ms V", "she asked"
    )

    assert [told.day for told in box(two_boxes, COUNTER).promises] == [date(2026, 11, 10), TODAY]


async def test_a_typed_day_is_answered_for_its_kind(two_boxes: Shop) -> None:
    """A day is answered while it is typed; by a time waits for the time."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.PromiseDialog(desk, box(two_boxes, COUNTER).box.id))
    async with app.run_test(size=SMALL) as pilot:
        dialog = app.screen
        assert isinstance(dialog, dialogs.PromiseDialog)
        dialog.promised.day.value = "wed"
        await until(pilot, lambda: "Wed 11 Nov: yes" in dump(app))
        dialog.promised.kind.take(PromiseKind.BY_TIME)
        await until(pilot, lambda: "Wed 11 Nov" not in dump(app))


async def test_a_box_that_will_be_late_gets_its_honest_day(shop: Shop) -> None:
    """The day list says by how much it will be late and which day would hold; a reason is hinted at, never typed."""
    made = counter(shop, knives=90)
    today = NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="Ms Verrin", reason="she waits")
    promise(shop, by(), made.box, today)
    late = planned_box(shop, made.box.number)
    assert late.forecast.lateness is Lateness.WILL_BE_LATE
    assert late.honest_day is not None

    said = await refused(shop, lambda desk: dialogs.PromiseDialog(desk, made.box.id), "<f3>", "<enter>", "Ms V", "")

    assert "WILL BE LATE by" in said
    assert "at the earliest" in said
    assert "A second date needs who was told and why" in said
    assert "such as: the bench is full" in said


async def test_an_announced_box_is_offered_a_day_too(shop: Shop) -> None:
    """What is expected stands there, and the earliest day that its guess bears once it has come; F3 takes it."""
    box_id = announced(shop).box.id
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.PromiseDialog(desk, box_id))
    async with app.run_test(size=SMALL) as pilot:
        dialog = app.screen
        assert isinstance(dialog, dialogs.PromiseDialog)
        assert "expected Thursday, 6 knives" in dump(app)
        assert "earliest, if it comes by Thu 12 Nov: ships by Fri 13 Nov" in dump(app)
        await pilot.press("f3")

        assert dialog.promised.day.value == "2026-11-13"


async def test_a_day_that_is_a_no_is_told_only_after_a_second_enter(shop: Shop) -> None:
    """The first Enter says no and stores nothing; the same once more is the person's own will."""
    made = counter(shop, knives=90)
    today = str(TODAY)

    said = await refused(shop, lambda desk: dialogs.PromiseDialog(desk, made.box.id), today, "<enter>", "they insist")
    assert "The answer to that day is no. The same key once more tells it all the same." in said
    assert len(box(shop, made.box.number).promises) == 1

    assert await answered(
        shop, lambda desk: dialogs.PromiseDialog(desk, made.box.id), today, "<enter>", "they insist", "<enter>"
    )
    assert [told.day for told in box(shop, made.box.number).promises][1:] == [TODAY]


async def test_a_day_on_which_the_shop_is_shut(two_boxes: Shop) -> None:
    """The dialog says no with the reason and the next open day, and takes the day only when it is insisted on."""
    box_id = box(two_boxes, COUNTER).box.id
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.PromiseDialog(desk, box_id))
    async with app.run_test(size=SMALL) as pilot:
        dialog = app.screen
        assert isinstance(dialog, dialogs.PromiseDialog)
        dialog.promised.day.value = "25 dec"
        await until(pilot, lambda: "no, the shop is shut: Christmas Day; it opens again" in " ".join(dump(app).split()))
