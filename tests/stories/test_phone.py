"""The phone by a scripted key list: the sentence is read and copied in at most six keys after the name."""

from datetime import date, timedelta

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.find import FindScreen
from queueboard.board.screens.gone import GoneScreen
from queueboard.board.screens.message import MessageScreen
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop import closing
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.shelving import notices_of_box
from queueboard.values.new import NewBox, NewLabel, NewPayment, NewPromise
from queueboard.words import CameBy, Column, GoesBy, LabelOwner, LabelState, PayWay, PromiseKind
from tests.board.dump import dump
from tests.board.host import SMALL, until
from tests.shop import undo_closing
from tests.shop.place import NOW, box, by, chef

LATER = NOW + timedelta(days=8)
"""Tuesday 17 November: the label of the box below is good to the 20th."""
MOST_KEYS = 6


@pytest.fixture
def thirteen(shop: Shop) -> int:
    """Thirteen knives of Åse Tallis: eleven ready, two on rework, 86.00 to pay; Maren Tallis has a box too."""
    for name, phone, town in (("Åse Tallis", "0555 99 02", "Vik"), ("Maren Tallis", "0555 014 417", "Osterby")):
        customer = add_customer(shop, by(), name=name, phone=phone, town=town)
        new = NewBox(
            customer_id=customer,
            came_by=CameBy.MAIL,
            goes_by=GoesBy.PARCEL,
            counted=13,
            knives=tuple(chef(mark=f"nick {n}") for n in range(13)),
            carrier_days=2,
            promise=NewPromise(kind=PromiseKind.SHIPS_BY, day=date(2026, 11, 19)),
            label=NewLabel(
                owner=LabelOwner.CUSTOMER, state=LabelState.HERE, expires_on=date(2026, 11, 20), name_on=name
            ),
        )
        number = receive_box(shop, by(), new)
    number -= 1
    move_knives(shop, by(), [knife for knife in box(shop, number).knives if knife.number > 11], Column.TESTING)
    move_knives(shop, by(minutes=1), box(shop, number).knives[11:], Column.ON_BENCH)
    move_knives(shop, by(minutes=2), box(shop, number).knives[:11], Column.READY)
    owed = box(shop, number).owed_cents
    paid = NewPayment(cents=owed - 8600, way=PayWay.CASH, paid_before_cents=0)
    take_payment(shop, by(minutes=3), box(shop, number).box, paid)
    return number


@pytest.mark.parametrize(
    ("name", "after"),
    [
        ("ase tallis", ("plus",)),
        ("tallis", ("plus",)),
        ("tallis vik", ("plus",)),
        ("vik ase", ("f8",)),
        ("9902", ("plus",)),
        ("TALLIS 9902", ("plus",)),
    ],
)
async def test_the_sentence_is_read_and_copied_in_six_keys_after_the_name(
    thirteen: int, shop: Shop, name: str, after: tuple[str, ...]
) -> None:
    """Board, f, the name in any order and case, without accents: the sentence stands there; one key copies it."""
    desk = Desk(shop, "MB", lambda: LATER)
    app = QueueboardApp(desk)
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("f", *("space" if sign == " " else sign for sign in name))
        await pilot.press(*after)
        await pilot.pause()
        read = " ".join(dump(app).split())
        said = "Eleven of thirteen done, two on rework, ships Thursday, 86.00 USD to pay, label good to the 20th."

        assert said in read
        assert app.clipboard == said
        assert "Handed to the terminal to copy (some refuse, and nobody hears it)" in read
    assert len(after) <= MOST_KEYS
    assert box(shop, thirteen).box.number == thirteen


async def test_same_surnames_stand_side_by_side_with_what_tells_them_apart(thirteen: int, shop: Shop) -> None:
    """Both cards with town and last four, and what to ask; the second one is one key away, and is written to a file."""
    desk = Desk(shop, "MB", lambda: LATER)
    app = QueueboardApp(desk)
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("f", *"tallis", "asterisk", "f9")
        await pilot.pause()
        shown = dump(app)
        assert "same surname: ask first name, town, last four" in shown
        assert "phone ends in 9902        phone ends in 4417" in shown
        assert f"▸{thirteen + 1}" in shown
    paper = shop.path.parent / "papers" / f"said-{thirteen + 1}.txt"
    assert paper.read_text(encoding="utf-8").startswith("None of thirteen done, thirteen not begun, ")


async def test_a_plus_at_the_front_is_part_of_a_phone(thirteen: int, shop: Shop) -> None:
    """Typed before anything else it is a letter like others, so that +49 555 can be looked for."""
    desk = Desk(shop, "MB", lambda: LATER)
    app = QueueboardApp(desk)
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("f", "plus", "4", "9")
        await pilot.pause()

        assert isinstance(app.screen, FindScreen)
        assert app.screen.typed() == "+49"
        assert not app.clipboard


async def test_did_my_box_get_off_is_answered_from_what_is_gone(shop: Shop) -> None:
    """A box that has left is found by its name behind the open ones; its message that it left is told and noted."""
    number = undo_closing.all_but_sent(shop)
    closing.send_off(shop, by(), undo_closing.close(shop, number))
    desk = Desk(shop, "MB", lambda: NOW + timedelta(days=1))
    app = QueueboardApp(desk)
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("f", *"tallis")
        await pilot.pause()
        assert f"{number} GONE" in dump(app)
        assert "left yesterday" in dump(app)
        await pilot.press("enter")
        await until(pilot, lambda: isinstance(app.screen, GoneScreen))
        gone = app.screen
        assert isinstance(gone, GoneScreen)
        await pilot.press("asterisk")
        await until(pilot, lambda: isinstance(app.screen, MessageScreen))
        assert f"(box {number}) left on Monday 9 November" in " ".join(dump(app).split())
        await pilot.press("slash", "4")
        await pilot.pause()
        (told,) = notices_of_box(shop, gone.gone.box.id)
        assert (told.sort, told.way) == (MessageSort.SHIPPED, NoticeWay.MAIL)
