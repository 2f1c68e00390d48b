"""A box that is only announced, in words: nowhere is it on hand, opened or not opened."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from queueboard.papers import facts
from queueboard.papers.day_sheet import day_sheet
from queueboard.papers.lists import boxes_list, late_list
from queueboard.papers.one_box import box_sheet
from queueboard.phrases.announced import (
    coming_words,
    expected_minutes_words,
    expected_today,
    expected_word,
    expected_words,
    not_come_boxes,
)
from queueboard.phrases.boxes import batch_totals, box_signs, in_the_way, ready_words, standing_words
from queueboard.phrases.day import leaves_today
from queueboard.phrases.labels import label_wants
from queueboard.phrases.phone import phone_sentence
from queueboard.phrases.whole_box import box_facts, whole_box_cells
from queueboard.shop.picture import BoxPicture
from queueboard.words import LabelWord
from tests.busy_morning import busy_morning, not_come
from tests.pictures import NOW, TODAY, at, label, label_due, picture, settings


def expected(on: date | None = TODAY + timedelta(days=2), knives: int | None = 6) -> BoxPicture:
    """The same box, expected on another day or with another count."""
    box = not_come()
    return replace(box, box=replace(box.box, expected_on=on, expected_knives=knives))


@pytest.mark.parametrize(
    ("days", "word", "words"),
    [
        (-2, "NOT COME", "expected Tue 24 Nov and not come, 6 knives"),
        (0, "EXPECTED TODAY", "expected today, 6 knives"),
        (1, "EXPECTED TOMORROW", "expected tomorrow, 6 knives"),
        (2, "EXPECTED Sat", "expected Saturday, 6 knives"),
        (9, "EXPECTED Sat 5 Dec", "expected Sat 5 Dec, 6 knives"),
    ],
)
def test_when_it_should_come(days: int, word: str, words: str) -> None:
    """The day is named as for a promise; once it is over the box has not come."""
    box = expected(TODAY + timedelta(days=days))

    assert (expected_word(box, NOW), expected_words(box, TODAY)) == (word, words)
    assert box_signs(box, NOW)[0] == word


def test_what_nobody_said_is_said_so() -> None:
    """Without a day or a count the words say that, and nothing is added up."""
    box = expected(None, None)

    assert expected_word(box, NOW) == "EXPECTED"
    assert expected_words(box, TODAY) == "expected, nobody said when, nobody said how many knives"
    assert expected_minutes_words(box, settings()) == "about 7 bench min a knife"


def test_its_totals_say_what_is_expected() -> None:
    """Six knives at the seven minutes of the settings are 42; nothing is called left, opened or ready."""
    totals = batch_totals(expected(), settings(), NOW)

    assert totals[:2] == ("expected Saturday, 6 knives", "about 42 bench min when it comes")
    assert expected().box.announced


def test_no_phrase_says_that_it_is_not_opened() -> None:
    """Wherever a box is spoken of, one that is not in the door is not here yet."""
    box = replace(not_come(), label=label(box_number=432), label_due=label_due(432, LabelWord.DIES_TOMORROW, TODAY))
    seen = picture(box)
    said = (
        ready_words(box),
        standing_words(box),
        in_the_way(box, NOW),
        phone_sentence(box, seen),
        *whole_box_cells(box),
        *box_facts(box, seen),
        *batch_totals(box, settings(), NOW),
        label_wants(label_due(432), seen),
        box_sheet(box, seen),
        day_sheet(seen),
        boxes_list(seen),
    )

    assert not [words for words in said if "not opened" in words or "all ready" in words]
    assert (ready_words(box), standing_words(box), in_the_way(box, NOW)) == ("not here yet",) * 3
    assert "Box 432, Sorrel Hane: Not here yet, expected Tuesday 24 November, ships" in phone_sentence(box, seen)
    assert box_facts(box, seen)[0].startswith("announced Fri 20 Nov 11:00, comes by mail, goes back by parcel")


def test_a_label_of_an_unopened_box_is_not_called_ready() -> None:
    """A box in the door that nobody opened has nothing to pack either."""
    here = not_come()
    box = replace(here, box=replace(here.box, announced_at=None), label=label(box_number=432))

    assert label_wants(label_due(432), picture(box)) == "not opened yet"


def test_the_day_list_names_what_should_come_and_what_has_not() -> None:
    """Overdue ones first, then today's, with the date told and whom to ring."""
    today = replace(expected(TODAY), box=replace(expected(TODAY).box, id=440, number=440))
    later = replace(expected(), box=replace(expected().box, id=441, number=441))
    seen = picture(later, today, not_come())

    assert [box.box.number for box in not_come_boxes(seen)] == [432]
    assert [box.box.number for box in expected_today(seen)] == [440]
    told = "expected Tue 24 Nov and not come, 6 knives; in hand by Fri 4 Dec: 0555 014 733, Sorrel Hane"
    assert coming_words(not_come(), NOW) == f"432 {told}"
    assert f"[ ] 432 {told}" in day_sheet(seen)
    assert "[ ] 440 expected today" in day_sheet(seen)
    assert "441 expected" not in day_sheet(seen)


def test_the_late_list_ends_with_what_has_not_come() -> None:
    """It is not called late, since the shop has nothing of it; it is named all the same."""
    assert late_list(picture(not_come())).splitlines()[-1].startswith("432 expected Tue 24 Nov and not come")
    assert late_list(busy_morning()).splitlines()[0].startswith("411")


def test_it_cannot_leave_today() -> None:
    """A box that is promised for today and is not here is nothing to pack."""
    box = replace(not_come(), ship_by=at(15, 45))

    assert leaves_today(picture(box)) == ()


def test_it_is_counted_apart() -> None:
    """The sums name boxes that are here and, beside them, those expected."""
    assert boxes_list(busy_morning()).splitlines()[-1].startswith("6 boxes, 16 knives here")
    assert boxes_list(busy_morning()).splitlines()[-1].endswith("; 1 box expected by mail")


def test_scripts_are_told_too() -> None:
    """The day and the late list hold it under keys of its own, and the box says what is expected."""
    morning = busy_morning()
    late = facts.late_facts(morning)

    assert facts.day_facts(morning)["not_come"] == [432]
    assert facts.day_facts(morning)["expected_today"] == []
    assert late["not_come"] == [facts.box_facts(not_come(), morning)]
    box = facts.box_facts(not_come(), morning)
    assert (box["announced"], box["expected_on"], box["expected_knives"]) == (True, "2026-11-24", 6)
    assert (box["opened"], box["on_hand"]) == (False, 0)
