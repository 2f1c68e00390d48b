"""A chart in plain characters, and the sentence below it."""

from hypothesis import given
from hypothesis import strategies as st

from queueboard.edges.drift import Limits, Mark, Signal, limits_of, signals
from queueboard.phrases.chart import chart_lines, chart_words, range_lines

LIMITS = Limits(middle=200.0, low=140.0, high=260.0, most_range=74.0)


def test_a_chart_is_drawn_as_by_hand() -> None:
    """Without limits a row is 100 gf; with them one is 40 gf, and 200 gf lies two and a half of them below 300."""
    plain = chart_lines([100.0, 200.0, 300.0], None, width=12, height=3)
    limited = chart_lines([140.0, 200.0, 300.0], LIMITS, (Mark(2, Signal.BEYOND),), width=12, height=5)

    assert plain == (" 300 │    ●", "     │  ●", " 100 │●")
    assert limited == (" 300 │    X", " 260 │──────", " 200 │┄┄●┄┄┄", "     │", " 140 │●─────")


def test_the_words_are_about_what_is_drawn() -> None:
    """Signals that have run out of the chart at the left are counted no more, and that something has is said."""
    readings = [300.0] * 20 + [200.0, 201.0, 199.0, 200.0] * 50
    marks = signals(readings, LIMITS)
    assert len([mark for mark in marks if mark.signal is Signal.BEYOND]) == 20
    words = chart_words(len(readings), LIMITS, marks, 20, width=78)

    assert "Only the newest 72 of 220 are drawn." in words
    assert "Nothing here is more than chance." in words
    assert not any("X" in line for line in chart_lines(readings, LIMITS, marks, width=78))


def test_a_figure_stands_once_beside_the_chart() -> None:
    """Readings that hardly differ do not write the same figure down the whole side."""
    figures = [line.partition("│")[0].strip() for line in chart_lines([180.0, 179.0, 180.0], None)]

    assert [figure for figure in figures if figure] == ["180", "179"]


def test_no_limit_lies_below_nothing() -> None:
    """An edge needs some push; a lower limit of less than none would be drawn where no reading can be."""
    limits = limits_of([1.0, 5000.0] * 6)

    assert limits.low == 0.0
    lines = chart_lines([1.0, 5000.0], limits)
    assert len({line.index("│") for line in lines}) == 1


def test_a_mark_is_loud_where_it_stands() -> None:
    """The second of three readings is drawn as X."""
    lines = chart_lines([200.0, 400.0, 210.0], LIMITS, (Mark(1, Signal.BEYOND),))

    assert sum(line.count("X") for line in lines) == 1
    assert lines[0].endswith("  X")


def test_what_lies_beyond_a_limit_is_drawn_beyond_it() -> None:
    """A reading a little over the limit stands above its line, and the line has the limit's own figure."""
    lines = chart_lines([200.0] * 5 + [262.0], LIMITS)
    (line,) = [place for place, text in enumerate(lines) if text.startswith(" 260 │───")]
    (over,) = [place for place, text in enumerate(lines) if text.endswith("●")]

    assert over < line


@given(readings=st.lists(st.floats(100, 400), min_size=1, max_size=90), height=st.integers(9, 20))
def test_every_reading_stands_on_its_side_of_the_limits(readings: list[float], height: int) -> None:
    """Above the upper line stand those above it and no others."""
    lines = chart_lines(readings, LIMITS, height=height)[:height]
    shown = readings[max(0, len(readings) - 72) :]
    ink = [sum(sign in "●X" for sign in line.partition("│")[2]) for line in lines]

    assert sum(ink) == len(shown)
    upper = next(place for place, line in enumerate(lines) if line.startswith(" 260 │"))
    assert sum(ink[:upper]) == sum(value > LIMITS.high for value in shown)


def test_steps_are_drawn_below_the_readings() -> None:
    """Four readings make three steps; the one above the largest usual step is loud."""
    lines = range_lines([200.0, 210.0, 300.0, 290.0], LIMITS)

    assert sum(line.count("●") + line.count("X") for line in lines) == 3
    assert sum(line.count("X") for line in lines) == 1
    assert any(line.startswith("  74 │ ───") for line in lines)
    assert range_lines([200.0], LIMITS) == ()
