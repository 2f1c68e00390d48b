"""Tags printed before a market day, as in story 13; all figures are invented."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.intake.printed_tags import hold_against


def test_a_tag_that_was_never_used_is_a_gap_and_the_rest_is_left() -> None:
    """Of 500 to 560, used up to 534 but for 533, this one is a gap, and those behind 534 are still on the pad."""
    found = hold_against(500, 560, [*range(500, 533), 534])

    assert found.gaps == (533,)
    assert found.left == tuple(range(535, 561))
    assert (found.duplicates, found.not_printed) == ((), ())


def test_tags_typed_twice_and_tags_of_another_pad_are_named() -> None:
    """A tag typed for two customers is a duplicate, and one that was not printed is said to be none of these."""
    found = hold_against(500, 560, [502, 500, 502, 650, 650])

    assert found.duplicates == (502, 650)
    assert found.not_printed == (650,)
    assert found.gaps == (501,)


def test_before_the_first_is_typed_all_are_left() -> None:
    """A pad of which nothing was used has no gap."""
    found = hold_against(500, 502, [])

    assert (found.gaps, found.left, found.used) == ((), (500, 501, 502), ())


@given(st.integers(1, 9000), st.integers(0, 60), st.lists(st.integers(1, 9060), max_size=40))
def test_every_printed_tag_is_in_one_list(first: int, more: int, others: list[int]) -> None:
    """Used, gap and left hold each printed tag once; every tag typed is used or was not printed, in any order."""
    typed = [*others, *(first + other % (more + 1) for other in others)]

    found = hold_against(first, first + more, typed)

    assert sorted((*found.used, *found.gaps, *found.left)) == list(range(first, first + more + 1))
    assert {*found.used, *found.not_printed} == set(typed)
    assert found == hold_against(first, first + more, typed[::-1])


@pytest.mark.parametrize(("first", "last"), [(560, 500), (0, 10), (9990, 10000), (1, 1000)])
def test_a_range_that_cannot_be_is_refused(first: int, last: int) -> None:
    """Tags turned round, below 1, above four figures or more than a pad holds are said to be so."""
    with pytest.raises(TypedError, match=f"Tags {first} to {last}"):
        hold_against(first, last, [])
