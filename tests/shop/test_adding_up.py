"""Knives that are carried between boxes add up; days of random acts (test_conservation.py) hold it of everything."""

from hypothesis import given
from hypothesis import strategies as st

from tests.shop.carried import carried


@given(count=st.integers(1, 9), moves=st.lists(st.tuples(st.integers(0, 8), st.integers(0, 2)), max_size=9))
def test_knives_carried_between_three_boxes_add_up(count: int, moves: list[tuple[int, int]]) -> None:
    """Held against a plain count of who lies where, worked out without the sum."""
    sums, lying = carried(count, moves)

    assert all(total.adds_up for total in sums)
    assert [total.on_hand for total in sums] == lying
    assert [total.counted for total in sums] == [count, 0, 0]
