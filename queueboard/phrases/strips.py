"""Sets of readings as strips over one scale: the taller a cell, the more knives read so."""

from collections import Counter
from collections.abc import Sequence

from queueboard.phrases.bars import filled

INK = " ▁▂▃▄▅▆▇█"
"""No reading at a place, then more and more; the tallest is the place of any set with most."""
STRIP_WORDS = "the taller, the more knives; further right it needs more push to cut"
_WIDEST_NAME = 20


def strip_lines(sets: Sequence[tuple[str, Sequence[float]]], *, width: int) -> tuple[str, ...]:
    """Each named set on a line of its own, and the scale in gf below them; sets without readings are left out.

    width: cells of every line, at least 20 more than the longest name; names are cut at 20.
    """
    shown = [(name[:_WIDEST_NAME], values) for name, values in sets if values]
    if not shown:
        return ()
    gutter = max(len(name) for name, _ in shown)
    room = width - gutter - 2
    low, high = min(min(values) for _, values in shown), max(max(values) for _, values in shown)
    counts = [_counts(values, low, high, room) for _, values in shown]
    most = max(max(count.values()) for count in counts)
    drawn = (
        f"{name:<{gutter}} │{''.join(INK[filled(count[cell], most, len(INK) - 1)] for cell in range(room))}"
        for (name, _), count in zip(shown, counts, strict=True)
    )
    scale = f"{low:.0f}{'gf':^{room - len(f'{low:.0f}{high:.0f}')}}{high:.0f}"
    return (*drawn, f"{'':<{gutter}} │{scale}")


def _counts(values: Sequence[float], low: float, high: float, room: int) -> Counter[int]:
    """How many readings each cell holds, the lowest of all sets in the first cell and the highest in the last."""
    span = (high - low) or 1.0
    return Counter(round((value - low) / span * (room - 1)) for value in values)
