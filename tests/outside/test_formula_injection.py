"""CSV against a published list of cells that a spreadsheet would run.

values/text_hazards.json: the signs and the worked example of OWASP's page on CSV injection (OWASP/www-community,
pages/attacks/CSV_Injection.md, commit 0e5e8f00). Line ends and quoting: RFC 4180, section 2.
"""

import csv
import io
import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.papers.csv_lists import csv_text, harmless_cell, typed_cell

HAZARDS = json.loads((Path(__file__).parent / "values" / "text_hazards.json").read_text(encoding="utf-8"))
PREFIXES: list[str] = HAZARDS["csv_prefixes"]
TEXTS = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"))
"""Whatever can be typed: NUL and halves of characters are refused before."""


def one_cell(text: str) -> str:
    """The line of a table that holds nothing but this text."""
    head, _, line = csv_text(["text"], iter([[text]])).partition("\r\n")
    assert head == '"text"'
    return line


@pytest.mark.parametrize("prefix", PREFIXES, ids=ascii)
@pytest.mark.parametrize("blanks", ["", " ", "\u00a0"], ids=["bare", "blank", "hard blank"])
def test_no_listed_sign_opens_a_cell(prefix: str, blanks: str) -> None:
    """A cell that begins with a listed sign, also behind blanks, begins with an apostrophe in its quotation marks."""
    assert one_cell(f"{blanks}{prefix}1+2").startswith("\"'")


def test_the_published_example_comes_out_as_published() -> None:
    """OWASP's own cell, which tries to break out of its quotation marks, becomes what the page prints."""
    example = HAZARDS["csv_example"]

    assert one_cell(example["input"]) == f"{example['output']}\r\n"


@given(TEXTS)
def test_every_text_can_be_had_back(text: str) -> None:
    """A reader that follows RFC 4180 finds one cell, and without its apostrophe it is the text that was typed."""
    ((cell,),) = csv.reader(io.StringIO(one_cell(text), newline=""))

    assert typed_cell(cell) == text
    assert cell[:1] not in [*PREFIXES, "＝"]
    assert harmless_cell(cell) in {cell, f"'{cell}"}


@given(st.lists(st.tuples(TEXTS, st.integers(), TEXTS), min_size=1))
def test_rows_stay_rows(rows: list[tuple[str, int, str]]) -> None:
    """Separators, quotation marks and line ends in cells open neither a cell nor a row; numbers stay bare numbers."""
    text = csv_text(["a", "b", "c"], iter(rows))
    _, *read = csv.reader(io.StringIO(text, newline=""))

    assert [(typed_cell(a), int(b), typed_cell(c)) for a, b, c in read] == rows
    assert text.endswith("\r\n")
