"""Story 2: the note says 12, the box holds 13 (Mon 9 Nov, R. Tallis, Dunmere). All names and numbers are invented."""

from datetime import timedelta

import pytest
from textual.widgets import Input

from queueboard.board.desk import Desk
from queueboard.board.screens.box import BoxScreen
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.errors import RuleError
from queueboard.phrases.boxes import waits_words
from queueboard.phrases.day import waiting_boxes
from queueboard.shop import closing, counting, moving
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.undoing import box_history
from queueboard.values.new import NewBox, NewKnife
from queueboard.words import CameBy, CloseStep, Column, Edge, GoesBy, WaitingFor
from tests.board.dump import dump
from tests.board.host import LARGE, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, picture

UTILITY_CENTS = 800


def thirteen(shop: Shop) -> BoxPicture:
    """Thirteen counted before the note is opened, which says twelve; the last typed is a 15 cm utility."""
    customer = add_customer(shop, by(), name="R. Tallis", town="Dunmere")
    twelve = tuple(NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200, mark=f"nick {n}") for n in range(12))
    knives = (*twelve, NewKnife(kind="utility", edge=Edge.PLAIN, length_mm=150))
    new = NewBox(
        customer_id=customer, came_by=CameBy.MAIL, goes_by=GoesBy.PICK_UP, counted=13, note_says=12, knives=knives
    )
    return box(shop, receive_box(shop, by(), new))


def test_both_counts_are_kept_and_twelve_are_priced(shop: Shop) -> None:
    """It is on the waiting list with its age, prices twelve, and holds the thirteenth."""
    made = thirteen(shop)
    later = look(shop, NOW + timedelta(days=2))

    assert (made.box.counted, made.box.note_says) == (13, 12)
    assert made.price_cents == sum(knife.price_cents for knife in made.knives[:12])
    assert [(k.kind, k.length_mm, k.price_cents) for k in made.apart] == [("utility", 150, UTILITY_CENTS)]
    assert [waiting.box.number for waiting in waiting_boxes(later)] == [made.box.number]
    assert waits_words(waiting_boxes(later)[0], later.now) == f"{WaitingFor.COUNT.value}, 2 days"
    with pytest.raises(RuleError, match="beyond the customer's note"):
        moving.move_knives(shop, by(), made.apart, Column.ON_BENCH)


def test_after_the_yes_thirteen_lines_and_the_total_up_by_eight(shop: Shop) -> None:
    """The old total is still told, and the close-out demands thirteen."""
    made = thirteen(shop)
    counting.yes_to_count(shop, by(minutes=60), made.box)
    after = box(shop, made.box.number)

    assert len(after.knives) == 13
    assert after.price_cents == made.price_cents + UTILITY_CENTS
    assert box_history(shop, made.box.id)[0].about.cents == made.price_cents
    assert (after.box.counted, after.box.note_says, after.box.waiting_for) == (13, 12, None)

    moving.move_knives(shop, by(), after.knives, Column.READY)
    closing.begin_close_out(shop, by(), box(shop, made.box.number).box)
    close = box(shop, made.box.number).close_out
    assert close is not None
    closing.count(shop, by(), close, 12)
    check = box(shop, made.box.number).close_check
    assert check is not None
    assert check.step is CloseStep.TICK
    close = box(shop, made.box.number).close_out
    assert close is not None
    closing.count(shop, by(), close, 13)
    check = box(shop, made.box.number).close_check
    assert check is not None
    assert len(check.going) == 13


def test_not_mine_goes_to_the_found_knives_and_into_no_box(shop: Shop) -> None:
    """With place and date, and no other box holds a knife more."""
    made = thirteen(shop)
    customer = add_customer(shop, by(), name="Bo Oake")
    other = NewBox(
        customer_id=customer,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=1,
        knives=(NewKnife(kind="utility", edge=Edge.PLAIN, length_mm=150),),
    )
    number = receive_box(shop, by(), other)
    counting.not_theirs(shop, by(minutes=60), made.box, "shelf F")
    now = picture(shop, minutes=60)

    assert [(f.kind, f.length_mm, f.place, f.from_box_number) for f in now.found] == [
        ("utility", 150, "shelf F", made.box.number)
    ]
    assert now.found[0].found_at.date() == NOW.date()
    assert [len(box(shop, n).knives) for n in (made.box.number, number)] == [12, 1]
    assert box(shop, made.box.number).sum.adds_up


async def test_the_same_through_the_screens(shop: Shop) -> None:
    """Counted, the note, the lines; then w and the answer, with the total before beside the new one."""
    add_customer(shop, by(), name="R. Tallis", town="Dunmere")
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: ReceiveScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "tallis", "<1>", "<1>", "13")
        assert isinstance(app.focused, Input)
        await fill(pilot, "12", "12 chef 20cm", "utility 15cm")
        assert "13 of 13 typed" in dump(app)
        assert "the note says 12: the last 1 priced apart until the yes" in dump(app)
        await pilot.press("f2")
        await pilot.pause()
        assert "8.00 USD" in dump(app)

    number = max(seen.box.number for seen in picture(shop).boxes)
    before = box(shop, number).price_cents
    app = Host(desk, lambda: BoxScreen(desk, box(shop, number).box.id))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("up", "w", "1")
        await pilot.pause()
        shown = dump(app)
        assert f"{(before + UTILITY_CENTS) / 100:.2f} USD, {before / 100:.2f} before" in shown
        assert "counted 13, the note says 12" in shown
