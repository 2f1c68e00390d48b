"""Shrinkage against published examples; values/shrinkage.json names source and standing of each."""

import json
from math import inf, sqrt
from pathlib import Path
from statistics import fmean

import pytest

from queueboard.planning.learning import common_mean, weight_of

VALUES = json.loads((Path(__file__).parent / "values" / "shrinkage.json").read_text(encoding="utf-8"))
BASEBALL = VALUES["efron_morris"]
PLAYERS = BASEBALL["players"]
AVERAGES: list[float] = [player["average"] for player in PLAYERS]


def weight() -> float:
    """The share of its distance from the mean that a player keeps, with the spread between players as published."""
    mean = fmean(AVERAGES)
    chance = mean * (1 - mean) / BASEBALL["at_bats"]
    spread = sum((average - mean) ** 2 for average in AVERAGES) / (len(AVERAGES) - 3)
    return weight_of(spread - chance, chance)


def test_the_weight_is_that_of_efron_and_morris() -> None:
    """Eighteen batting averages keep .212 of their distance from the grand average of .265."""
    assert weight() == pytest.approx(BASEBALL["published_c"], abs=0.0005)
    assert fmean(AVERAGES) == pytest.approx(BASEBALL["published_mean"], abs=0.0005)


def test_the_shrunk_averages_are_those_printed() -> None:
    """Each printed average agrees to the printed digits."""
    mean = fmean(AVERAGES)
    printed = [(player["average"], player["shrunk"]) for player in PLAYERS if "shrunk" in player]

    assert len(printed) == 15
    for average, shrunk in printed:
        assert mean + weight() * (average - mean) == pytest.approx(shrunk, abs=0.0006)


def test_shrunk_averages_foretell_the_season_better() -> None:
    """The point of the example: over the rest of the season the shrunk averages err far less than the raw ones."""
    mean = fmean(AVERAGES)
    rest = [player["rest_of_season"] for player in PLAYERS]
    raw = sum((average - truth) ** 2 for average, truth in zip(AVERAGES, rest, strict=True))
    shrunk = sum((mean + weight() * (y - mean) - truth) ** 2 for y, truth in zip(AVERAGES, rest, strict=True))

    assert shrunk < raw / 3


def test_pooling_is_that_of_the_eight_schools() -> None:
    """Eight effects weighted by how sure they are: 7.7 with a standard error of 4.1, when no prior speaks."""
    schools = VALUES["eight_schools"]
    seen = [(effect, se**2) for effect, se in zip(schools["effect"], schools["se"], strict=True)]
    mean, variance = common_mean(seen, (0.0, inf))

    assert mean == pytest.approx(schools["pooled"], abs=0.05)
    assert sqrt(variance) == pytest.approx(schools["pooled_se"], abs=0.05)
