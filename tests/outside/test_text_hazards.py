"""Typed text against a published list of hazards.

values/text_hazards.json: control characters from the ECMA-48 tables (as the documentation of ansi-control-codes gives
them), direction marks from CVE-2021-42574, widths from the Unicode East Asian Width data by wcwidth 0.9.4.
"""

import json
from pathlib import Path

import pytest
from rich.cells import cell_len

from queueboard.clean import cell_text, clean
from queueboard.errors import TypedError

HAZARDS = json.loads((Path(__file__).parent / "values" / "text_hazards.json").read_text(encoding="utf-8"))
SAMPLES: list[tuple[str, str, int]] = [(s["name"], s["text"], s["wcswidth"]) for s in HAZARDS["width"]]


def code_points(text: str) -> list[int]:
    """The code points of a list such as "U+202A-U+202E"."""
    ends = [int(end.strip().removeprefix("U+"), 16) for end in text.split("-")]
    return list(range(ends[0], ends[-1] + 1))


CONTROLS = [c for name in ("C0", "DEL", "C1") for c in code_points(HAZARDS["controls"][name])]
DIRECTION_MARKS = [c for entry in HAZARDS["controls"]["bidi"] for c in code_points(entry)]


@pytest.mark.parametrize("point", [c for c in CONTROLS if c != 0], ids=hex)
def test_no_listed_control_character_survives(point: int) -> None:
    """Each C0, DEL and C1 control is gone after cleaning, wherever it stands."""
    assert chr(point) not in clean(f"a{chr(point)}b{chr(point)}")


def test_nul_is_refused() -> None:
    """NUL is the one control that is refused, since text after it could be lost without a trace."""
    with pytest.raises(TypedError):
        clean("a\0b")


@pytest.mark.parametrize("introducer", HAZARDS["controls"]["C1_introducers"].values())
def test_a_one_byte_introducer_opens_nothing(introducer: str) -> None:
    """A sequence begun with a single C1 character leaves no control behind."""
    (point,) = code_points(introducer)

    assert clean(f"a{chr(point)}b") in {"ab", "a"}


@pytest.mark.parametrize("point", DIRECTION_MARKS, ids=hex)
def test_no_listed_direction_mark_survives(point: int) -> None:
    """Each mark that reorders its neighbours is gone, its neighbours stay."""
    assert clean(f"a{chr(point)}b") == "ab"


@pytest.mark.parametrize(("name", "text", "width"), [s for s in SAMPLES if s[0] != "NUL"], ids=lambda v: ascii(v)[:30])
def test_a_cleaned_cell_is_as_wide_as_published(name: str, text: str, width: int) -> None:
    """After cleaning, a list cell takes the published number of columns where the sample holds no dropped sign."""
    cleaned = cell_text(clean(text))

    assert cell_len(cleaned) >= 0
    if cleaned == text:
        assert cell_len(cleaned) == width, name
