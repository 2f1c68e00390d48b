"""The rows of a column as values: nothing of weight is cut, and no line is wider than its column."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from queueboard.board.widgets.rows import Part, Row, cut, length
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column
from tests.board.host import rows_of
from tests.busy_morning import busy_morning
from tests.pictures import HOSTILE_NAMES, box_picture, customer, knives, picture

STATES = ("LATE", "TODAY", "WAIT", "WILL BE LATE", "DECLINED", "REDO", "RUSH", "NEVER SLIP")

texts = st.text(st.characters(exclude_categories=("Cc", "Cs", "Cf", "Mn", "Me")), max_size=30)


def plain(row: Row, width: int) -> list[str]:
    """The row's lines as text."""
    return ["".join(part.text for part in line) for line in row.lines(width)]


@given(parts=st.lists(texts, max_size=5), width=st.integers(1, 40))
def test_no_line_is_wider_than_its_column(parts: list[str], width: int) -> None:
    """However wide the letters are, a cut line fits, and a line that fits is not cut."""
    line = tuple(Part(text=text) for text in parts)

    fitted = cut(line, width)

    assert length(fitted) <= width
    assert fitted == line or length(line) > width


@given(words=st.lists(st.sampled_from(["LATE", "WAIT", "WILL BE LATE", "11 of 13"]), max_size=6))
def test_words_are_never_cut(words: list[str]) -> None:
    """At the narrowest column every word of a heading stands whole on some line, in its order."""
    row = Row(box_id=1, number=1, knife=None, first=(), words=tuple(Part(text=word) for word in words))

    assert " ".join(plain(row, 17)).split() == " ".join(words).split()


def test_every_knife_and_every_box_stands_in_its_column() -> None:
    """Each knife of the morning is in the rows of its own column once, below a heading of its box."""
    morning = busy_morning()
    shown: list[Knife] = []
    for column in ON_BOARD:
        rows = rows_of(morning.boxes, column, morning)
        shown += [row.knife for row in rows if row.knife is not None]
        assert all(row.knife is None or row.knife.column is column for row in rows)
        assert not rows or rows[0].knife is None

    assert shown
    assert sorted(k.id for k in shown) == sorted(k.id for b in morning.boxes for k in b.on_hand)


def test_a_box_that_is_not_opened_stands_in_received_without_knives() -> None:
    """It has a heading of its own that says so."""
    morning = busy_morning()

    rows = [row for row in rows_of(morning.boxes, Column.RECEIVED, morning) if row.number == 426]

    assert [row.knife for row in rows] == [None]
    assert "not opened" in " ".join(plain(rows[0], 28))


def test_the_states_are_words() -> None:
    """Every state of the busy morning stands in the rows as a word, not only as a colour."""
    morning = busy_morning()
    rows = [row for column in ON_BOARD for row in rows_of(morning.boxes, column, morning)]
    text = "\n".join(line for row in rows for line in plain(row, 28))

    missing = [word for word in STATES if word not in text]

    assert not missing


@pytest.mark.parametrize("name", HOSTILE_NAMES)
def test_a_name_is_shown_as_it_is_typed(name: str) -> None:
    """A heading holds the name's own letters, whatever they would mean elsewhere, and fits the narrowest column."""
    box = box_picture(417, customer_=customer(name), knives_=knives(417, Column.RECEIVED))

    row = rows_of((box,), Column.RECEIVED, picture(box))[0]

    assert name[:4].rstrip() in plain(row, 400)[0]
    assert all(cell_len(line) <= 17 for line in plain(row, 17))
