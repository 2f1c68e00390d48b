"""Belt trials: the halves, and what is said when."""

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.edges.trial import Draw, Half, Outcome, TrialKnife, TrialRule, half_of, result_of

WOBBLE = 15.0


def knives(fall_gf: float, each: int, *, not_ok: tuple[int, int] = (0, 0), seed: int = 7) -> list[TrialKnife]:
    """Two halves: without the belt about 200 gf, with it less by a fall; so many not OK with and without."""
    lots = Random(seed)  # noqa: S311 invented readings, no secret
    made: list[TrialKnife] = []
    for half, base, bad in ((Half.WITH, 200 - fall_gf, not_ok[0]), (Half.WITHOUT, 200.0, not_ok[1])):
        made += [
            TrialKnife(
                half=half,
                spots_gf=tuple(round(base + lots.gauss(0, 18)) for _ in range(3)),
                ok=place >= bad,
                minutes=6.0 if half is Half.WITH else 4.5,
                belt_cents=20.0,
            )
            for place in range(each)
        ]
    return made


@pytest.mark.parametrize(
    ("made", "outcome"),
    [
        (knives(60, 19), Outcome.TOO_FEW),
        (knives(60, 20), Outcome.STAYS),
        (knives(0, 20), Outcome.NO_DIFFERENCE),
        (knives(20, 60), Outcome.NOT_ENOUGH),
        (knives(-60, 20), Outcome.HARMS),
        (knives(0, 40, not_ok=(2, 15)), Outcome.STAYS),
        (knives(0, 20, not_ok=(0, 1)), Outcome.NO_DIFFERENCE),
    ],
)
def test_what_the_rule_says(made: list[TrialKnife], outcome: Outcome) -> None:
    """Nothing before twenty each; then only what chance would hardly do, held against the rule."""
    assert result_of(made, TrialRule(), WOBBLE).outcome is outcome


def test_the_minutes_that_no_difference_saves() -> None:
    """A belt that shows nothing costs a minute and a half a knife."""
    lots = Random(3)  # noqa: S311 invented readings, no secret
    made = [
        TrialKnife(
            half=half,
            spots_gf=(round(200 + lots.gauss(0, 18)),),
            ok=True,
            minutes=minutes + lots.gauss(0, 0.5),
            belt_cents=0.0,
        )
        for half, minutes in ((Half.WITH, 6.0), (Half.WITHOUT, 4.5))
        for _ in range(30)
    ]
    result = result_of(made, TrialRule(), WOBBLE)

    assert result.outcome is Outcome.NO_DIFFERENCE
    assert result.minutes is not None
    assert result.minutes.interval.holds(1.5)
    assert result.minutes.interval.low > 1.0


def test_a_rule_may_ask_for_more_but_not_for_fewer() -> None:
    """Twenty each is the least."""
    assert result_of(knives(60, 20), TrialRule(each=25), WOBBLE).outcome is Outcome.TOO_FEW
    assert result_of(knives(60, 19), TrialRule(each=5), WOBBLE).each == 20


def test_an_empty_trial() -> None:
    """Before the first knife there is nothing to compare."""
    result = result_of([], TrialRule(), WOBBLE)

    assert (result.outcome, result.worst_gf, result.not_ok_share) == (Outcome.TOO_FEW, None, None)


@given(st.sampled_from(Draw), st.integers(0, 2**31), st.integers(0, 60))
def test_halves_stay_level(draw: Draw, seed: int, count: int) -> None:
    """After each pair both halves have as many."""
    halves = [half_of(place, draw, seed) for place in range(count)]

    assert abs(halves.count(Half.WITH) - halves.count(Half.WITHOUT)) <= 1
    assert halves == [half_of(place, draw, seed) for place in range(count)]


def test_lots_are_not_turns() -> None:
    """By lot the first of a pair is now one half, now the other."""
    assert {half_of(place, Draw.LOT, 1) for place in range(0, 40, 2)} == set(Half)


@pytest.mark.parametrize("seed", range(5))
def test_no_difference_is_seldom_taken_for_one(seed: int) -> None:
    """Of 100 trials of a belt that does nothing, fewer than ten say anything else."""
    said = [result_of(knives(0, 20, seed=100 * seed + n), TrialRule(), WOBBLE).outcome for n in range(100)]

    assert said.count(Outcome.NO_DIFFERENCE) > 90
