"""Readings as a chart in plain characters, and what it shows in a sentence."""

from collections.abc import Sequence

from queueboard.edges.drift import Limits, Mark, Signal

GUTTER = 6
"""Cells for the figures at the left, and the rule behind them."""
POINT, LOUD, EDGE, MIDDLE = "o", "X", "-", "."


def chart_lines(
    readings: Sequence[float], limits: Limits | None, marks: Sequence[Mark] = (), *, width: int = 78, height: int = 13
) -> tuple[str, ...]:
    """The newest readings that fit, left to right, higher up the more push; at least one reading.

    o is a reading, X one that shows a signal; --- the limits, ... the middle. No line is wider than width cells.
    """
    room = width - GUTTER
    step = 2 if 2 * len(readings) <= room else 1
    shown = list(readings)[-(room // step) :]
    left_out = len(readings) - len(shown)
    loud = {mark.place - left_out for mark in marks}
    ends = [*shown, *([] if limits is None else [limits.low, limits.high])]
    low, high = min(ends), max(ends)
    span = (high - low) or 1.0
    rows = [[" "] * (step * len(shown)) for _ in range(height)]

    def row(value: float) -> int:
        return round((high - value) / span * (height - 1))

    if limits is not None:
        for value, sign in ((limits.high, EDGE), (limits.low, EDGE), (limits.middle, MIDDLE)):
            rows[row(value)] = [sign] * len(rows[0])
    for place, value in enumerate(shown):
        rows[row(value)][step * place] = LOUD if place in loud else POINT
    figures = (f"{round(high - span * place / (height - 1)):>4} |" for place in range(height))
    return tuple(figure + "".join(cells).rstrip() for figure, cells in zip(figures, rows, strict=True))


def chart_words(readings: int, limits: Limits | None, marks: Sequence[Mark], stable: int) -> str:
    """A sentence below the chart, for somebody who has never seen one."""
    what = "Each o is a knife, the newest at the right; higher up it needs more push to cut. "
    if limits is None:
        least = f"{stable} knives are too few" if stable else "no stable period was set yet"
        return f"{what}No limits: {least}. s sets the period in which the work was good, ten knives or more."
    inside = (
        f"Good work lies between {limits.low:.0f} and {limits.high:.0f} gf (---), around {limits.middle:.0f} (...). "
    )
    beyond = sum(mark.signal is Signal.BEYOND for mark in marks)
    rows = sum(mark.signal is Signal.ROW for mark in marks)
    if not marks:
        return f"{what}{inside}Nothing here is more than chance, of {readings}."
    parts = [
        f"{beyond} beyond three sigma" if beyond else "",
        f"{rows} after eight in a row on one side" if rows else "",
    ]
    said = " and ".join(filter(None, parts))
    return f"{what}{inside}X: {said}. Look at belt, angle and tester."
