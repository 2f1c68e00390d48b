"""Paired changes against Student 1908 and Hollander and Wolfe 1973; t and signed-rank tables.

values/paired.json names the source and standing of each.
"""

import json
from pathlib import Path

import pytest

from queueboard.edges.halves import difference
from queueboard.edges.ranks import signed_ranks
from queueboard.edges.student import share_beyond, t_value
from queueboard.edges.summary import mean, mean_interval, spread

VALUES = json.loads((Path(__file__).parent / "values" / "paired.json").read_text(encoding="utf-8"))
SLEEP, DEPRESSION, CARS = VALUES["sleep"], VALUES["depression"], VALUES["auto83b"]
EARLIER, LATER = SLEEP["drug1"], SLEEP["drug2"]


def test_student_sleep_paired() -> None:
    """Ten sleepers: t -4.0621 with 9 degrees of freedom, p .002833, interval -2.46 to -.70."""
    gains = [one - other for one, other in zip(EARLIER, LATER, strict=True)]
    t = mean(gains) / (spread(gains) / 10**0.5)
    interval = mean_interval(gains)

    assert mean(gains) == pytest.approx(SLEEP["mean_diff"], abs=1e-12)
    assert spread(gains) == pytest.approx(SLEEP["sd_diff"], abs=5e-8)
    assert t == pytest.approx(SLEEP["paired"]["t"], abs=5e-5)
    assert share_beyond(t, 9) == pytest.approx(SLEEP["paired"]["p"], abs=5e-7)
    assert (interval.low, interval.high) == pytest.approx(SLEEP["paired"]["ci95"], abs=5e-8)


def test_student_sleep_as_two_sets() -> None:
    """The same figures unpaired: Welch's degrees of freedom 17.776, p .07939 and its interval."""
    found = difference(EARLIER, LATER)

    assert found is not None
    assert found.freedom == pytest.approx(SLEEP["welch"]["df"], abs=5e-4)
    assert found.chance == pytest.approx(SLEEP["welch"]["p"], abs=5e-6)
    assert (found.interval.low, found.interval.high) == pytest.approx(SLEEP["welch"]["ci95"], abs=5e-8)


def test_depression_scores() -> None:
    """Nine patients: V 40, exact p .0391 on both sides, middle shift .46 between .010 and .786."""
    found = signed_ranks([x - y for x, y in zip(DEPRESSION["x"], DEPRESSION["y"], strict=True)])

    assert found.statistic == DEPRESSION["V"]
    assert found.chance == DEPRESSION["p_two_sided_exact"]
    assert found.shift == pytest.approx(DEPRESSION["hodges_lehmann"], abs=1e-9)
    assert found.interval is not None
    assert (found.interval.low, found.interval.high) == pytest.approx(DEPRESSION["hl_ci_96"], abs=1e-9)


def test_the_sleepers_who_gained_nothing_are_left_out_of_the_ranks() -> None:
    """One difference is zero and none is above: V is 0 of nine."""
    assert signed_ranks([a - b for a, b in zip(EARLIER, LATER, strict=True)]).statistic == SLEEP["wilcoxon"]["V"]


@pytest.mark.parametrize(("freedom", "printed"), [(int(df), t) for df, t in VALUES["t_975"].items()])
def test_the_t_table(freedom: int, printed: float) -> None:
    """Each printed value of Student's table for 97.5 %."""
    assert t_value(freedom) == pytest.approx(printed, abs=0.00051)


@pytest.mark.parametrize(
    ("pairs", "most"), [(int(n), most) for n, most in VALUES["wilcoxon_critical_two_sided_05"].items()]
)
def test_the_table_of_signed_ranks(pairs: int, most: int) -> None:
    """The largest V that is still rare at 5 % on both sides; one more is not."""
    for v, rare in ((most, True), (most + 1, False)):
        assert (signed_ranks(_with_sum(pairs, v)).chance <= 0.05) is rare


def test_five_pairs_show_nothing() -> None:
    """With five pairs not even all on one side is rare at 5 %."""
    found = signed_ranks([1, 2, 3, 4, 5])

    assert found.chance > 0.05
    assert found.interval is None


def _with_sum(pairs: int, v: int) -> list[float]:
    """Differences of ranks 1 to pairs whose positive ranks add up to v."""
    above: set[int] = set()
    for rank in range(pairs, 0, -1):
        if rank <= v - sum(above):
            above.add(rank)
    return [rank if rank in above else -rank for rank in range(1, pairs + 1)]


def test_welch_on_cars() -> None:
    """Miles per gallon of 249 and 79 cars: t -12.94627 with 136.875 degrees of freedom, from the printed moments."""
    first, second = (_set_of(n, middle, sd) for n, middle, sd in zip(CARS["n"], CARS["mean"], CARS["sd"], strict=True))
    found = difference(first, second)

    assert found is not None
    assert found.freedom == pytest.approx(CARS["df_welch"], abs=0.001)
    half = (found.interval.high - found.interval.low) / 2 / t_value(found.freedom)
    assert found.mean / half == pytest.approx(CARS["t_welch"], abs=0.001)


def _set_of(n: int, middle: float, sd: float) -> list[float]:
    """So many values with this mean and deviation."""
    raw = [float(place) for place in range(n)]
    own, deviation = mean(raw), spread(raw)
    return [middle + sd * (value - own) / deviation for value in raw]
