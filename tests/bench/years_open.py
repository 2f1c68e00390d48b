"""More open boxes in a shop file: those that are open, again and again, each a little earlier in and later due."""

from datetime import timedelta
from pathlib import Path

from tests.bench.years import Shift, begin, copy_box, filling, flush
from tests.bench.years_patterns import Pattern, patterns

HIGHEST_NUMBER = 1000
"""The copies' numbers begin behind it, where neither the invented shop nor its finished copies have any."""


def open_more(path: Path, knives: int) -> None:
    """Copy the open boxes of a file until so many knives are on hand; nothing where they are already.

    Each round of copies was received a day before the last one and is due a week behind it, so that a full shop has
    work ahead as well as late boxes.
    """
    with filling(path) as connection:
        found = [pattern for pattern in patterns(connection, "closed_us IS NULL") if _on_hand(pattern)]
        written, columns = begin(connection)
        there = sum(map(_on_hand, found))
        first = max(HIGHEST_NUMBER, *(pattern.number for pattern in found)) + 1
        copy = 0
        while there < knives:
            way, pattern = copy // len(found) + 1, found[copy % len(found)]
            by, days_by = -timedelta(days=way), timedelta(weeks=way)
            shift = Shift.of(written, pattern, None, first + copy, by, days_by)
            copy_box(written, columns, pattern, shift)
            there += _on_hand(pattern)
            copy += 1
        flush(connection, written, columns)


def _on_hand(pattern: Pattern) -> int:
    """How many knives of a box are in the shop."""
    return sum(row["place"] != "gone" for table, row in pattern.rows if table == "knife")
