"""One knife and one box in words."""

from dataclasses import replace
from datetime import timedelta

import pytest

from queueboard.phrases.boxes import (
    batch_totals,
    box_due_word,
    box_row,
    box_signs,
    box_title,
    counts_words,
    in_the_way,
    lost_words,
    n_of_m,
    ready_words,
    standing_words,
    waits_words,
)
from queueboard.phrases.knives import knife_line, knife_name, knife_signs, last_seen_words, length_words, wait_words
from queueboard.phrases.money import amount, box_money_words, money, owed_words
from queueboard.phrases.phone import phone_sentence
from queueboard.shop.picture import BoxPicture
from queueboard.words import Column, DeclineReason, Edge, GoesBy, Lateness, Packing, WaitingFor
from tests.busy_morning import busy_morning
from tests.pictures import (
    HOSTILE_NAMES,
    NOW,
    at,
    box,
    box_picture,
    customer,
    forecast,
    knife,
    knives,
    payment,
    picture,
    settings,
)

SHOP = settings()


@pytest.mark.parametrize(
    ("length_mm", "unit", "words"),
    [(200, "cm", "20 cm"), (205, "cm", "20.5 cm"), (203, "in", "8 in"), (216, "in", "8.5 in"), (None, "cm", "")],
)
def test_a_length_is_shown_in_the_shop_s_unit(length_mm: int | None, unit: str, words: str) -> None:
    """Millimetres become cm or inches with at most one decimal; what was not measured shows nothing."""
    assert length_words(length_mm, unit) == words


def test_a_knife_is_told_apart_in_one_line() -> None:
    """Tag, state words, kind, length, an edge that is not the usual one, and the mark, which comes last."""
    usual = knife("417-3", mark="black handle, nick", rework=2, column=Column.ON_BENCH)
    odd = knife("417-4", edge=Edge.SINGLE_LEFT, length_mm=None)

    assert knife_line(usual, SHOP) == "417-3 REDO x2 chef 20 cm, black handle, nick"
    assert knife_name(odd, SHOP) == "chef single bevel left"
    assert knife_name(knife(kind="bread", edge=Edge.SERRATED, length_mm=230), SHOP) == "bread 23 cm"
    assert knife_name(knife(kind="plane iron"), SHOP) == "plane iron 20 cm"


def test_every_state_of_a_knife_has_a_word() -> None:
    """Declined, looked for, waiting and rework are words, and several stand side by side."""
    all_at_once = replace(
        knife(rework=1, column=Column.TESTING, declined=DeclineReason.CRACKED, waiting_for=WaitingFor.PART),
        looking_for=True,
    )

    assert knife_signs(all_at_once) == ("DECLINED", "LOOKED FOR", "WAIT", "REDO")
    assert knife_signs(knife()) == ()
    assert knife_signs(knife(rework=1, column=Column.READY)) == ()


def test_a_missing_knife_was_last_seen_somewhere() -> None:
    """Where, when and by whom it was moved last."""
    seen = knife(column=Column.ON_BENCH, moved_at=at(16, 20, days=-1))

    assert last_seen_words(seen, NOW) == "on the bench, yesterday 16:20, MB"


def test_waiting_says_for_what_and_how_long() -> None:
    """A knife that waits has its reason and age; one that does not says nothing."""
    waits = knife(waiting_for=WaitingFor.BELTS, waiting_since=NOW - timedelta(days=3))

    assert wait_words(waits, NOW) == "belts, 3 days"
    assert wait_words(knife(), NOW) == ""


@pytest.mark.parametrize(
    ("cents", "words"), [(4100, "41.00"), (5, "0.05"), (0, "0.00"), (-205, "-2.05"), (123456, "1234.56")]
)
def test_an_amount_has_two_digits_of_cents(cents: int, words: str) -> None:
    """Whole cents are written without rounding."""
    assert amount(cents) == words


def test_what_is_owed_is_said_in_words() -> None:
    """To pay, paid and too much paid are told apart, with the shop's own sign."""
    assert money(4100, SHOP) == "41.00 EUR"
    assert owed_words(4100, SHOP) == "41.00 EUR to pay"
    assert owed_words(0, SHOP) == "paid"
    assert owed_words(-200, SHOP) == "2.00 EUR too much paid"
    assert box_money_words(box_picture(payments=(payment(1000),)), SHOP) == "27.00 EUR, 10.00 paid, 17.00 EUR to pay"
    assert box_money_words(box_picture(payments=(payment(2700),)), SHOP) == "27.00 EUR, paid"
    assert box_money_words(box_picture(knives_=(knife(price_cents=0),)), SHOP) == "nothing to pay"
    assert box_money_words(box_picture(box(opened=False)), SHOP) == "not priced yet"


def standing(*columns: Column, packing: Packing | None = None, opened: bool = True) -> BoxPicture:
    """A pick-up with knives in these columns."""
    return box_picture(box(packing=packing, opened=opened), knives_=knives(417, *columns), forecast_=forecast())


def test_a_box_stands_where_its_slowest_knife_stands() -> None:
    """The slowest column counts; a ready box says how it is packed; an unopened one that it is not opened."""
    ready = Column.READY

    assert standing_words(standing(ready, Column.TESTING, Column.GONE)) == "testing"
    assert standing_words(standing(ready, ready)) == "ready"
    assert standing_words(standing(ready, packing=Packing.LABEL_ON)) == "label on"
    assert standing_words(standing(ready, Column.RECEIVED, packing=Packing.BOXED)) == "received"
    assert standing_words(standing(opened=False)) == "not opened"
    assert standing_words(standing(Column.GONE)) == "gone"


def test_ready_counts_what_is_still_here() -> None:
    """N of m counts the knives on hand, and names those already gone apart."""
    part = standing(Column.READY, Column.ON_BENCH, Column.GONE, Column.GONE)

    assert n_of_m(part) == "1 of 2"
    assert ready_words(part) == "1 of 2 ready, 2 gone"
    assert counts_words(part) == "1 on bench, 1 ready, 2 gone"
    assert counts_words(standing()) == "no knives"


def test_a_knife_that_is_looked_for_is_not_called_ready() -> None:
    """Wherever it stood last, it is counted as looked for in every sentence."""
    lost, *gone = knives(417, Column.READY, Column.GONE, Column.GONE)
    part = box_picture(knives_=(replace(lost, looking_for=True), *gone), forecast_=forecast())

    assert counts_words(part) == "1 looked for, 2 gone"
    assert ready_words(part) == "0 of 1 ready, 1 looked for, 2 gone"
    assert standing_words(part) == "looked for"
    assert box_row(part, SHOP, NOW).counts == ("", "", "", "")
    assert batch_totals(part, SHOP, NOW)[0] == "0 of 1 ready: 1 looked for, 2 gone"
    assert in_the_way(part, NOW) == "1 looked for: 417-1 chef"


@pytest.mark.parametrize(
    ("lost", "said"),
    [
        (1, "417-1 chef"),
        (3, "417-1 chef, 417-2 chef and 417-3 chef"),
        (5, "417-1 chef, 417-2 chef and 3 more"),
    ],
)
def test_what_is_looked_for_is_named(lost: int, said: str) -> None:
    """Up to three by tag and kind, of more how many."""
    missing = tuple(replace(one, looking_for=True) for one in knives(417, *[Column.READY] * lost))

    assert lost_words(box_picture(knives_=missing)) == said


def test_what_stands_in_the_way_is_said() -> None:
    """An unopened box, a test, an answer, bench minutes and a box that only wants wrapping each have their reason."""
    waits = box(waiting_for=WaitingFor.ESTIMATE, waiting_since=at(8, days=-3))
    bench = box_picture(knives_=knives(417, Column.ON_BENCH), forecast_=forecast(minutes_left=9, finish=at(9, 40)))

    assert in_the_way(standing(opened=False), NOW) == "not opened yet"
    assert in_the_way(standing(Column.TESTING, Column.TESTING, Column.READY), NOW) == "2 wait for the test"
    assert in_the_way(standing(Column.READY), NOW) == "all ready: wrap it and hand it over"
    assert in_the_way(standing(Column.READY, packing=Packing.WRAPPED), NOW) == "all ready: hand it over"
    assert (
        in_the_way(box_picture(waits, knives_=(), forecast_=forecast()), NOW) == "waits for yes to the estimate, 3 days"
    )
    assert in_the_way(bench, NOW) == "9 min left at the bench, done by today 09:40"


def test_a_pick_up_that_is_ready_is_never_called_late() -> None:
    """Past its day it is to be fetched; a parcel in the same place is LATE."""
    yesterday = at(16, days=-1)
    pick_up = box_picture(knives_=knives(417, Column.READY), ship_by=yesterday)
    parcel = box_picture(box(goes_by=GoesBy.PARCEL), knives_=knives(417, Column.READY), ship_by=yesterday)

    assert box_due_word(pick_up, NOW) == "TO FETCH"
    assert box_due_word(parcel, NOW) == "LATE"


def test_every_state_of_a_box_has_a_word() -> None:
    """Ship-by, will be late, waiting, rush, this next and never slip stand side by side."""
    everything = box_picture(
        box(rush=True, this_next=True, never_slip=True, waiting_for=WaitingFor.MONEY, waiting_since=at(8)),
        forecast_=forecast(lateness=Lateness.WILL_BE_LATE, late_minutes=5),
    )

    assert box_signs(everything, NOW) == ("TOMORROW", "WILL BE LATE", "WAIT", "RUSH", "THIS NEXT", "NEVER SLIP")
    assert waits_words(everything, NOW) == "money asked for, 1 h"


def test_batch_totals_hold_every_total() -> None:
    """Counts, minutes, finish, promise, money, label, what it waits for and what it came with each have a line."""
    totals = "\n".join(line for b in busy_morning().boxes for line in batch_totals(b, SHOP, NOW))

    for words in ("2 of 3 ready", "5 min left", "LATE by", "ready by yesterday", "10.00 paid", "DIES TODAY"):
        assert words in totals
    assert "waits for 423-1: yes to the estimate, 3 days; 423-2: belts, 42 min" in totals
    assert "comes with leather roll, sheath" in totals
    assert "not opened" in totals


@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_a_name_goes_through_every_sentence_unchanged(name: str) -> None:
    """Titles, rows and the phone's sentence hold the name as it was typed."""
    one = box_picture(customer_=customer(name))

    assert box_title(one) == f"417 {name}"
    assert box_row(one, SHOP, NOW).name == name
    assert phone_sentence(one, picture(one)).startswith(f"Box 417, {name}: One of three done, ")


def test_the_phone_sentence_answers_when_how_many_and_how_much() -> None:
    """What is ready, what the rest is at, when, how much, and what is looked for."""
    here = knives(417, Column.READY, Column.READY, Column.ON_BENCH, Column.TESTING)
    one = box_picture(
        box(goes_by=GoesBy.PARCEL), knives_=(replace(here[0], looking_for=True), *here[1:]), ship_by=at(15, 45, days=4)
    )

    assert phone_sentence(one, picture(one)) == (
        "Box 417, Maren Tallis: One of four done, one on the bench, one in testing, one being looked for, "
        "ships Monday, 27.00 EUR to pay."
    )
