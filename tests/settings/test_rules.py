"""Which process and how many minutes a knife asks for."""

from dataclasses import replace

import pytest

from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.rules import minutes_of, process_of
from queueboard.words import Condition, Edge

SHOP = read_settings(seed_text("settings.toml"))


@pytest.mark.parametrize(
    ("kind", "edge", "process"),
    [
        ("chef", Edge.PLAIN, "plain"),
        ("chef", Edge.SERRATED, "serrated"),
        ("chef", Edge.SINGLE_LEFT, "single bevel"),
        ("bread", Edge.SERRATED, "serrated"),
        ("bread", Edge.PLAIN, "plain"),
        ("steak", Edge.SCALLOPED, "steak"),
        ("santoku", Edge.PLAIN, "thin hard"),
        ("scissors", Edge.PLAIN, "scissors"),
        ("ceramic", Edge.PLAIN, "ceramic"),
    ],
)
def test_the_edge_decides_the_way(kind: str, edge: Edge, process: str) -> None:
    """A kind with its usual edge goes its own way, with another edge the way of that edge."""
    found = SHOP.kind(kind)

    assert found is not None
    assert process_of(SHOP, found, edge).name == process


def test_an_edge_without_a_process_goes_the_kind_s_own_way() -> None:
    """Where the shop has no process for an edge, the kind's own holds."""
    shop = replace(SHOP, edges={})
    chef = shop.kinds[0]

    assert process_of(shop, chef, Edge.SERRATED).name == "plain"


@pytest.mark.parametrize(
    ("kind", "edge", "condition", "minutes"),
    [
        ("chef", Edge.PLAIN, Condition.DULL, 6),
        ("C", Edge.PLAIN, Condition.DULL, 6),
        ("paring", Edge.SERRATED, Condition.DULL, 6),
        ("chef", Edge.SCALLOPED, Condition.DULL, 10),
        ("chef", Edge.SCALLOPED, Condition.BIG_CHIPS, None),
        ("cleaver", Edge.SERRATED, Condition.DULL, 8),
        ("steak", Edge.SCALLOPED, Condition.DULL, 2),
        ("ceramic", Edge.PLAIN, Condition.BIG_CHIPS, None),
        ("sabre", Edge.PLAIN, Condition.DULL, None),
    ],
)
def test_minutes_follow_kind_edge_and_condition(
    kind: str, edge: Edge, condition: Condition, minutes: int | None
) -> None:
    """An unusual edge never takes less than its kind or than the quickest kind made with it; a gap is declined."""
    assert minutes_of(SHOP, kind, edge, condition) == minutes


def test_an_edge_that_no_kind_has_takes_the_kind_s_minutes() -> None:
    """With no kind to compare with, the kind's own minutes hold."""
    shop = replace(SHOP, kinds=SHOP.kinds[:1])

    assert minutes_of(shop, "chef", Edge.SERRATED, Condition.DULL) == 6
