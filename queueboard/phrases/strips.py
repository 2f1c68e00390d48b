"""Sets of readings as strips of dots over one scale, in plain characters."""

from collections import Counter
from collections.abc import Sequence

INK = " .:#"
"""No reading at a place, one, two, and more."""
STRIP_WORDS = ". one knife, : two, # more; further right it needs more push to cut"
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
    drawn = (f"{name:<{gutter}} |{_strip(values, low, high, room)}" for name, values in shown)
    scale = f"{low:.0f}{'gf':^{room - len(f'{low:.0f}{high:.0f}')}}{high:.0f}"
    return (*drawn, f"{'':<{gutter}} |{scale}")


def _strip(values: Sequence[float], low: float, high: float, room: int) -> str:
    """One set; every reading has its place, the lowest of all sets the first cell and the highest the last."""
    span = (high - low) or 1.0
    count = Counter(round((value - low) / span * (room - 1)) for value in values)
    return "".join(INK[min(count[cell], len(INK) - 1)] for cell in range(room))
