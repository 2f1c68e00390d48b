"""Trays: which knives of a box move together, the likeliest first, and which stay."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.board.trays import Tray, read_staying, stay_anyway, step_from, trays_by, trays_to_ready
from queueboard.errors import TypedError
from queueboard.words import ON_BOARD, Column, DeclineReason, WaitingFor
from tests.pictures import box_picture, knife, knives

R, B, T, OK = ON_BOARD


def sides(trays: tuple[Tray, ...]) -> list[tuple[tuple[Column, ...], Column, int]]:
    """From where to where each tray goes, and with how many."""
    return [(tray.source, tray.to, len(tray.knives)) for tray in trays]


def test_the_leftmost_tray_is_offered_first() -> None:
    """Of a box with knives everywhere, what is not begun moves on first, then the bench, then testing."""
    box = box_picture(417, knives_=knives(417, R, R, B, B, B, T, OK))

    assert sides(trays_by(box, 1)) == [((R,), B, 2), ((B,), T, 3), ((T,), OK, 1)]


def test_a_column_where_nothing_can_move_is_no_tray() -> None:
    """When all that is received waits for somebody, the bench is the leftmost tray."""
    waits = replace(knife("417-1"), waiting_for=WaitingFor.ESTIMATE)
    box = box_picture(417, knives_=(waits, knife("417-2", column=B)))

    assert sides(trays_by(box, 1)) == [((B,), T, 1)]


def test_the_column_under_the_cursor_comes_first() -> None:
    """With the cursor on the bench, the tray on the bench is offered first."""
    box = box_picture(417, knives_=knives(417, R, R, B))

    assert sides(trays_by(box, 1, B))[0] == ((B,), T, 1)


def test_back_from_testing_is_offered_first() -> None:
    """Moving back begins with testing, which goes to the bench again; received has nothing before it."""
    box = box_picture(417, knives_=knives(417, R, B, T, OK))

    assert sides(trays_by(box, -1)) == [((T,), B, 1), ((B,), R, 1), ((OK,), T, 1)]


def test_bench_and_testing_go_to_ready_together() -> None:
    """Straight to ready takes bench and testing at once; each alone is offered after it."""
    box = box_picture(417, knives_=knives(417, R, B, B, T))

    assert sides(trays_to_ready(box)) == [((B, T), OK, 3), ((B,), OK, 2), ((T,), OK, 1), ((R,), OK, 1)]


def test_what_is_held_stays_and_is_told() -> None:
    """A knife that waits, is looked for or is beyond the note is held and not in the tray; a ready one is in none."""
    here = (
        knife("417-1", column=B),
        knife("417-2", column=B, waiting_for=WaitingFor.BELTS),
        knife("417-3", column=B, looking_for=True),
        knife("417-4", column=OK, declined=DeclineReason.CRACKED),
        replace(knife("417-5", column=B), apart=True),
    )

    (tray,) = trays_by(box_picture(417, knives_=here), 1)

    assert [k.number for k in tray.knives] == [1]
    assert [k.number for k in tray.held] == [2, 3, 5]


def test_a_box_of_held_knives_has_no_tray() -> None:
    """Where nothing can move, no tray is offered."""
    here = tuple(replace(k, waiting_for=WaitingFor.ESTIMATE) for k in knives(417, R, B))

    assert trays_by(box_picture(417, knives_=here), 1) == ()


@given(staying=st.sets(st.integers(1, 9)), between=st.sampled_from([" ", ".", ", ", "-"]))
def test_the_numbers_typed_stay_and_the_others_go(staying: set[int], between: str) -> None:
    """Whatever stands between the numbers, exactly the others move."""
    (tray,) = trays_by(box_picture(417, knives_=knives(417, *[B] * 9)), 1)

    stays = read_staying(between.join(map(str, sorted(staying))), tray)

    assert {k.number for k in tray.going(stays)} == set(range(1, 10)) - staying


def test_a_number_no_knife_of_the_box_has_is_asked_back() -> None:
    """The sentence names the tag that was typed and does not exist."""
    (tray,) = trays_by(box_picture(417, knives_=knives(417, B, B)), 1)

    with pytest.raises(TypedError, match=r"There is no knife 417-7"):
        read_staying("1.7", tray)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("1", ""),
        ("3", "417-3 stands in testing; it stays anyway."),
        ("1.3.4", "417-3 stands in testing, 417-4 is ready; they stay anyway."),
    ],
)
def test_a_knife_outside_the_tray_stays_anyway(typed: str, said: str) -> None:
    """Naming it blocks nothing, and where it stands is said."""
    tray = trays_by(box_picture(417, knives_=knives(417, B, B, T, OK)), 1)[0]

    staying = read_staying(typed, tray)

    assert stay_anyway(staying, tray) == said
    assert {k.number for k in tray.going(staying)} == {1, 2} - staying


def test_the_board_ends_on_both_sides() -> None:
    """Nothing comes before received, and ready leaves only by the close-out."""
    assert [step_from(column, 1) for column in ON_BOARD] == [B, T, OK, None]
    assert [step_from(column, -1) for column in ON_BOARD] == [None, R, B, T]
