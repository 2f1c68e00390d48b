"""Belts that are up, the spares in the drawer and stable periods, read with fixed SQL."""

from datetime import datetime

from queueboard.records.cells import whole, whole_or_none
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.fitted import FittedBelt

_BELT = """SELECT id, row_version, process, label, CASE step WHEN '' THEN label ELSE step END, fitted_us, fitted_by,
was_belt_id FROM belt"""


def fitted_belts(database: ShopDatabase) -> tuple[FittedBelt, ...]:
    """The belts that are up, oldest first."""
    return tuple(
        FittedBelt(
            id=whole(row[0]),
            version=whole(row[1]),
            process=str(row[2]),
            label=str(row[3]),
            step=str(row[4]),
            fitted_at=from_us(whole(row[5])),
            fitted_by=str(row[6]),
            was_id=whole_or_none(row[7]),
        )
        for row in database.rows(f"{_BELT} WHERE removed_us IS NULL ORDER BY id")
    )


def spares_rows(database: ShopDatabase) -> dict[str, tuple[int, int]]:
    """The spares of each label that was ever counted: the id of the row, and how many."""
    rows = database.rows("SELECT label, id, spares FROM belt_spares ORDER BY label")
    return {str(row[0]): (whole(row[1]), whole(row[2])) for row in rows}


def stable_row(database: ShopDatabase, process: str) -> tuple[int, datetime, datetime] | None:
    """The stable period of a process: the id of its row, its first and last instant; None until one was set."""
    for row in database.rows("SELECT id, first_us, last_us FROM stable_period WHERE process = ?", (process,)):
        return whole(row[0]), from_us(whole(row[1])), from_us(whole(row[2]))
    return None
