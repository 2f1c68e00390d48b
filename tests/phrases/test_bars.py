"""A part of a whole as cells, held against rows worked out by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.phrases.bars import FREE, FULL, bar, measure

BY_HAND = [
    (0, 100, 8, "░░░░░░░░"),
    (1, 100, 8, "█░░░░░░░"),  # 0.08 of a cell, but something is there
    (12, 100, 8, "█░░░░░░░"),  # 0.96
    (19, 100, 8, "██░░░░░░"),  # 1.52
    (50, 100, 8, "████░░░░"),
    (99, 100, 8, "███████░"),  # 7.92, but not all of it
    (100, 100, 8, "████████"),
    (118, 100, 8, "████████"),  # a belt beyond its knives
    (1, 2, 1, "█"),
    (0, 0, 3, "░░░"),
    (3, 0, 3, "███"),  # of nothing anything is all
    (10**12, 2 * 10**12, 4, "██░░"),
    (5, 9, 0, ""),
    (-3, 9, 3, "░░░"),
]


@pytest.mark.parametrize(("part", "whole", "cells", "drawn"), BY_HAND)
def test_a_part_is_drawn_as_by_hand(part: int, whole: int, cells: int, drawn: str) -> None:
    """Nothing, little, half, nearly all, all and beyond it, and figures of any size."""
    assert measure(part, whole, cells) == drawn
    assert bar(part, whole, cells) == drawn.rstrip(FREE)


@given(part=st.integers(0, 10**9), more=st.integers(0, 10**9), whole=st.integers(1, 10**9), cells=st.integers(2, 200))
def test_more_is_never_drawn_shorter(part: int, more: int, whole: int, cells: int) -> None:
    """A bar keeps its width and the order of what it shows; something has a cell, and all but all leaves one free."""
    less, longer = measure(part, whole, cells), measure(part + more, whole, cells)

    assert len(less) == len(longer) == cells
    assert less.count(FULL) <= longer.count(FULL)
    assert (FULL in less) == (part > 0)
    assert (FREE in less) == (part < whole)
