"""Where knives stood at an instant, read out of history."""

from queueboard.records.database import ShopDatabase
from queueboard.records.reading import knives_of
from queueboard.values.knife import Knife

THEN = """coalesce((SELECT instr(h.after, '"place":"on bench"') + instr(h.after, '"place":"testing"') FROM history h
WHERE h.entity = 'knife' AND h.entity_id = k.id AND h.at_us <= ? ORDER BY h.id DESC LIMIT 1), 0) > 0"""


def at_work_beside(database: ShopDatabase, knife: Knife, at_us: int) -> tuple[Knife, ...]:
    """The knives of its kind in other open boxes that were on the bench or at the test at an instant."""
    return knives_of(
        database, f"k.kind = ? AND k.box_id <> ? AND b.closed_us IS NULL AND {THEN}", knife.kind, knife.box_id, at_us
    )
