"""The day and the return labels in words; the whole day sheet is kept as text beside the screens."""

from dataclasses import replace
from datetime import date

import pytest

from queueboard.phrases import cautions
from queueboard.phrases.day import (
    clock_words,
    day_line_words,
    fits_words,
    leaves_today,
    run_minutes_words,
    runs_later,
    runs_today,
    waiting_boxes,
)
from queueboard.phrases.labels import label_due_words, label_short_words, label_wants, label_words
from queueboard.words import Column, GoesBy, LabelOwner, LabelState, LabelWord
from tests.busy_morning import busy_morning
from tests.pictures import NOW, TODAY, at, box, box_picture, knives, label, label_due, picture, run

MORNING = busy_morning()


def test_the_day_line_leaves_out_what_counts_zero() -> None:
    """Bench, work and what leaves are always there, the rest only when there is some."""
    assert day_line_words(MORNING.day_line) == (
        "bench 198 min",
        "work 27 min",
        "leaves today 1",
        "labels 2",
        "LATE 1",
        "WILL BE LATE 1",
        "WAIT 1",
    )
    assert day_line_words(picture().day_line) == ("bench 198 min", "work 0 min", "leaves today 0")


def test_runs_are_parted_by_the_day_they_start() -> None:
    """Today's runs are apart from those of later days; none is lost."""
    today, later = runs_today(MORNING), runs_later(MORNING)

    assert (len(today), len(later)) == (3, 1)
    assert today + later == MORNING.plan.runs


def test_a_run_shows_its_clock_times_even_over_a_night() -> None:
    """A run that ends on another day, starts later, or lies too far ahead says so."""
    assert clock_words(run(1, start=at(9, 12), minutes=5, set_up_seconds=60), NOW) == "09:12-09:18"
    assert clock_words(run(1, start=at(14, 50), end=at(8, 5, days=1)), NOW) == "14:50-tomorrow 08:05"
    assert clock_words(run(1, start=at(8, days=2), minutes=20, end=at(8, 22, days=2)), NOW) == "Saturday 08:00-08:22"
    assert clock_words(run(1), NOW) == "not within the days planned ahead"


def test_a_run_over_a_break_says_so() -> None:
    """Where the clock runs on through a break the end is explained, so that 20 minutes do not read as two hours."""
    assert clock_words(run(1, start=at(10, 11), minutes=20, end=at(12, 32)), NOW) == "10:11-12:32 (with the break)"
    slow = run(1, start=at(10, 11), minutes=20, set_up_seconds=0, end=at(10, 31))
    assert clock_words(replace(slow, end=at(10, 51)), NOW, 0.5) == "10:11-10:51"


def test_the_day_says_how_much_of_the_work_fits() -> None:
    """Today's part is held against all work of the runs; an empty board has none."""
    later = sum(r.minutes * 60 + r.set_up_seconds for r in runs_later(MORNING))
    today = MORNING.day_line.work_minutes_today

    assert fits_words(MORNING) == f"{today} of {today + -(-later // 60)} min of work fit today"
    assert fits_words(picture()) == "no work for the bench"


def test_a_short_label_word_is_the_urgent_one() -> None:
    """In a narrow place only what the label demands is said."""
    parcel = replace(box_picture(box(goes_by=GoesBy.PARCEL)), label=label(expires_on=date(2026, 12, 3)))

    assert label_short_words(parcel, TODAY) == "good Thu 3 Dec"
    assert label_short_words(replace(parcel, label_due=label_due()), TODAY) == "DIES TODAY"
    assert (
        label_short_words(replace(parcel, label_due=label_due(417, LabelWord.TOO_LATE, TODAY)), TODAY) == "NOT IN TIME"
    )
    assert label_short_words(box_picture(), TODAY) == "pick-up"


def test_a_belt_that_is_up_already_costs_no_set_up() -> None:
    """A set-up of nothing is not mentioned."""
    assert run_minutes_words(run(1, set_up_seconds=90)) == "10 min hands-on, set-up 90 s, handling 6 min"
    assert run_minutes_words(run(1, set_up_seconds=0)) == "10 min hands-on, handling 6 min"


def test_what_leaves_and_what_waits_is_found() -> None:
    """Boxes with a cut-off today leave today; boxes or knives that wait are waited for."""
    assert [b.box.number for b in leaves_today(MORNING)] == [417]
    assert [b.box.number for b in waiting_boxes(MORNING)] == [423]


@pytest.mark.parametrize(
    ("word", "last_day", "words"),
    [
        (LabelWord.TOO_LATE, date(2026, 11, 25), "CANNOT BE USED IN TIME, last day yesterday"),
        (LabelWord.DIES_TODAY, TODAY, "DIES TODAY"),
        (LabelWord.DIES_TOMORROW, date(2026, 11, 27), "DIES TOMORROW"),
        (LabelWord.BUY, date(2026, 11, 30), "BUY by Monday"),
        (LabelWord.BUY_TODAY, TODAY, "BUY TODAY"),
        (LabelWord.GOOD, date(2026, 12, 3), "good, use by Thu 3 Dec"),
        (LabelWord.BUY, None, "BUY"),
    ],
)
def test_every_demand_of_a_label_has_its_words(word: LabelWord, last_day: date | None, words: str) -> None:
    """Each word says until when, where a day is known."""
    assert label_due_words(label_due(417, word, last_day), TODAY) == words


def test_a_box_says_how_its_label_stands() -> None:
    """A label has owner, state and last day or demand; without one a parcel and a pick-up are told apart."""
    here = label(expires_on=date(2026, 12, 3))
    parcel = box_picture(box(goes_by=GoesBy.PARCEL))

    assert label_words(replace(parcel, label=here), TODAY) == "customer's label here, good to Thu 3 Dec"
    assert label_words(replace(parcel, label=here, label_due=label_due()), TODAY) == "DIES TODAY, customer's label here"
    assert label_words(parcel, TODAY) == "no label"
    assert label_words(box_picture(), TODAY) == "pick-up"


def test_what_to_do_about_a_label_follows_from_whose_it_is_and_how_far_the_box_is() -> None:
    """Buy it, ask for it, pack, or finish what is not ready; too late asks for a new one."""

    def wants(owner: LabelOwner, state: LabelState, word: LabelWord, *columns: Column) -> str:
        one = box_picture(
            box(goes_by=GoesBy.PARCEL),
            knives_=knives(417, *columns),
            label_=label(owner=owner, state=state),
            label_due_=label_due(417, word),
        )
        return label_wants(label_due(417, word), picture(one))

    shop, theirs, ready = LabelOwner.SHOP, LabelOwner.CUSTOMER, Column.READY
    assert wants(shop, LabelState.TO_BUY, LabelWord.BUY, ready) == "buy it"
    assert wants(theirs, LabelState.TO_BUY, LabelWord.BUY, ready) == "ask the customer for it"
    assert wants(theirs, LabelState.HERE, LabelWord.DIES_TODAY, ready) == "all ready: pack and hand over"
    assert "1 of 2 not ready, the slowest on the bench" in wants(
        theirs, LabelState.HERE, LabelWord.DIES_TODAY, ready, Column.ON_BENCH
    )
    assert "ask the customer for a new one" in wants(theirs, LabelState.HERE, LabelWord.TOO_LATE, ready)
    assert "buy a new one" in wants(shop, LabelState.HERE, LabelWord.TOO_LATE, ready)


def test_gloves_are_said_both_ways_and_every_hazard_is_named() -> None:
    """No gloves at a running belt, gloves for packing with it off; dust, eyes, belts, parcels, carriers and law too."""
    bench, packing = " ".join(cautions.BENCH), " ".join(cautions.PACKING)

    assert "No gloves at a running belt" in bench
    assert "cut-resistant gloves: yes for packing, never at a running belt" in packing
    for word in ("Eye protection", "Dust", "belt", "wait until it has stopped"):
        assert word in bench
    for word in ("carrier's current rules", "local law", "no edge cuts through"):
        assert word in packing
    assert all(len(line) <= 80 for line in (cautions.BENCH_SHORT, cautions.PACKING_SHORT, cautions.HAND_OVER_SHORT))
