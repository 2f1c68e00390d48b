"""What was said and told, and what became of the boxes, read with fixed SQL."""

from datetime import date, datetime
from typing import Literal

from queueboard.records.cells import instant_or_none, whole, whole_or_none
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.slotted import dataclass
from queueboard.words import GoesBy


@dataclass(frozen=True, slots=True, kw_only=True)
class Became:
    """What became of a box that came in."""

    number: int
    goes_by: GoesBy
    carrier_days: int
    ready_at: datetime | None
    """When the last of its knives was ready; None when some are not yet, or are looked for."""
    gone_at: datetime | None
    """When the last of it was closed out, or a lost knife settled; None while something is here."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What was said of a box on a day."""

    day: date
    box_id: int
    due: datetime
    late_permille: int


_LOST_NO_MORE = """h.operation <> 'undo' AND instr(h.before, '"looking_for":1') > 0
AND instr(h.after, '"looking_for":0') > 0"""
READY = f"""SELECT k.box_id, max(CASE WHEN k.place IN ('ready', 'gone') AND k.looking_for = 0 THEN 0 ELSE 1 END),
max((SELECT h.at_us FROM history h
WHERE h.entity = 'knife' AND h.entity_id = k.id AND (instr(h.after, '"place":"ready"') > 0
AND coalesce(instr(h.before, '"place":"ready"') + instr(h.before, '"place":"gone"'), 0) = 0 OR {_LOST_NO_MORE})
ORDER BY h.id DESC LIMIT 1)), max((SELECT max(h.at_us) FROM history h
WHERE h.entity = 'knife' AND h.entity_id = k.id AND {_LOST_NO_MORE})) FROM knife k"""
"""Per box: whether a knife of it is not ready yet, when the last one came to be, when the last lost one was no more.

A knife that is looked for is not ready, however far it was: the box is whole again once it is found, or settled.
"""


def what_became(database: ShopDatabase, of: Literal["said", "promise"], since: date) -> dict[int, Became]:
    """What became of the boxes of which something was said, or told, for a day since then.

    Boxes that never came in, and those that closed without anything having been made ready, are left out.
    """
    boxes, first = f"(SELECT box_id FROM {of} WHERE day >= ?)", (since.isoformat(),)
    ready = {
        whole(row[0]): (bool(row[1]), whole_or_none(row[2]), whole_or_none(row[3]))
        for row in database.rows(f"{READY} WHERE k.box_id IN {boxes} GROUP BY k.box_id", first)
    }
    gone = {
        whole(row[0]): row[1]
        for row in database.rows(
            f"SELECT box_id, max(finished_us) FROM close_out WHERE box_id IN {boxes} GROUP BY box_id", first
        )
    }
    found: dict[int, Became] = {}
    for box_id, number, goes_by, carrier_days, closed_us in database.rows(
        "SELECT id, number, goes_by, carrier_days, closed_us FROM box "
        f"WHERE announced_us IS NULL AND id IN {boxes} ORDER BY id",
        first,
    ):
        some_not_ready, ready_us, whole_us = ready.get(whole(box_id), (True, None, None))
        gone_us = whole_or_none(gone.get(whole(box_id)))
        if closed_us is None or ready_us is not None:
            found[whole(box_id)] = Became(
                number=whole(number),
                goes_by=GoesBy(str(goes_by)),
                carrier_days=whole(carrier_days),
                ready_at=None if some_not_ready else instant_or_none(ready_us),
                gone_at=None if closed_us is None or gone_us is None else from_us(max(gone_us, whole_us or gone_us)),
            )
    return found


def first_and_last_told(database: ShopDatabase, first: date, last: date) -> dict[int, tuple[int, int]]:
    """The ids of the first and the last date told for each box to which a day between two, both included, was told."""
    rows = database.rows(
        "SELECT box_id, min(id), max(id) FROM promise WHERE box_id IN "
        "(SELECT box_id FROM promise WHERE day >= ? AND day <= ?) GROUP BY box_id",
        (first.isoformat(), last.isoformat()),
    )
    return {whole(row[0]): (whole(row[1]), whole(row[2])) for row in rows}


def said_since(database: ShopDatabase, since: date) -> tuple[Said, ...]:
    """What was said from a day on, oldest first."""
    rows = database.rows(
        "SELECT day, box_id, due_us, late_permille FROM said WHERE day >= ? ORDER BY day, due_us, box_id",
        (since.isoformat(),),
    )
    return tuple(
        Said(
            day=date.fromisoformat(str(row[0])),
            box_id=whole(row[1]),
            due=from_us(whole(row[2])),
            late_permille=whole(row[3]),
        )
        for row in rows
    )
