"""The starter's lines against what the trade says of readings; a convention and no standard, so only its order is held.

Bands in grams-force as general trade practice gives them (common practice, no source; values from public pages that
differ among each other): 100 to 200 for a freshly sharpened kitchen knife, dull from about 500 on, serrated on a scale
of its own; one or two minutes a belt (common practice, no source).
"""

import pytest

from queueboard.edges.verdict import Line, Verdict, judge
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.shapes import Kind
from queueboard.words import Condition, Edge

STARTER = read_settings(seed_text("settings.toml"))
FRESH_GF, DULL_GF = (100, 150), 500
READ = [kind for kind in STARTER.kinds if STARTER.gauge.line_gf(kind, kind.edge) is not None]


def verdict(kind: Kind, force_gf: int) -> Verdict:
    """What the starter's own numbers say of a knife that needs this push at each spot."""
    most_gf = STARTER.gauge.line_gf(kind, kind.edge)
    assert most_gf is not None
    line = Line(most_gf=most_gf, most_apart_gf=STARTER.gauge.most_apart_gf)
    judged = judge({"heel": [force_gf], "tip": [force_gf]}, line, STARTER.gauge.wobble_gf)
    assert judged is not None
    return judged.verdict


@pytest.mark.parametrize("kind", READ, ids=lambda kind: kind.name)
def test_freshly_sharpened_is_ok_and_dull_is_not(kind: Kind) -> None:
    """No kind's line refuses what a good shop reaches or lets a dull edge through."""
    assert {verdict(kind, force) for force in FRESH_GF} == {Verdict.OK}
    assert verdict(kind, DULL_GF) is Verdict.NOT_OK


def test_serrated_has_a_scale_of_its_own() -> None:
    """Its line lies above that of a plain edge."""
    edges = STARTER.gauge.edges

    assert min(edges[Edge.SERRATED], edges[Edge.SCALLOPED]) > edges[Edge.PLAIN]


def test_a_belt_takes_one_or_two_minutes() -> None:
    """A dull chef's knife, its minutes shared by its belts and the finish."""
    chef = STARTER.kind("chef")
    assert chef is not None

    assert 1 <= chef.minutes[Condition.DULL] / (len(STARTER.process(chef.process).belts) + 1) <= 2
