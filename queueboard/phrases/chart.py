"""Readings as a chart of one sign each, and what it shows in a sentence."""

from collections.abc import Callable, Sequence
from itertools import pairwise

from queueboard.edges.drift import D4, Limits, Mark, Signal

GUTTER = 6
"""Cells for the figures at the left, and the rule behind them."""
HIGHEST = 9999
"""The highest figure at the left; no tester shows more."""
FIGURE_EACH = 4
"""Rows from one figure at the left to the next; the limits have theirs besides."""
RANGE_HEIGHT = 5
"""Lines of the chart of steps."""
RANGE_WORDS = "steps from each knife to the next, gf:"
POINT, LOUD, EDGE, MIDDLE, RULE = "●", "X", "─", "┄", "│"


def left_out(readings: int, width: int) -> int:
    """How many of the oldest readings do not fit into a chart of so many cells."""
    return max(0, readings - (width - GUTTER))


def chart_lines(
    readings: Sequence[float], limits: Limits | None, marks: Sequence[Mark] = (), *, width: int = 78, height: int = 13
) -> tuple[str, ...]:
    """The newest readings that fit, left to right, higher up the more push; at least one reading.

    ● is a reading, X one that shows a signal; ─── the limits, ┄┄┄ the middle. No line is wider than width cells.
    """
    step = 2 if 2 * len(readings) <= width - GUTTER else 1
    gone = left_out(len(readings), width)
    shown = list(readings)[gone:]
    loud = {mark.place - gone for mark in marks}
    ends = [*shown, *([] if limits is None else [limits.low, limits.high])]
    low, high = min(ends), min(HIGHEST, max(ends))
    place_of = _rows(shown, limits, low, high, height)
    scale = [_figure(high - ((high - low) or 1.0) * place / (height - 1), place, height) for place in range(height)]
    rows = [[" "] * (step * len(shown)) for _ in range(height)]
    if limits is not None:
        for value, sign in ((limits.high, EDGE), (limits.low, EDGE), (limits.middle, MIDDLE)):
            rows[place_of(value)] = [sign] * len(rows[0])
            scale[place_of(value)] = str(round(min(HIGHEST, value)))
    for place, value in enumerate(shown):
        rows[place_of(value)][step * place] = LOUD if place in loud else POINT
    figures = (f"{'' if figure in scale[:place] else figure:>4} {RULE}" for place, figure in enumerate(scale))
    return tuple(figure + "".join(cells).rstrip() for figure, cells in zip(figures, rows, strict=True))


def _figure(value: float, place: int, height: int) -> str:
    """What stands at the left of a row: a figure at the ends and at each few rows, so that it does not crowd."""
    return str(round(value)) if place % FIGURE_EACH == 0 or place == height - 1 else ""


def _rows(
    shown: Sequence[float], limits: Limits | None, low: float, high: float, height: int
) -> Callable[[float], int]:
    """In which row a figure stands, the highest in row 0; what lies beyond a limit is never drawn on its line."""
    span = (high - low) or 1.0

    def plain(value: float) -> int:
        return round((high - min(high, value)) / span * (height - 1))

    if limits is None:
        return plain
    top = max(plain(limits.high), int(any(value > limits.high for value in shown)))
    foot = min(plain(limits.low), height - 1 - int(any(value < limits.low for value in shown)))

    def within(value: float) -> int:
        if value > limits.high:
            return min(plain(value), top - 1)
        if value < limits.low:
            return max(plain(value), foot + 1)
        return min(max(plain(value), top), foot)

    return within


def range_lines(readings: Sequence[float], limits: Limits | None, *, width: int = 78) -> tuple[str, ...]:
    """The steps from each reading to the next, below the chart of the readings; none for fewer than two readings.

    ─── is the largest step that a stable process makes, by the limits.
    """
    steps = [abs(after - before) for before, after in pairwise(readings)]
    if not steps:
        return ()
    most = None
    if limits is not None:
        usual = limits.most_range / D4
        most = Limits(middle=usual, low=0.0, high=limits.most_range, most_range=0.0)
    marks = [Mark(place, Signal.BEYOND) for place, step in enumerate(steps) if most is not None and step > most.high]
    # The first reading has no step before it: one column stays free, so that a step stands below its second reading.
    drawn = chart_lines(steps, most, marks, width=width - 1, height=RANGE_HEIGHT)
    foot = drawn[-1].replace(EDGE, " ")  # no step is smaller than none
    return tuple(f"{line[:GUTTER]} {line[GUTTER:]}".rstrip() for line in (*drawn[:-1], foot))


def chart_words(readings: int, limits: Limits | None, marks: Sequence[Mark], stable: int, *, width: int = 78) -> str:
    """A sentence below a chart of so many cells, for somebody who has never seen one; of what is drawn there."""
    what = f"Each {POINT} is a knife, the newest at the right; higher up it needs more push to cut. "
    if gone := left_out(readings, width):
        what += f"Only the newest {readings - gone} of {readings} are drawn. "
        marks = [mark for mark in marks if mark.place >= gone]
    if limits is None:
        least = f"{stable} knives are too few" if stable else "no stable period was set yet"
        return (
            f"{what}No limits: {least}. s below the chart of the bench sets when the work was good, ten knives or more."
        )
    inside = (
        f"Good work lies between {limits.low:.0f} and {limits.high:.0f} gf ({3 * EDGE}), "
        f"around {limits.middle:.0f} ({3 * MIDDLE}). "
    )
    beyond = sum(mark.signal is Signal.BEYOND for mark in marks)
    rows = sum(mark.signal is Signal.ROW for mark in marks)
    if not marks:
        return f"{what}{inside}Nothing here is more than chance."
    parts = [
        f"{beyond} beyond three sigma" if beyond else "",
        f"{rows} after eight in a row on one side" if rows else "",
    ]
    said = " and ".join(filter(None, parts))
    return f"{what}{inside}X: {said}. Look at belt, angle and tester."
