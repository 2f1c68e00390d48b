"""Counts that differ, knives added, moved and found: both sides of the sum, and what is refused."""

import pytest

from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.intake.adding_up import with_apart
from queueboard.records.moved import found_of
from queueboard.shop import closing, counting, found_knives, moving, receiving, rehoming, waiting
from queueboard.shop.opening import Shop
from queueboard.shop.undoing import box_history
from queueboard.words import Column, WaitingFor
from tests.shop.place import box, by, chef, counter, parcel, picture
from tests.shop.undo_counting import found_one, lost_one, one_too_many


def test_knives_beyond_the_note_are_the_last_ones_or_those_typed_so() -> None:
    """Without a word it is the last; the word apart chooses another; more or fewer of them than are beyond is asked."""
    three = (chef(mark="a"), chef(mark="b"), chef(mark="c"))

    assert [knife.apart for knife in with_apart(three, 2)] == [False, False, True]
    assert [knife.apart for knife in with_apart(three, 3)] == [False, False, False]
    assert [knife.apart for knife in with_apart(three, None)] == [False, False, False]
    assert [knife.apart for knife in with_apart(three, 5)] == [False, False, False]
    marked = with_apart(three, 2)[::-1]
    assert with_apart(marked, 2) == marked
    with pytest.raises(TypedError, match="1 typed as apart, and 2 beyond the note"):
        with_apart(marked, 1)


def test_a_knife_apart_is_neither_charged_nor_moved(shop: Shop) -> None:
    """The box waits for the count, its total is that of the note, and the odd knife stays where it is."""
    made = one_too_many(shop)

    assert (made.box.counted, made.box.note_says, made.box.waiting_for) == (3, 2, WaitingFor.COUNT)
    assert made.totals.knives_cents == sum(knife.price_cents for knife in made.knives[:2])
    assert [knife.tag for knife in made.apart] == [made.knives[2].tag]
    with pytest.raises(RuleError, match="beyond the customer's note"):
        moving.move_knives(shop, by(), made.apart, Column.ON_BENCH)
    with pytest.raises(RuleError, match="waits for the yes to its count"):
        waiting.box_waits(shop, by(), made.box, None)


def test_yes_charges_it_and_keeps_the_total_before(shop: Shop) -> None:
    """After the yes the box goes on with all its knives, and history tells what the total was."""
    made = one_too_many(shop)
    counting.yes_to_count(shop, by(), made.box)
    after = box(shop, made.box.number)

    assert (after.box.waiting_for, after.apart, [k.number for k in after.agreed]) == (None, (), [3])
    assert after.price_cents == made.price_cents + made.apart[0].price_cents
    assert box_history(shop, made.box.id)[0].about.cents == made.price_cents
    with pytest.raises(RuleError, match="nothing to answer"):
        counting.yes_to_count(shop, by(), after.box)


def test_not_theirs_goes_to_the_found_knives_with_place_and_day(shop: Shop) -> None:
    """The knife leaves the box, into no other; without a place nothing happens."""
    made = one_too_many(shop)
    with pytest.raises(TypedError, match="Where does the knife lie"):
        counting.not_theirs(shop, by(), made.box, "  ")
    counting.not_theirs(shop, by(), made.box, "shelf F")
    after, found = box(shop, made.box.number), picture(shop).found

    assert [knife.number for knife in after.knives] == [1, 2]
    assert (after.sum.counted, after.sum.on_hand, after.sum.found, after.sum.adds_up) == (3, 2, 1, True)
    assert [(f.kind, f.length_mm, f.mark, f.place, f.from_box_number) for f in found] == [
        ("chef", 150, "blue", "shelf F", made.box.number)
    ]
    assert found[0].found_at == by().now


def test_a_found_knife_goes_into_a_box_only_with_a_reason(shop: Shop) -> None:
    """It comes in as a knife added later, with its mark, and is off the list."""
    found, made = found_one(shop), parcel(shop)
    with pytest.raises(ReasonNeededError, match="never goes silently"):
        found_knives.found_into_box(shop, by(), found, made.box, "")
    tag = found_knives.found_into_box(shop, by(), found, made.box, "the red dot is theirs")
    knife = picture(shop).knife(tag)

    assert knife is not None
    assert (knife.kind, knife.mark, knife.added_at) == ("chef", "red dot", by().now)
    assert picture(shop).found == ()
    assert found_of(shop.database, "TRUE")[0].settled_how == f"{tag}: the red dot is theirs"
    with pytest.raises(RuleError, match="said already"):
        found_knives.settle_found(shop, by(), found_of(shop.database, "TRUE")[0], "again")


def test_what_became_of_a_found_knife_is_said_in_words(shop: Shop) -> None:
    """Settled without a word is refused; settled with one it is off the list."""
    found = found_one(shop)
    with pytest.raises(ReasonNeededError, match="never just vanishes"):
        found_knives.settle_found(shop, by(), found, " ")
    found_knives.settle_found(shop, by(), found, "Ms Verrin took it")

    assert picture(shop).found == ()


def test_a_knife_added_later_leaves_the_others_as_they_came(shop: Shop) -> None:
    """It has its own time of coming; what was counted, when the box came in and its promise stay."""
    made = parcel(shop)
    tag = receiving.add_knife(shop, by(minutes=60), made.box, chef(mark="late"))
    after = box(shop, made.box.number)

    assert tag == f"{made.box.number}-4"
    assert [knife.added_at for knife in after.knives] == [None, None, None, by(minutes=60).now]
    assert (after.box.received_at, after.box.counted, after.promises) == (
        made.box.received_at,
        made.box.counted,
        made.promises,
    )
    assert (after.sum.counted, after.sum.added, after.sum.on_hand) == (3, 1, 4)


def test_a_moved_knife_has_a_new_tag_and_both_boxes_add_up(shop: Shop) -> None:
    """It leaves its number behind, which no other knife gets, and takes it again when it comes back."""
    made, other = parcel(shop), counter(shop)
    with pytest.raises(ReasonNeededError, match="never goes silently"):
        rehoming.move_to_box(shop, by(), made.knives[2], other.box, "")
    tag = rehoming.move_to_box(shop, by(), made.knives[2], other.box, "typed on the wrong box")
    here, there = box(shop, made.box.number), box(shop, other.box.number)

    assert tag == f"{other.box.number}-3"
    assert (here.sum.moved_out, here.sum.on_hand, there.sum.moved_in, there.sum.on_hand) == (1, 2, 1, 3)
    assert receiving.add_knife(shop, by(), here.box, chef()) == f"{made.box.number}-4"
    assert [step.operation for step in box_history(shop, made.box.id)][:2] == ["add_knife", "move_to_box"]

    moved = picture(shop).knife(tag)
    assert moved is not None
    assert (
        rehoming.move_to_box(shop, by(), moved, box(shop, made.box.number).box, "no, it was right")
        == made.knives[2].tag
    )
    assert box(shop, made.box.number).sum.adds_up


def test_a_moved_knife_lets_a_count_under_way_begin_anew(shop: Shop) -> None:
    """Whatever was counted or packed of either box is counted again."""
    made = counter(shop, knives=3)
    other = counter(shop, name="R. Tallis")
    moving.move_knives(shop, by(), (*made.knives, *other.knives), Column.READY)
    for number in (made.box.number, other.box.number):
        closing.begin_close_out(shop, by(), box(shop, number).box)
        close = box(shop, number).close_out
        assert close is not None
        closing.count(shop, by(), close, 2)
    rehoming.move_to_box(shop, by(), box(shop, made.box.number).knives[0], box(shop, other.box.number).box, "theirs")

    for number in (made.box.number, other.box.number):
        close = box(shop, number).close_out
        assert close is not None
        assert close.counted is None


def test_what_may_not_move_says_why(shop: Shop) -> None:
    """A knife held apart, one that is looked for, and one that is there already."""
    apart, lost, other = one_too_many(shop), lost_one(shop), counter(shop)
    with pytest.raises(RuleError, match="answer that first"):
        rehoming.move_to_box(shop, by(), apart.apart[0], other.box, "theirs")
    with pytest.raises(RuleError, match="looked for"):
        rehoming.move_to_box(shop, by(), lost.knives[0], other.box, "theirs")
    with pytest.raises(RuleError, match="already"):
        rehoming.move_to_box(shop, by(), other.knives[0], other.box, "theirs")


def test_a_knife_that_was_moved_is_not_struck(shop: Shop) -> None:
    """It came from another box, so it was there."""
    made, other = parcel(shop), counter(shop)
    tag = rehoming.move_to_box(shop, by(), made.knives[0], other.box, "theirs")
    moved = picture(shop).knife(tag)
    assert moved is not None
    with pytest.raises(RuleError, match="moved from another box"):
        receiving.strike_knife(shop, by(), moved, "typed twice")


def test_the_last_knife_of_a_box_may_move_and_the_box_is_closed(shop: Shop) -> None:
    """Typed under the wrong box, its only knife moves to the right one; nothing is left to close out."""
    wrong, right = counter(shop, knives=1), parcel(shop, knives=1)
    rehoming.move_to_box(shop, by(), wrong.knives[0], right.box, "typed on the wrong box")

    assert [one.box.number for one in picture(shop).boxes] == [right.box.number]
    assert len(box(shop, right.box.number).knives) == 2


def test_a_struck_knife_that_was_apart_leaves_nothing_to_ask(shop: Shop) -> None:
    """The one beyond the note was never there: the box waits for no yes any more."""
    made = one_too_many(shop)
    receiving.strike_knife(shop, by(), made.apart[0], "counted twice")

    assert box(shop, made.box.number).box.waiting_for is None


def test_a_struck_knife_stays_in_the_sum(shop: Shop) -> None:
    """One that was counted is told as struck; one that was added only later is simply not there."""
    made = parcel(shop)
    receiving.strike_knife(shop, by(), made.knives[0], "typed twice")
    receiving.add_knife(shop, by(), made.box, chef())
    receiving.strike_knife(shop, by(), box(shop, made.box.number).knives[-1], "typed twice")
    total = box(shop, made.box.number).sum

    assert (total.counted, total.added, total.struck, total.on_hand, total.adds_up) == (3, 0, 1, 2, True)


def test_a_knife_found_in_another_tray_is_back_and_that_tray_is_counted_anew(shop: Shop) -> None:
    """It is not looked for any more, with who found it when, and the other box's count begins again."""
    lost, other = lost_one(shop), counter(shop, name="Bo Oake")
    moving.move_knives(shop, by(), other.knives, Column.READY)
    closing.begin_close_out(shop, by(), box(shop, other.box.number).box)
    close = box(shop, other.box.number).close_out
    assert close is not None
    closing.count(shop, by(), close, 3)
    with pytest.raises(ReasonNeededError, match="never goes silently"):
        rehoming.found_among(shop, by(), lost.knives[0], box(shop, other.box.number).box, "")
    rehoming.found_among(shop, by("K", minutes=5), lost.knives[0], box(shop, other.box.number).box, "same handle")
    knife = box(shop, lost.box.number).knives[0]
    close = box(shop, other.box.number).close_out

    assert (knife.looking_for, knife.moved_by, knife.moved_at) == (False, "K", by(minutes=5).now)
    assert close is not None
    assert close.counted is None
    assert box_history(shop, other.box.id)[0].operation == "found_among"
