"""Two people at one bench, each with a window of their own on the shop's file."""

from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from threading import Barrier

import pytest

from queueboard.errors import RuleError
from queueboard.phrases.day import clock_words
from queueboard.records.runs import open_runs
from queueboard.seedfiles import seed_text
from queueboard.shop import running
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.promising import promise
from queueboard.shop.quoting import offer, week
from queueboard.values.knife import Knife
from queueboard.values.new import NewPromise
from queueboard.words import Column, GoesBy, PromiseKind
from tests.shop.place import box, by, chef, counter, picture

TODAY = date(2026, 11, 9)
TOMORROW = date(2026, 11, 10)


def with_people(shop: Shop, people: int) -> None:
    """Let so many work at the bench at the same time."""
    text = seed_text("settings.toml")
    changed = text.replace("people = 1 ", f"people = {people} ")
    assert people == 1 or changed != text
    take_settings(shop, by(), changed)


@pytest.fixture
def bench(shop: Shop) -> Shop:
    """A shop in which two people work."""
    with_people(shop, 2)
    return shop


def begin_at_once(shop: Shop, reaches: Mapping[str, Sequence[Knife]]) -> dict[str, str]:
    """Each begins a run in a window of their own, all in one moment; for each what refused it, or nothing."""
    together = Barrier(len(reaches), timeout=60)

    def begin(initials: str) -> str:
        window = open_shop(shop.path, patience_ms=10_000)
        try:
            together.wait()
            running.start_run(window, by(initials), "plain", reaches[initials], 90)
        except RuleError as error:
            return str(error)
        finally:
            close_shop(window)
        return ""

    with ThreadPoolExecutor(len(reaches)) as pool:
        return dict(zip(reaches, pool.map(begin, reaches), strict=True))


@pytest.mark.parametrize("first", [slice(0, 6), slice(0, 4), slice(2, 6)], ids=["same", "less", "overlap"])
def test_of_two_who_begin_the_same_run_at_once_one_gets_it(bench: Shop, first: slice) -> None:
    """Two windows reach for the same knives in one moment: one has them all, the other is told whose they are."""
    knives = counter(bench, knives=6).knives

    said = begin_at_once(bench, {"J": knives, "K": knives[first]})

    (run,) = open_runs(bench.database)
    assert said.pop(run.started_by) == ""
    (refused,) = said.values()
    assert f"is in {run.started_by}'s run; finish that first, or leave it." in refused
    taken = {knife.id for knife in box(bench, 100).knives if knife.column is Column.ON_BENCH}
    assert set(run.knife_ids) == taken


def test_different_runs_begin_at_once(bench: Shop) -> None:
    """Two who reach for different knives in one moment both get theirs, and no knife is in two runs."""
    ours, theirs = counter(bench, knives=3).knives, counter(bench, knives=3, name="Oake").knives

    said = begin_at_once(bench, {"J": ours, "K": theirs})

    assert said == {"J": "", "K": ""}
    assert {run.started_by: set(run.knife_ids) for run in open_runs(bench.database)} == {
        "J": {knife.id for knife in ours},
        "K": {knife.id for knife in theirs},
    }


def test_a_promise_counts_the_minutes_of_both(shop: Shop) -> None:
    """Twenty chef's knives are due today, ten more are asked about: the sum of one person and of two, worked by hand.

    From nine on the bench has 90 + 120 minutes today; nine tenths turn into work: 189 for one person, 378 for two. A
    dull chef's knife takes 6 minutes, the set-up 1.5: 121.5 are due today and 60 come on top. They leave one person
    7.5 of 189, too little for what may stray, so it is tomorrow, 189 + 243 minutes from now. Two have 196.5 of 378
    left, so it is today. A whole day bears 270 x 0.9 = 243 a person.
    """
    due = counter(shop, knives=20)
    promise(shop, by(), due.box, NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="Ms Verrin", reason="she waits"))

    alone = offer(picture(shop), [chef()] * 10, GoesBy.PICK_UP, 0)
    with_people(shop, 2)
    seen = picture(shop)
    both = offer(seen, [chef()] * 10, GoesBy.PICK_UP, 0)

    assert alone is not None
    assert both is not None
    assert (alone.day, alone.day_minutes) == (TOMORROW, 243)
    assert (both.day, both.day_minutes) == (TODAY, 2 * 243)
    assert alone.open_minutes + alone.own_minutes + alone.spare_minutes == pytest.approx(189 + 243, abs=1)
    assert both.open_minutes + both.own_minutes + both.spare_minutes == pytest.approx(2 * 189, abs=1)
    assert [load.there_minutes for load in week(seen)[:2]] == [2 * 189, 2 * 243]


def test_each_person_s_clock_has_its_own_break(bench: Shop) -> None:
    """Forty knives in runs of ten, two people: each works one run before the break and one over it.

    The first two: 60 + 1.5 minutes at nine tenths are 68 by the wall, 09:00 to 10:08. Of the other two 66.7 minutes
    21.7 fit before half past ten; the other 45 go on at half past twelve, to 13:15.
    """
    for name in ("Verrin", "Oake", "Hane", "Bell"):
        counter(bench, knives=10, name=name)

    seen = picture(bench)

    assert [clock_words(run, seen.now, seen.minutes.day_yield.mean) for run in seen.plan.runs] == [
        *["09:00-10:08"] * 2,
        *["10:08-13:15 (with the break)"] * 2,
    ]
