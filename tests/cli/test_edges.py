"""The commands about edges: card, compare and chart, as text and by their schemas."""

from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND
from queueboard.shop.opening import close_shop
from tests.cli.schema import clock, valid
from tests.shop.place import MORNING, demo_shop


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The invented shop, with some weeks of readings."""
    path = tmp_path_factory.mktemp("demo") / "demo.qb"
    close_shop(demo_shop(path, MORNING))
    return str(path)


def printed(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """What a command prints that ends well."""
    assert main(arguments, clock=lambda: MORNING) == FINE
    return capsys.readouterr().out


def test_the_demo_has_every_comparison_to_show(demo: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Before and after by kind and spot, edges that lasted by half, and a trial with both halves read."""
    text = printed(capsys, "compare", "--file", demo)
    facts = valid("compare", printed(capsys, "compare", "--json", "--file", demo))

    for words in ("studied on", "gf less (", "knives back after about 7 days", "without 16 um", "belt cost"):
        assert words in text
    lasted, trials = facts["lasted"], facts["trials"]
    assert isinstance(lasted, dict)
    assert isinstance(trials, list)
    assert lasted["all"]["more"]["mean_gf"] > 0
    assert trials[0]["read"] == {"with": 20, "without": 20}
    assert trials[0]["worst_gf"] is not None


def test_the_demo_s_chart_has_limits_and_a_signal(demo: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The finest belt tires in the last days: the chart of its process says so, and JSON names the knives."""
    text = printed(capsys, "chart", "--file", demo)
    facts = valid("chart", printed(capsys, "chart", "--json", "--file", demo))

    assert "Good work lies between" in text
    assert "Look at belt, angle and tester" in " ".join(text.split())
    charts = facts["charts"]
    assert isinstance(charts, list)
    plain = next(chart for chart in charts if chart["process"] == "plain")
    assert plain["limits"]["low_gf"] < plain["limits"]["middle_gf"] < plain["limits"]["high_gf"]
    assert any(reading["signals"] for reading in plain["readings"])


def test_a_card_of_a_box_that_is_gone(demo: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each spot before and after, as text, as HTML and as JSON."""
    text, page = (printed(capsys, "card", "394", *more, "--file", demo) for more in ((), ("--html",)))
    facts = valid("card", printed(capsys, "card", "394-1", "--json", "--file", demo))

    knives = facts["knives"]
    assert isinstance(knives, list)
    first = knives[0]["spots"][0]
    assert [spot["name"] for spot in knives[0]["spots"]] == ["heel", "middle", "tip"]
    for paper in (text, page):
        assert "394-1 chef 9 in, white ring 1" in paper
        assert f"{first['before_gf']} gf" in paper
        assert f"{first['after_gf']} gf" in paper


def test_a_box_that_never_was(demo: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Its number is named, with the code for nothing found."""
    assert main(["card", "9876", "--file", demo], clock=clock) == NOTHING_FOUND
    assert "There never was a box 9876" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["compare", "chart"])
def test_an_empty_shop_has_nothing_to_compare(empty: str, capsys: pytest.CaptureFixture[str], command: str) -> None:
    """Text says that nothing is there yet, JSON is as documented."""
    text = printed(capsys, command, "--file", empty)
    valid(command, printed(capsys, command, "--json", "--file", empty))

    assert "from memory" in text
    assert "nothing" in text


def test_hostile_words_are_only_words(file: str, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Names like markup or sequences stay text on every card: nothing is a tag in HTML, nothing commands a terminal."""
    for number in range(100, 104):
        page = printed(capsys, "card", str(number), "--html", "--file", file)
        text = printed(capsys, "card", str(number), "--file", file)
        valid("card", printed(capsys, "card", str(number), "--json", "--file", file))

        assert "\x1b" not in page + text
        assert "\u202e" not in page + text
