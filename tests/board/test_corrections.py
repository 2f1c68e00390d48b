"""Typed mistakes put right from the screens: a knife's line, a box, a customer, whose box it is, what was lost."""

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs import CorrectDialog, LostDialog
from queueboard.errors import RuleError
from queueboard.shop.closing import (
    begin_close_out,
    confirm_label,
    confirm_names,
    count,
    send_off,
    settle,
    tick,
    ticks_done,
    why_missing,
)
from queueboard.shop.correcting import correct_box
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import customers
from queueboard.shop.undoing import steps, undo
from queueboard.values.box import CloseOut
from queueboard.words import Column, Condition, Edge, GoesBy, Settling
from tests.board.answering import COUNTER, PARCEL, answered, refused
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, counter


async def test_a_knife_is_corrected(two_boxes: Shop) -> None:
    """A knife's line is corrected field by field; what is not touched stays."""
    knife = box(two_boxes, COUNTER).knives[0]
    answers = ("<1>", "bread", "9", "serrated", "small chips", "", "red handle", "leave the tip")
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, knife), *answers)

    now = box(two_boxes, COUNTER).knives[0]
    assert (now.kind, now.edge, now.condition) == ("bread", Edge.SERRATED, Condition.SMALL_CHIPS)
    assert (now.length_mm, now.mark, now.wish) == (229, "red handle", "leave the tip")
    assert now.price_cents == knife.price_cents


@pytest.mark.parametrize(
    ("answers", "said"),
    [
        (("sword", "8", "plain", "dull", "", "", ""), "no kind called"),
        (("chef", "80", "plain", "dull", "", "", ""), "80 in"),
        (("chef", "8", "wavy", "dull", "", "", ""), "“wavy” is not an edge"),
        (("chef", "8", "plain", "worn", "", "", ""), "“worn” is not a condition"),
    ],
)
async def test_a_correction_that_cannot_be(two_boxes: Shop, answers: tuple[str, ...], said: str) -> None:
    """An unknown word or a length out of range is said, and nothing is stored."""
    knife = box(two_boxes, COUNTER).knives[0]

    assert said in await refused(two_boxes, lambda desk: CorrectDialog(desk, knife), "<1>", *answers)
    assert box(two_boxes, COUNTER).knives[0] == knife


async def test_a_length_is_taken_back(two_boxes: Shop) -> None:
    """An emptied length is not measured any more; undo measures it again."""
    knife = box(two_boxes, COUNTER).knives[0]
    assert knife.length_mm is not None
    answers = ("<1>", knife.kind, "", knife.edge.value, knife.condition.value, "", knife.mark, knife.wish)
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, knife), *answers)
    assert box(two_boxes, COUNTER).knives[0].length_mm is None

    undo(two_boxes, by(), steps(two_boxes, "MB")[0].group_id)
    assert box(two_boxes, COUNTER).knives[0].length_mm == knife.length_mm


async def test_what_the_note_says_is_taken_back(two_boxes: Shop) -> None:
    """An emptied count of the note is as if nobody had said how many."""
    correct_box(two_boxes, by(), box(two_boxes, COUNTER).box, note_says=3)
    seen = box(two_boxes, COUNTER).box
    answers = ("<2>", str(seen.number), str(seen.counted), "", str(seen.carrier_days), "<1>", "<1>")
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, box(desk.shop, COUNTER).knives[0]), *answers)

    assert box(two_boxes, COUNTER).box.note_says is None
    assert box(two_boxes, COUNTER).box.counted == seen.counted


async def test_a_box_is_corrected(two_boxes: Shop) -> None:
    """Number, counts, days and ways are corrected; the tags follow the number; a parcel gets a label to buy."""
    own = box(two_boxes, COUNTER).box
    answers = ("<1>", "417", "2", "3", "4", "<1>", "<2>")
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, own), *answers)

    now = box(two_boxes, 417)
    assert (now.box.counted, now.box.note_says, now.box.carrier_days) == (2, 3, 4)
    assert now.box.goes_by is GoesBy.PARCEL
    assert [knife.tag for knife in now.knives] == ["417-1", "417-2"]
    assert now.label is not None


async def test_a_number_that_is_taken(two_boxes: Shop) -> None:
    """A second box with the same number is refused with a sentence."""
    own = box(two_boxes, COUNTER).box
    answers = ("<1>", str(PARCEL), "2", "", "0", "<1>", "<1>")

    assert "Box 100 is on the board already" in await refused(
        two_boxes, lambda desk: CorrectDialog(desk, own), *answers
    )


async def test_a_customer_is_corrected(two_boxes: Shop) -> None:
    """Name, phone, town, address, notes and proof cards are corrected; a name like markup is a name."""
    customer = box(two_boxes, COUNTER).customer
    answers = ("<1>", "[/] Verrin", "555 0123", "Osterby", "2 Pier Road", "rings twice", "<plus>", "<enter>")
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, customer), *answers)

    now = box(two_boxes, COUNTER).customer
    assert (now.name, now.phone, now.town) == ("[/] Verrin", "555 0123", "Osterby")
    assert (now.address, now.notes, now.proof_card) == ("2 Pier Road", "rings twice", True)


async def test_an_empty_name_is_refused(two_boxes: Shop) -> None:
    """A customer cannot lose the name."""
    customer = box(two_boxes, COUNTER).customer

    screen = await refused(two_boxes, lambda desk: CorrectDialog(desk, customer), "<1>", " ", "", "", "", "", "<enter>")
    assert "The name is empty" in screen


async def test_a_box_is_given_to_its_right_customer(two_boxes: Shop) -> None:
    """A box entered for the wrong customer goes to the one picked by surname."""
    own = box(two_boxes, COUNTER).box
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, own), "<2>", "tallis")

    assert box(two_boxes, COUNTER).customer.name == "R. Tallis"


async def test_a_box_is_given_to_a_new_customer(two_boxes: Shop) -> None:
    """Where the right customer is new, name, phone and town are asked for and stored."""
    own = box(two_boxes, COUNTER).box
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, own), "<2>", "Bren Oake", "", "Dunmere")

    now = box(two_boxes, COUNTER).customer
    assert (now.name, now.town) == ("Bren Oake", "Dunmere")


async def test_a_customer_entered_twice_becomes_one(two_boxes: Shop) -> None:
    """The boxes of the double go to the entry that is kept, and the double is not offered any more."""
    counter(two_boxes, name="Rob Tallis")
    kept = box(two_boxes, PARCEL).customer
    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, kept), "<2>", "rob", "<enter>")

    assert box(two_boxes, 102).customer.id == kept.id
    assert "Rob Tallis" not in {customer.name for customer in customers(two_boxes)}


async def test_a_knife_typed_by_mistake_is_taken_off(two_boxes: Shop) -> None:
    """A knife that was never there needs a reason to be taken off."""
    knife = box(two_boxes, COUNTER).knives[1]
    screen = await refused(two_boxes, lambda desk: CorrectDialog(desk, knife), "<6>", "")
    assert "Say why 101-2 is taken off" in screen

    assert await answered(two_boxes, lambda desk: CorrectDialog(desk, knife), "<6>", "counted the steel")
    assert [k.tag for k in box(two_boxes, COUNTER).knives] == ["101-1"]


def lose_one(shop: Shop) -> None:
    """Send the counter box off without its second knife."""

    def now() -> CloseOut:
        close = box(shop, COUNTER).close_out
        assert close is not None
        return close

    knives = box(shop, COUNTER).knives
    move_knives(shop, by(), knives, Column.READY)
    begin_close_out(shop, by(), box(shop, COUNTER).box)
    count(shop, by(), now(), 1)
    tick(shop, by(), now(), knives[0].id)
    ticks_done(shop, by(), now())
    why_missing(shop, by(), now(), "she waits at the counter")
    confirm_names(shop, by(), now())
    confirm_label(shop, by(), now(), "herself")
    settle(shop, by(), now(), Settling.ON_ACCOUNT, "")
    send_off(shop, by(), now())


@pytest.mark.parametrize("answers", [("<enter>", "<1>"), ("<enter>", "<2>", "a new one bought for her")])
async def test_a_lost_knife_is_found_or_settled(two_boxes: Shop, answers: tuple[str, ...]) -> None:
    """What is looked for is found again, or the loss is settled in words and the box is done with."""
    lose_one(two_boxes)
    box_id = box(two_boxes, COUNTER).box.id

    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: LostDialog(desk, box_id))
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, *answers)
        assert app.left

    here = [knife.looking_for for b in desk.look().boxes for knife in b.knives if b.box.id == box_id and knife.on_hand]
    assert True not in here


def test_nothing_lost_is_said(two_boxes: Shop) -> None:
    """Where nothing is looked for a sentence says so instead of an empty question."""
    with pytest.raises(RuleError, match="Nothing of box 101 is looked for"):
        LostDialog(Desk(two_boxes, "MB", lambda: NOW), box(two_boxes, COUNTER).box.id)
