"""A small seeded part of the invented year as a test; python -m tests.year prints all of it."""

from dataclasses import replace
from statistics import fmean

import pytest

from tests.year.calibration import brier, calibration_error, steps_of
from tests.year.life import live
from tests.year.rules import napkin, ours
from tests.year.snapshot import Seen, snapshots
from tests.year.world import BUSY, SEASONAL, World


@pytest.fixture(scope="module")
def seen() -> list[Seen]:
    """One look at 110 shops that have measured 100 knives."""
    return snapshots(110, 100)


def error_of(said: list[float], seen: list[Seen]) -> float:
    """Mean distance of what was said and seen."""
    return calibration_error(steps_of(zip(said, (one.late for one in seen), strict=True)))


def test_the_chance_of_being_late_can_be_believed(seen: list[Seen]) -> None:
    """With 100 knives of history what is said and what is seen differ by at most 0.03 on average."""
    assert len(seen) > 4000
    assert error_of([one.said for one in seen], seen) <= 0.03


def test_knives_alone_do_not_make_a_chance(seen: list[Seen]) -> None:
    """Without what strays together (boxes, processes, days) the chance is at least twice as far off."""
    assert error_of([one.knives_only for one in seen], seen) > 2 * error_of([one.said for one in seen], seen)


def test_the_chance_belongs_to_the_box_s_own_last_run(seen: list[Seen]) -> None:
    """Looked at where all boxes of its cut-off are finished, a box would be called late far too often."""
    own = brier((one.said, one.late) for one in seen)
    at_cutoff = brier((one.at_cutoff, one.late) for one in seen)

    assert at_cutoff > own + 0.1


def test_no_box_is_lost_and_every_promise_is_a_cut_off() -> None:
    """Every box that came in is finished at last, none before it came, and promised for a time when it can leave."""
    life = live(World(3), replace(SEASONAL, days=60, rush_days=range(30, 35)), ours(), warm_up=0)

    assert len(life.boxes) > 500
    for box in life.boxes:
        assert box.promised - box.leaves_at - box.day > -1e-6
        if box.told < 55:
            assert box.finished > box.day


def test_our_promises_hold_better_than_a_napkin_s() -> None:
    """On the same arrivals and days of four shops more of our promises are kept."""
    season = replace(BUSY, days=70)
    kept, scribbled = (
        fmean(live(World(seed), season, rule, warm_up=20).on_time for seed in range(4)) for rule in (ours(), napkin)
    )

    assert kept > scribbled
    assert kept > 0.92


def test_the_same_seed_is_the_same_year() -> None:
    """Everything is drawn from the seed."""
    season = replace(BUSY, days=30)

    lives = [live(World(8), season, ours(0.5), warm_up=5, say=True) for _ in range(2)]
    assert [one.chance for one in lives[0].said] == [one.chance for one in lives[1].said]
