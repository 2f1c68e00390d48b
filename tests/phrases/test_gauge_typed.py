"""A reading as it is typed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.phrases.gauge_typed import MOST_GF, parse_force_gf


@given(st.integers(1, MOST_GF))
def test_every_whole_push_is_read(force_gf: int) -> None:
    """A whole number within the gauge's range is taken as it stands, spaces and zeros in front too."""
    assert parse_force_gf(f" 0{force_gf} ") == force_gf


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("0", "A reading of 0 is no cut"),
        ("-5", "-5 is below nothing"),
        ("20000", "20000 gf is more than 5000"),
        ("5001", "5001 gf is more than 5000"),
        ("16x", "“16x” is no reading"),
        ("", "“” is no reading"),
        ("١٦٥", "is no reading"),
        ("165,5", "165,5 has a fraction"),
        ("165.5", "165.5 has a fraction"),
        ("9" * 5000, "is more than 5000"),
    ],
)
def test_anything_else_is_a_sentence(typed: str, sentence: str) -> None:
    """What can be no reading is refused with what was typed and what to type instead."""
    with pytest.raises(TypedError, match=sentence):
        parse_force_gf(typed)
