"""Spots as they are typed: a name, a space and a whole number; anything else is asked back."""

import pytest

from queueboard.errors import TypedError
from queueboard.phrases.typed_bench import parse_spots
from queueboard.values.edge import NewSpot


def test_spots_with_and_without_a_place() -> None:
    """A number is millimetres from the heel, or a tooth; it may be missing."""
    assert parse_spots("heel 25, belly, far tip 175mm", teeth=False) == (
        NewSpot(name="heel", from_heel_mm=25),
        NewSpot(name="belly"),
        NewSpot(name="far tip", from_heel_mm=175),
    )
    assert parse_spots("first 3; last 40", teeth=True) == (
        NewSpot(name="first", tooth=3),
        NewSpot(name="last", tooth=40),
    )


@pytest.mark.parametrize("text", ["heel -5", "heel 25.5", "heel 12345", "heel25", "heel 2 5", "heel 5 cm"])
def test_a_place_that_is_no_whole_number_is_asked_back(text: str) -> None:
    """A sign, a point, five figures or another unit never end up in the name."""
    with pytest.raises(TypedError, match="is not understood"):
        parse_spots(text, teeth=False)


def test_a_place_needs_a_name() -> None:
    """A number alone says nothing to the next person."""
    with pytest.raises(TypedError, match="has no name"):
        parse_spots("25", teeth=False)


def test_a_tooth_may_be_said_in_so_many_words() -> None:
    """Heel tooth 3 and heel 3 mean the same of an edge with teeth; a tooth without a number is refused."""
    assert parse_spots("heel tooth 3, tip 20", teeth=True) == parse_spots("heel 3, tip tooth 20", teeth=True)
    with pytest.raises(TypedError, match="does not say which tooth"):
        parse_spots("heel tooth", teeth=True)
