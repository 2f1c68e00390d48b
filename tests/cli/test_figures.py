"""The commands about a day: as text, by their schema, and what they refuse."""

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, USAGE
from tests.cli.schema import clock, valid


@pytest.mark.parametrize("asked", [[], ["--on", "yesterday"], ["--on", "2026-11-09"]], ids=" ".join)
def test_the_evening_as_text_and_json(asked: list[str], file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Today, yesterday or another day; JSON follows its schema."""
    assert main(["evening", *asked, "--file", file], clock=clock) == FINE
    assert "end of the day: " in capsys.readouterr().out
    assert main(["evening", *asked, "--json", "--file", file], clock=clock) == FINE

    assert valid("evening", capsys.readouterr().out)


@pytest.mark.parametrize("asked", ["tomorrow", "2026-11-10", "whenever", ""])
def test_a_day_to_come_has_no_evening(asked: str, file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What is no day, and a day that has not come, are refused in one sentence."""
    assert main(["evening", "--on", asked, "--file", file], clock=clock) == USAGE

    assert capsys.readouterr().err.count("\n") == 1


@pytest.mark.parametrize("asked", [[], ["2026-11"], ["oct"], ["november 2025"]], ids=" ".join)
def test_the_month_as_text_and_json(asked: list[str], file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The month that is now, another one, one before anything was; JSON follows its schema."""
    assert main(["month", *asked, "--file", file], clock=clock) == FINE
    assert "KNIVES A DAY" in capsys.readouterr().out
    assert main(["month", *asked, "--json", "--file", file], clock=clock) == FINE

    assert valid("month", capsys.readouterr().out)


@pytest.mark.parametrize("asked", ["2026-12", "whenever", "13", ""])
def test_a_month_to_come_has_no_figures(asked: str, file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What is no month, and a month that has not come, are refused in one sentence."""
    assert main(["month", asked, "--file", file], clock=clock) == USAGE

    assert capsys.readouterr().err.count("\n") == 1
