"""When the gauge is asked for and what an edge is held against, as the shop writes it."""

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.shapes import Gauge, Kind
from queueboard.words import Edge

STARTER = seed_text("settings.toml")
TABLES = STARTER[STARTER.index("[gauge]\n") : STARTER.index("# Setting up for a process")]


def kind(name: str) -> Kind:
    """A kind of the starter shop."""
    found = read_settings(STARTER).kind(name)
    assert found is not None
    return found


def test_a_shop_that_says_nothing_has_the_usual() -> None:
    """A text from before the gauge is read, with the lines of edges and one knife in ten."""
    gauge = read_settings(STARTER.replace(TABLES, "")).gauge

    assert gauge == Gauge()
    assert gauge.every == 10
    assert gauge.line_gf(kind("chef"), Edge.PLAIN) == 250
    assert gauge.line_gf(kind("bread"), Edge.SERRATED) == 400


@pytest.mark.parametrize(
    ("name", "edge", "line_gf"),
    [
        ("paring", Edge.PLAIN, 200),
        ("chef", Edge.PLAIN, 250),
        ("chef", Edge.SERRATED, 400),
        ("utility", Edge.PLAIN, 250),
        ("cleaver", Edge.PLAIN, 350),
        ("bread", Edge.SERRATED, 400),
        ("scissors", Edge.PLAIN, None),
    ],
)
def test_the_starter_lines(name: str, edge: Edge, line_gf: int | None) -> None:
    """Common practice, no source. A serrated chef's knife is on the serrated scale; scissors cut the real thing."""
    assert read_settings(STARTER).gauge.line_gf(kind(name), edge) == line_gf


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ("every = 10 ", "every = -1 ", "every is a whole number of knives from 0 to 999, not -1"),
        ("wobble_gf = 15 ", "wobble_gf = 0 ", "wobble_gf is a whole number of grams-force from 1 to 200, not 0"),
        ("fresh_belt = true", 'fresh_belt = "yes"', "fresh_belt is true or false, without quotes, not “yes”"),
        ("always = []", 'always = ["cheff"]', "there is no kind “cheff”; do you mean chef?"),
        ("paring = 200", "pairing = 200", "there is no kind “pairing”; do you mean paring?"),
        ("chef = 250", "chef = 20000", "chef is a whole number of grams-force from 20 to 2000, not 20000"),
        ("serrated = 400", "toothed = 400", "has no “toothed”"),
    ],
)
def test_a_mistake_is_named_by_its_line(old: str, new: str, sentence: str) -> None:
    """A number out of range, a word for true or false, an unknown kind or edge: the line, and what may stand there."""
    before, found, after = STARTER.partition("[gauge]\n")
    text = before + found + after.replace(old, new, 1)
    line = next(n for n, one in enumerate(text.split("\n"), 1) if new in one)

    with pytest.raises(SettingsError) as refused:
        read_settings(text)

    assert str(refused.value).startswith(f"line {line}: ")
    assert sentence in str(refused.value)
