"""A file of orders from the command line: first what it holds, then all of it or the good ones."""

from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, REFUSED, USAGE
from queueboard.intake.orders import COLUMNS
from queueboard.plainfiles import LONGEST_READ
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from tests.cli.schema import clock

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
MIXED = "name,knives\nOake,3\n,4\n[red]x[/],5\n"


def boxes(file: str) -> int:
    """How many boxes are on the board."""
    shop = open_shop(Path(file))
    try:
        return len(look(shop, clock()).boxes)
    finally:
        close_shop(shop)


def test_bad_lines_are_named_and_nothing_is_stored(
    empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Without --take it only says what it would do; with it, one bad line keeps all from being taken."""
    orders = tmp_path / "orders.csv"
    orders.write_text(MIXED, encoding="utf-8")

    assert main(["orders", str(orders), "--file", empty], clock=clock) == REFUSED
    assert "line 3 CANNOT BE TAKEN: The name is empty" in capsys.readouterr().out
    assert main(["orders", str(orders), "--take", "--as", "MB", "--file", empty], clock=clock) == REFUSED
    assert "Nothing was stored" in capsys.readouterr().err
    assert boxes(empty) == 0


def test_the_good_ones_are_taken_when_asked(empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """--good-ones leaves the bad ones out; a name like markup stands as it is."""
    orders = tmp_path / "orders.csv"
    orders.write_text("\ufeff" + MIXED, encoding="utf-8")

    assert main(["orders", str(orders), "--take", "--good-ones", "--as", "MB", "--file", empty], clock=clock) == FINE
    out = capsys.readouterr().out
    assert "line 4: [red]x[/], 5 knives" in out
    assert "2 boxes announced" in out
    assert boxes(empty) == 2


def test_who_acts_must_be_said(empty: str, tmp_path: Path) -> None:
    """Taking in stands in the history with initials."""
    orders = tmp_path / "orders.csv"
    orders.write_text("name\nOake\n", encoding="utf-8")

    assert main(["orders", str(orders), "--take", "--file", empty], clock=clock) == USAGE
    assert boxes(empty) == 0


def test_a_file_too_long_is_refused_whole(empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Orders behind the last character that is read would be lost without a word."""
    orders = tmp_path / "orders.csv"
    orders.write_text("name\nOake\n" + "\n" * LONGEST_READ + "Nora\n", encoding="utf-8")

    assert main(["orders", str(orders), "--take", "--as", "MB", "--file", empty], clock=clock) == USAGE
    assert "is longer than" in capsys.readouterr().err
    assert boxes(empty) == 0


def test_readme_names_every_column() -> None:
    """The table of columns in README is the one that is read."""
    for name, means in COLUMNS.items():
        assert f"| `{name}` | {means} |" in README
