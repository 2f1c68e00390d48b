"""Readings drawn as strips over one scale, so that two sets can be compared by eye."""

from hypothesis import given
from hypothesis import strategies as st

from queueboard.phrases.strips import INK, strip_lines

READINGS = st.lists(st.floats(1, 5000), max_size=60)


def test_two_strips_share_one_scale() -> None:
    """The lowest reading of all stands in the first cell, the highest in the last; more at one place stand taller.

    Three knives are the most at one place and take all eight eighths; one of three is 2.7 of them, two are 5.3.
    """
    drawn = strip_lines([("before", [100, 300, 300]), ("after", [100, 200, 200, 200])], width=30)

    assert drawn == (
        "before │▃                    ▅",
        "after  │▃         █           ",
        "       │100       gf       300",
    )


def test_one_reading_is_drawn() -> None:
    """A scale without any width has its one place at the left."""
    assert strip_lines([("tip", [180])], width=20) == ("tip │█              ", "    │180   gf    180")


def test_nothing_is_drawn_of_nothing() -> None:
    """Without a reading there is no scale."""
    assert strip_lines([], width=40) == strip_lines([("heel", [])], width=40) == ()


@given(rows=st.lists(st.tuples(st.sampled_from(["heel", "a long name of a kind of knife"]), READINGS), max_size=5))
def test_strips_keep_to_their_width_and_lose_no_set(rows: list[tuple[str, list[float]]]) -> None:
    """Every set that has readings gets a line with ink in it, and no line is wider than asked."""
    drawn = strip_lines(rows, width=40)

    assert all(len(line) <= 40 for line in drawn)
    inked = sum(any(sign in line.partition("│")[2] for sign in INK[1:]) for line in drawn[:-1])
    assert inked == sum(bool(readings) for _, readings in rows)
