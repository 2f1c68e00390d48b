"""A chart in plain characters, and the sentence below it."""

from queueboard.edges.drift import Limits, Mark, Signal, limits_of, signals
from queueboard.phrases.chart import chart_lines, chart_words

LIMITS = Limits(middle=200.0, low=140.0, high=260.0, most_range=74.0)


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
    figures = [line.partition("|")[0].strip() for line in chart_lines([180.0, 179.0, 180.0], None)]

    assert [figure for figure in figures if figure] == ["180", "179"]


def test_no_limit_lies_below_nothing() -> None:
    """An edge needs some push; a lower limit of less than none would be drawn where no reading can be."""
    limits = limits_of([1.0, 5000.0] * 6)

    assert limits.low == 0.0
    lines = chart_lines([1.0, 5000.0], limits)
    assert len({line.index("|") for line in lines}) == 1


def test_a_mark_is_loud_where_it_stands() -> None:
    """The second of three readings is drawn as X."""
    lines = chart_lines([200.0, 400.0, 210.0], LIMITS, (Mark(1, Signal.BEYOND),))

    assert sum(line.count("X") for line in lines) == 1
    assert lines[0].endswith("  X")
