"""What measured runs and days teach."""

from dataclasses import replace
from math import inf, sqrt
from random import Random
from statistics import fmean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.planning.learning import (
    BOX_SD,
    KNIFE_CV,
    PROCESS_SD,
    SHOP_SD,
    YIELD_MEAN,
    YIELD_SD,
    MeasuredRun,
    WorkedDay,
    learn,
    learn_yield,
    stays_out,
    weight_of,
)
from queueboard.words import StaysOut


def measured(
    process: int = 0, *, measured_seconds: int = 1200, knives: int = 4, estimated_seconds: int = 1000, times: int = 1
) -> MeasuredRun:
    """A run of knives that should take 1,000 seconds by the starter minutes, or several such runs in one."""
    return MeasuredRun(
        process=process,
        knives=knives * times,
        boxes=2 * times,
        starter_seconds=1000 * times,
        estimated_seconds=estimated_seconds * times,
        measured_seconds=measured_seconds * times,
    )


RUNS = st.lists(
    st.builds(
        measured,
        st.integers(0, 2),
        measured_seconds=st.integers(500, 2000),
        knives=st.integers(2, 12),
    ),
    max_size=12,
)


def test_nothing_measured_leaves_the_starter_minutes() -> None:
    """Without a run every factor is 1, rests on no knife, and is as unsure as the two priors together."""
    learned = learn([], 2)

    assert [factor.value for factor in (learned.shop, *learned.processes)] == [1.0, 1.0, 1.0]
    assert learned.processes[0].knives == 0
    assert learned.processes[0].variance == pytest.approx(SHOP_SD**2 + PROCESS_SD**2)
    assert learned.processes[0].learned(240) == 240


def test_a_process_is_learned_and_the_others_lean_on_the_shop() -> None:
    """A slow process moves most, the shop a little, and a process never measured moves with the shop."""
    learned = learn([measured(measured_seconds=1500)] * 5, 2)

    assert 1 < learned.processes[1].value == learned.shop.value < learned.processes[0].value < 1.5
    assert learned.processes[0].knives == learned.shop.knives == 20
    assert learned.processes[1].knives == 0


@given(RUNS)
def test_a_factor_lies_between_what_was_seen_and_the_shop(runs: list[MeasuredRun]) -> None:
    """Shrinkage never leaves the stretch between the measured ratio and the shop's factor."""
    learned = learn(runs, 3)

    for process, factor in enumerate(learned.processes):
        counted = [run for run in runs if run.process == process and stays_out(run) is None]
        if counted:
            ratio = sum(r.measured_seconds for r in counted) / sum(r.starter_seconds for r in counted)
            low, high = sorted((ratio, learned.shop.value))
            assert low - 1e-9 <= factor.value <= high + 1e-9


@given(RUNS, st.integers(0, 2))
def test_another_run_never_makes_less_sure(runs: list[MeasuredRun], process: int) -> None:
    """One more measured run makes no factor less sure."""
    before = learn(runs, 3)
    after = learn([*runs, measured(process)], 3)

    assert after.shop.variance <= before.shop.variance + 1e-12
    for old, new in zip(before.processes, after.processes, strict=True):
        assert new.variance <= old.variance + 1e-12


def test_hundreds_of_knives_outweigh_the_priors() -> None:
    """With 4,000 knives the factor is what was measured, to a hundredth."""
    factor = learn([measured(measured_seconds=1300, times=1000)], 1).processes[0]

    assert factor.value == pytest.approx(1.3, abs=0.01)
    assert factor.variance < 0.001


def test_a_run_that_was_thrown_away_stays_out() -> None:
    """It says so, and teaches nothing."""
    run = MeasuredRun(
        process=0,
        knives=4,
        boxes=1,
        starter_seconds=1000,
        estimated_seconds=1000,
        measured_seconds=1500,
        thrown_away=True,
    )

    assert stays_out(run) is StaysOut.THROWN_AWAY
    assert learn([run], 1) == learn([], 1)


def test_a_run_over_twice_its_estimate_stays_out() -> None:
    """Twice is counted, a second more is not."""
    assert stays_out(measured(measured_seconds=2000)) is None
    assert stays_out(measured(measured_seconds=2001)) is StaysOut.TOO_LONG
    assert learn([measured(measured_seconds=2001)], 1) == learn([], 1)


@pytest.mark.parametrize(("seconds", "why"), [(0, StaysOut.TOO_SHORT), (199, StaysOut.TOO_SHORT), (200, None)])
def test_a_run_under_a_fifth_of_its_estimate_stays_out(seconds: int, why: StaysOut | None) -> None:
    """Begun late or by a slip: so short a time would teach that the process takes next to nothing."""
    run = measured(measured_seconds=seconds)

    assert stays_out(run) is why
    assert (learn([run], 1) == learn([], 1)) is (why is not None)


def test_a_slow_process_can_be_learned_past_twice_the_starter_minutes() -> None:
    """What counts is the estimate of the plan, which has learned already, not the starter minutes."""
    assert stays_out(measured(measured_seconds=2500, estimated_seconds=1800)) is None


def test_the_weight_at_its_ends() -> None:
    """Noise without end counts nothing, no noise counts all."""
    assert weight_of(0.1, inf) == 0
    assert weight_of(0.1, 0) == 1


def full_day(starter_seconds: int, *, knives: int = 10**9, set_up_seconds: int = 0) -> WorkedDay:
    """A day of one process at a bench of 10,000 seconds; of so many knives that their noise is nothing."""
    return WorkedDay(
        open_seconds=(20000,),
        starter_seconds=(starter_seconds,),
        knives=knives,
        boxes=knives,
        set_up_seconds=set_up_seconds,
        bench_seconds=10000,
    )


UNKNOWN = learn([], 1).processes


def test_the_yield_begins_at_its_prior() -> None:
    """No day counted: the prior's mean and spread."""
    prior = learn_yield([], UNKNOWN)

    assert prior.mean == YIELD_MEAN
    assert prior.sd == pytest.approx(YIELD_SD)
    assert prior.days == 0


def test_five_days_weigh_as_much_as_the_prior() -> None:
    """After five like days the mean is half way, and what lies between shows in the spread."""
    seen = learn_yield([full_day(7000)] * 5, UNKNOWN)

    assert seen.mean == pytest.approx((0.7 + YIELD_MEAN) / 2)
    assert seen.sd**2 == pytest.approx(YIELD_SD**2 / 2 + 0.1**2)
    assert seen.relative_sd == pytest.approx(seen.sd / seen.mean)


@given(st.lists(st.integers(4500, 13500), min_size=1, max_size=30))
def test_the_yield_lies_between_prior_and_days(planned: list[int]) -> None:
    """The learned mean never leaves the stretch between the prior and the mean of the days."""
    mean = fmean(seconds / 10000 for seconds in planned)
    seen = learn_yield([full_day(seconds) for seconds in planned], UNKNOWN)

    assert min(mean, YIELD_MEAN) - 1e-9 <= seen.mean <= max(mean, YIELD_MEAN) + 1e-9


def test_a_slow_shop_is_not_counted_twice() -> None:
    """Knives that take half as long again and a full day's work: the yield is 0.9, whatever the plan hoped."""
    slow = learn([measured(measured_seconds=1500, times=1000)], 1).processes
    day = full_day(5800, set_up_seconds=300)

    assert day.share(UNKNOWN) == pytest.approx(0.61)
    assert day.share(slow) == pytest.approx(0.9, abs=0.01)
    assert learn_yield([day] * 20, slow).mean == pytest.approx(0.9, abs=0.01)


def test_noise_of_the_work_is_no_spread_of_the_days() -> None:
    """Days that differ by no more than their few knives do leave the spread that the prior says."""
    days = [full_day(8000, knives=20), full_day(10000, knives=20)] * 50
    noise = KNIFE_CV**2 / 20 + BOX_SD**2 / 20

    assert noise * 0.9**2 < 0.1**2
    assert learn_yield(days, UNKNOWN).sd ** 2 == pytest.approx(0.1**2 - noise * 0.82, abs=0.001)
    assert learn_yield([full_day(9000, knives=20)] * 20, UNKNOWN).sd == pytest.approx(YIELD_SD / sqrt(5))


def began(open_seconds: int) -> WorkedDay:
    """A day that began with so much work."""
    return replace(full_day(9000), open_seconds=(open_seconds,))


@pytest.mark.parametrize(("open_seconds", "counted"), [(11799, 0), (11801, 1)])
def test_a_day_is_full_by_its_morning(open_seconds: int, counted: int) -> None:
    """Two spreads more than the bench can be thought to do, or the day says nothing."""
    assert learn_yield([began(open_seconds)], UNKNOWN).days == counted


def test_a_slow_shops_morning_is_full_sooner() -> None:
    """What lies there in the morning is counted in the minutes learned, like what was done."""
    slow = learn([measured(measured_seconds=1500, times=1000)], 1).processes

    assert began(9000).began_full(slow)
    assert not began(9000).began_full(UNKNOWN)


@pytest.mark.parametrize("moved", [0, 1000, 4499, 13501, 45000])
def test_a_board_that_is_not_kept_does_not_teach(moved: int) -> None:
    """A shop that moves a tenth of its knives, or a week's at once, keeps the prior and is told how many days."""
    seen = learn_yield([full_day(moved)] * 30, UNKNOWN)

    assert (seen.mean, seen.days, seen.left_out) == (YIELD_MEAN, 0, 30)


def test_full_days_are_told_in_the_morning() -> None:
    """Days on which the work lasted until closing yield too little on average; days that began full do not."""
    dice = Random(1)  # noqa: S311 invented days, no secret
    days = [(dice.uniform(6000, 16000), dice.gauss(YIELD_MEAN, YIELD_SD)) for _ in range(20000)]
    lasted = fmean(share for work, share in days if work >= share * 10000)
    began_full = fmean(share for work, share in days if began(round(work)).began_full(UNKNOWN))

    assert lasted < YIELD_MEAN - 0.01
    assert began_full == pytest.approx(YIELD_MEAN, abs=0.005)
