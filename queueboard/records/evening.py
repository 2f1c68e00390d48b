"""What was written down in the evenings, and what was done between two instants, read with fixed SQL."""

from datetime import date
from typing import Literal

from queueboard.figures.evening import Placed
from queueboard.records.cells import instant_or_none, whole
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.reading import knives_of
from queueboard.records.telling import undone_groups
from queueboard.values.evening import ClosedDay, DustTray, TillCount
from queueboard.words import PayWay


def till_counts(database: ShopDatabase, day: date) -> tuple[TillCount, ...]:
    """What was counted on a day."""
    rows = database.rows(
        "SELECT id, row_version, way, should_cents, counted_cents, counted_us, counted_by FROM till_count "
        "WHERE day = ? ORDER BY id",
        (day.isoformat(),),
    )
    return tuple(
        TillCount(
            id=whole(row[0]),
            version=whole(row[1]),
            way=PayWay(str(row[2])),
            should_cents=whole(row[3]),
            counted_cents=whole(row[4]),
            at=from_us(whole(row[5])),
            by=str(row[6]),
        )
        for row in rows
    )


def dust_tray(database: ShopDatabase, day: date) -> DustTray | None:
    """The last time that the tray was emptied on a day; None when it was not."""
    rows = database.rows(
        "SELECT first.id, first.looked_us, first.looked_by, again.looked_us, coalesce(again.looked_by, '') "
        "FROM dust_look first LEFT JOIN dust_look again ON again.after_id = first.id "
        "WHERE first.day = ? AND first.after_id IS NULL ORDER BY first.id DESC LIMIT 1",
        (day.isoformat(),),
    )
    return next(
        (
            DustTray(
                id=whole(row[0]),
                day=day,
                at=from_us(whole(row[1])),
                by=str(row[2]),
                again_at=instant_or_none(row[3]),
                again_by=str(row[4]),
            )
            for row in rows
        ),
        None,
    )


def closed_day(database: ShopDatabase, day: date) -> ClosedDay | None:
    """A day as it was closed; None while it is open."""
    rows = database.rows(
        "SELECT id, not_done, note, closed_us, closed_by FROM day_close WHERE day = ?", (day.isoformat(),)
    )
    return next(
        (
            ClosedDay(
                id=whole(row[0]),
                day=day,
                not_done=whole(row[1]),
                note=str(row[2]),
                at=from_us(whole(row[3])),
                by=str(row[4]),
            )
            for row in rows
        ),
        None,
    )


def ever_closed(database: ShopDatabase, before: date) -> bool:
    """True when some day before this one was closed: the shop closes its days."""
    return database.one("SELECT 1 FROM day_close WHERE day < ? LIMIT 1", (before.isoformat(),)) is not None


def anything_done(database: ShopDatabase, first_us: int, end_us: int) -> bool:
    """True when something was written down from the first instant on and before the second."""
    sql = (
        "SELECT 1 FROM history INDEXED BY history_work "
        "WHERE entity IN ('box', 'knife') AND entity = 'knife' AND at_us >= ? AND at_us < ? LIMIT 1"
    )
    return database.one(sql, (first_us, end_us)) is not None


CAME = {
    "ready": 'instr(h.after, \'"place":"ready"\') > 0 AND instr(h.after, \'"declined":null\') > 0 '
    'AND coalesce(instr(h.before, \'"place":"ready"\') + instr(h.before, \'"place":"gone"\'), 0) = 0',
    "gone": 'instr(h.after, \'"place":"gone"\') > 0 AND coalesce(instr(h.before, \'"place":"gone"\'), 0) = 0',
}
"""A line of history in which a knife came to a place. What comes back from gone was ready before, and a declined knife
is laid there without having been worked."""


def placed_between(
    database: ShopDatabase, place: Literal["ready", "gone"], first_us: int, end_us: int
) -> tuple[Placed, ...]:
    """The knives that came to ready, or left, from the first instant on and before the second, oldest first.

    What was undone is left out, and so are knives that were struck since.
    """
    undone = undone_groups(database)
    lines = [
        (whole(row[0]), whole(row[1]))
        for row in database.rows(
            "SELECT h.at_us, h.entity_id, h.group_id FROM history h INDEXED BY history_work "
            "WHERE h.entity IN ('box', 'knife') AND h.entity = 'knife' AND h.at_us >= ? AND h.at_us < ? "
            f"AND h.operation <> 'undo' AND {CAME[place]} ORDER BY h.id",
            (first_us, end_us),
        )
        if str(row[2]) not in undone
    ]
    knives = {
        knife.id: knife
        for knife in knives_of(
            database,
            "k.id IN (SELECT h.entity_id FROM history h INDEXED BY history_work WHERE h.entity IN ('box', 'knife') "
            f"AND h.entity = 'knife' AND h.at_us >= ? AND h.at_us < ? AND {CAME[place]})",
            first_us,
            end_us,
        )
    }
    return tuple(Placed(at=from_us(at_us), knife=knives[knife_id]) for at_us, knife_id in lines if knife_id in knives)
