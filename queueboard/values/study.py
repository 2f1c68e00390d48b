"""A study of the tester."""

from datetime import datetime

from queueboard.slotted import dataclass

TIMES = 3
"""Readings of each knife's spot."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """Repeated readings of one marked spot on each of a few finished knives."""

    id: int
    version: int
    changed: str
    """What was changed about the tester before it; empty when nothing was."""
    knives: int
    """How many it asks for."""
    begun_at: datetime
    begun_by: str
    finished_at: datetime | None
    readings_gf: tuple[tuple[int, ...], ...]
    """By knife, in the order of reading, in grams-force; only knives that were read."""
    reading_ids: tuple[int, ...] = ()
    """Ids of the rows of all readings."""
