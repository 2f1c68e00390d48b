"""A part of a whole as cells: the one bar of the week, the month, the belts and the trials.

Its figures stand beside it in words. Full and free cells differ in ink, not in colour.
"""

FULL, FREE = "█", "░"


def filled(part: float, whole: float, cells: int) -> int:
    """How many of so many cells are full: the nearest number, but anything shows, and only all of it fills all.

    Not below 0, not above *cells*. One cell that must be both begun and not full is full.
    """
    if part <= 0 or cells <= 0:
        return 0
    if part >= whole:
        return cells
    return max(1, min(cells - 1, int(cells * part / whole + 0.5)))


def bar(part: float, whole: float, cells: int) -> str:
    """The full cells alone, for parts that are held against one another; *whole* takes them all."""
    return FULL * filled(part, whole, cells)


def measure(part: float, whole: float, cells: int) -> str:
    """Full cells and behind them what is free, always *cells* wide: how far a part has come of its whole."""
    full = filled(part, whole, cells)
    return FULL * full + FREE * (cells - full)
