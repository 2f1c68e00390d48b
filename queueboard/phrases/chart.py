"""Readings as a chart in plain characters, and what it shows in a sentence."""

from collections.abc import Sequence

from queueboard.edges.drift import Limits, Mark, Signal

GUTTER = 6
"""Cells for the figures at the left, and the rule behind them."""
HIGHEST = 9999
"""The highest figure at the left; no tester shows more."""
POINT, LOUD, EDGE, MIDDLE = "o", "X", "-", "."


def left_out(readings: int, width: int) -> int:
    """How many of the oldest readings do not fit into a chart of so many cells."""
    return max(0, readings - (width - GUTTER))


def chart_lines(
    readings: Sequence[float], limits: Limits | None, marks: Sequence[Mark] = (), *, width: int = 78, height: int = 13
) -> tuple[str, ...]:
    """The newest readings that fit, left to right, higher up the more push; at least one reading.

    o is a reading, X one that shows a signal; --- the limits, ... the middle. No line is wider than width cells.
    """
    step = 2 if 2 * len(readings) <= width - GUTTER else 1
    gone = left_out(len(readings), width)
    shown = list(readings)[gone:]
    loud = {mark.place - gone for mark in marks}
    ends = [*shown, *([] if limits is None else [limits.low, limits.high])]
    low, high = min(ends), min(HIGHEST, max(ends))
    span = (high - low) or 1.0
    rows = [[" "] * (step * len(shown)) for _ in range(height)]

    def row(value: float) -> int:
        return round((high - min(high, value)) / span * (height - 1))

    if limits is not None:
        for value, sign in ((limits.high, EDGE), (limits.low, EDGE), (limits.middle, MIDDLE)):
            rows[row(value)] = [sign] * len(rows[0])
    for place, value in enumerate(shown):
        rows[row(value)][step * place] = LOUD if place in loud else POINT
    scale = [str(round(high - span * place / (height - 1))) for place in range(height)]
    figures = (f"{'' if place and scale[place - 1] == figure else figure:>4} |" for place, figure in enumerate(scale))
    return tuple(figure + "".join(cells).rstrip() for figure, cells in zip(figures, rows, strict=True))


def chart_words(readings: int, limits: Limits | None, marks: Sequence[Mark], stable: int, *, width: int = 78) -> str:
    """A sentence below a chart of so many cells, for somebody who has never seen one; of what is drawn there."""
    what = "Each o is a knife, the newest at the right; higher up it needs more push to cut. "
    if gone := left_out(readings, width):
        what += f"Only the newest {readings - gone} of {readings} are drawn. "
        marks = [mark for mark in marks if mark.place >= gone]
    if limits is None:
        least = f"{stable} knives are too few" if stable else "no stable period was set yet"
        return (
            f"{what}No limits: {least}. s below the chart of the bench sets when the work was good, ten knives or more."
        )
    inside = (
        f"Good work lies between {limits.low:.0f} and {limits.high:.0f} gf (---), around {limits.middle:.0f} (...). "
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
