"""The room's own statistics against scipy on random data: t, Welch, signed ranks, rank sums, Hodges and Lehmann."""

from functools import cache
from statistics import median
from types import ModuleType

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.edges.halves import difference, share_interval
from queueboard.edges.ranks import rank_sums, signed_ranks
from queueboard.edges.student import share_beyond, t_value
from queueboard.edges.summary import mean_interval, spread

GF = st.integers(20, 2000)
SAMPLES = st.lists(GF, min_size=2, max_size=40).filter(lambda values: len(set(values)) > 1)
DISTINCT = st.lists(st.integers(-2000, 2000).filter(bool), min_size=1, max_size=40, unique_by=abs)


@cache
def known_by() -> ModuleType:
    """Loaded where it is asked: it takes a second, of each worker and of runs that leave these tests out."""
    from scipy import stats

    return stats  # type: ignore[no-any-return]  # it ships no types


@given(st.floats(0, 60), st.floats(0.5, 500))
def test_the_share_beyond_t(t: float, freedom: float) -> None:
    """The two-sided share of Student's t, over whole and broken degrees of freedom."""
    assert share_beyond(t, freedom) == pytest.approx(2 * known_by().t.sf(t, freedom), rel=1e-9, abs=1e-14)


@given(st.floats(1, 500), st.sampled_from([0.8, 0.9, 0.95, 0.99]))
def test_the_value_of_t(freedom: float, sure: float) -> None:
    """The value within which a share lies."""
    assert t_value(freedom, sure) == pytest.approx(known_by().t.ppf((1 + sure) / 2, freedom), rel=1e-9)


@given(SAMPLES)
def test_the_interval_of_a_mean(values: list[int]) -> None:
    """Student's interval."""
    found = mean_interval(values)
    known = known_by().ttest_1samp(values, 0).confidence_interval(0.95)

    assert (found.low, found.high) == pytest.approx((known.low, known.high), rel=1e-9, abs=1e-9)
    assert spread(values) == pytest.approx(known_by().tstd(values), rel=1e-12)


@given(SAMPLES, SAMPLES)
def test_welch(first: list[int], second: list[int]) -> None:
    """Difference, degrees of freedom, chance and interval of two sets that spread differently."""
    found = difference(first, second)
    known = known_by().ttest_ind(first, second, equal_var=False)
    interval = known.confidence_interval(0.95)

    assert found is not None
    assert found.freedom == pytest.approx(known.df, rel=1e-9)
    assert found.chance == pytest.approx(known.pvalue, rel=1e-7, abs=1e-13)
    assert (found.interval.low, found.interval.high) == pytest.approx((interval.low, interval.high), rel=1e-8, abs=1e-8)


@given(DISTINCT)
def test_signed_ranks(differences: list[int]) -> None:
    """The exact chance of the signed ranks, and the median of all middles of two."""
    found = signed_ranks(differences)
    known = known_by().wilcoxon(differences, method="exact")
    middles = [(a + b) / 2 for place, a in enumerate(differences) for b in differences[place:]]

    assert min(found.statistic, len(differences) * (len(differences) + 1) / 2 - found.statistic) == known.statistic
    assert found.chance == pytest.approx(known.pvalue, rel=1e-9)
    assert found.shift == median(middles)


@given(st.lists(GF, min_size=2, max_size=40, unique=True), st.integers(1, 39))
def test_rank_sums(values: list[int], cut: int) -> None:
    """The exact chance of the rank sum where no two values are alike, and the median of all differences."""
    first, second = values[: min(cut, len(values) - 1)], values[min(cut, len(values) - 1) :]
    found = rank_sums(first, second)
    known = known_by().mannwhitneyu(first, second, method="exact")

    assert found.statistic == known.statistic
    assert found.chance == pytest.approx(known.pvalue, rel=1e-9)
    assert found.shift == median([a - b for a in first for b in second])


@given(st.lists(st.integers(1, 9), min_size=2, max_size=40), st.lists(st.integers(1, 9), min_size=2, max_size=40))
def test_rank_sums_with_ties(first: list[int], second: list[int]) -> None:
    """With ties the normal distribution, corrected for ties and steps."""
    if len(set(first + second)) == 1 or len(set(first + second)) == len(first + second):
        return
    known = known_by().mannwhitneyu(first, second, method="asymptotic")

    assert rank_sums(first, second).chance == pytest.approx(known.pvalue, rel=1e-9)


@given(st.integers(1, 200), st.data())
def test_the_interval_of_a_share(of: int, data: st.DataObject) -> None:
    """Wilson's score interval."""
    count = data.draw(st.integers(0, of))
    known = known_by().binomtest(count, of).proportion_ci(0.95, method="wilson")
    found = share_interval(count, of)

    assert (found.low, found.high) == pytest.approx((known.low, known.high), rel=1e-9, abs=1e-12)
