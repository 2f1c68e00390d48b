"""Papers from the command line: text or page, to the terminal or to a file, with a browser or without."""

from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND, REFUSED, USAGE
from tests.cli.schema import clock


@pytest.fixture(autouse=True)
def no_window(monkeypatch: pytest.MonkeyPatch) -> None:
    """A machine over ssh."""
    monkeypatch.setenv("SSH_CONNECTION", "10.0.0.1 1 10.0.0.2 22")


@pytest.mark.parametrize("command", ["tags", "stub", "card", "slip"])
def test_each_paper_is_a_page_too(command: str, file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """--html prints a page of the shop's paper, --paper one of another; without it plain text comes."""
    for options, size in ((["--html"], "letter"), (["--html", "--paper", "label"], "100mm 150mm")):
        assert main([command, "100", *options, "--file", file], clock=clock) == FINE
        assert f"@page {{ size: {size};" in capsys.readouterr().out
    assert main([command, "100", "--file", file], clock=clock) == FINE
    assert "<html" not in capsys.readouterr().out


def test_a_paper_is_written_where_it_is_told(file: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Text or page, in a new file, readable by the owner only; a folder that is not there is said."""
    path = tmp_path / "tags.html"
    assert main(["tags", "100-2", "--html", "--write", str(path), "--file", file], clock=clock) == FINE
    assert "100-2" in path.read_text(encoding="utf-8")
    assert path.stat().st_mode & 0o777 == 0o600
    assert f"Written to {path}" in capsys.readouterr().out
    assert main(["stub", "100", "--write", str(tmp_path / "no" / "x"), "--file", file], clock=clock) == REFUSED
    assert "could not be written" in capsys.readouterr().err


@pytest.mark.parametrize("link", [False, True], ids=["itself", "a link to it"])
def test_nothing_is_written_over(link: bool, file: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The shop's own file named by mistake, or a link to it, is kept to the last byte."""
    there = Path(file)
    if link:
        (there := tmp_path / "link.txt").symlink_to(file)
    before = Path(file).read_bytes()

    assert main(["day", "--write", str(there), "--file", file], clock=clock) == REFUSED
    assert "is there already and is kept as it is" in capsys.readouterr().err
    assert Path(file).read_bytes() == before


def test_without_a_browser_the_page_is_named(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """--open over ssh writes the page into the folder of papers and says where; the sheet can then be typed back."""
    assert main(["day", "--open", "--file", file], clock=clock) == FINE

    folder = Path(file).parent / "papers"
    assert {path.suffix for path in folder.iterdir()} == {".html", ".tags"}
    assert f"The page is in {folder}" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("asked", "code", "says"),
    [
        (["tags", "100", "--paper", "A4"], USAGE, "add --html"),
        (["card", "100", "--json", "--html"], USAGE, "stands alone"),
        (["slip", "9"], NOTHING_FOUND, "never was a box 9"),
        (["loose", "scissors"], NOTHING_FOUND, "No knife fits"),
    ],
)
def test_what_cannot_be_is_said(
    asked: list[str], code: int, says: str, file: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A sentence and a code of its own."""
    assert main([*asked, "--file", file], clock=clock) == code
    assert says in capsys.readouterr().err


def test_a_loose_knife_is_listed_with_where_it_was_last(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The likeliest first, with customer, place, time and initials."""
    assert main(["loose", "chef 20cm", "nick", "2", "--file", file], clock=clock) == FINE

    first, where, *_ = capsys.readouterr().out.splitlines()
    assert "chef 7.9 in, nick 2" in first
    assert where.startswith("  last: not begun, ")
    assert where.endswith(", J")
