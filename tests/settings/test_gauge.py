"""The gauge's rule and lines in the shop's own numbers."""

import re

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.rules import line_gf
from queueboard.settings.shapes import Gauge
from queueboard.words import Edge

STARTER = seed_text("settings.toml")


def test_a_text_from_before_the_gauge_is_read() -> None:
    """A shop whose text has no gauge gets the usual rule and lines."""
    old = re.sub(r"(?m)^line_gf = .*\n", "", re.sub(r"(?ms)^\[gauge\]\n.*?\n\n", "", STARTER))
    settings = read_settings(old)

    assert settings.gauge == Gauge()
    assert line_gf(settings, "paring", Edge.PLAIN) == 250


@pytest.mark.parametrize(
    ("kind", "edge", "line"),
    [
        ("paring", Edge.PLAIN, 200),
        ("chef", Edge.PLAIN, 250),
        ("cleaver", Edge.PLAIN, 350),
        ("chef", Edge.SERRATED, 400),
    ],
)
def test_a_line_is_the_kinds_unless_the_edge_overrules(kind: str, edge: Edge, line: int) -> None:
    """A serrated edge is held against its own scale, whatever the kind (a choice of the starter, no source)."""
    assert line_gf(read_settings(STARTER), kind, edge) == line


@pytest.mark.parametrize(
    ("right", "wrong", "sentence"),
    [
        ("every = 10 ", "every = -1 ", "every is a whole number of knives from 0 to 1000, not -1"),
        ("fresh_belt = true", "fresh_belt = 1", "fresh_belt is true or false without quotes, not 1"),
        ("always = []", 'always = ["cheff"]', "there is no kind “cheff”; do you mean chef?"),
        ("always = []", 'always = ["shears"]', "shears is always read and never read"),
        ("serrated = 400,", "serrated = 20000,", "grams-force from 50 to 5000, not 20000"),
    ],
)
def test_a_mistake_is_named_by_its_line(right: str, wrong: str, sentence: str) -> None:
    """A slip in the gauge's table is one sentence that begins with its line."""
    assert right in STARTER
    with pytest.raises(SettingsError, match=f"^line [0-9]+: .*{re.escape(sentence)}"):
        read_settings(STARTER.replace(right, wrong, 1))
