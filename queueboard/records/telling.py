"""History read back: actions, their lines, and what is undone."""

import json
from typing import NamedTuple

from queueboard.records.database import Cell, ShopDatabase
from queueboard.slotted import dataclass

Stored = dict[str, Cell]

_READ = json.JSONDecoder().raw_decode
"""For cells that our own program wrote: nothing stands around what is in them, and no time goes into looking for it."""


class Action(NamedTuple):
    """One action, as its first line tells it; a tuple, since a history of fifty makes fifty and lets them go again."""

    group_id: str
    operation: str
    about: dict[str, object]
    at_us: int
    by: str
    undoes: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One changed row of an action."""

    id: int
    entity: str
    entity_id: int
    before: Stored | None
    after: Stored | None
    """Of a row that was changed, what changed at least; of one that came or went, all."""


MOST_LINES = 500
"""Up to so many lines of history are quicker read on than what they changed is read anew."""

ACTIONS = "SELECT group_id, operation, about, at_us, by, undoes FROM history WHERE line = 0"


def actions_by(database: ShopDatabase, initials: str, limit: int) -> tuple[Action, ...]:
    """What one person did, newest first; initials are the same in capitals or not."""
    rows = database.rows(f"{ACTIONS} AND lower(by) = lower(?) ORDER BY id DESC LIMIT ?", (initials, limit))
    return tuple(map(_action, rows))


def action(database: ShopDatabase, group_id: str) -> Action | None:
    """One action by its group id."""
    rows = database.rows(f"{ACTIONS} AND group_id = ?", (group_id,))
    return _action(rows[0]) if rows else None


def actions_since(database: ShopDatabase, operation: str, line: int) -> tuple[Action, ...]:
    """What was done by one operation after a line of history, oldest first."""
    rows = database.rows(f"{ACTIONS} AND id > ? AND operation = ? ORDER BY id", (line, operation))
    return tuple(map(_action, rows))


def actions_on_box(database: ShopDatabase, box_id: int, limit: int) -> tuple[Action, ...]:
    """What was done to a box and its knives, newest first."""
    rows = database.rows(
        f"{ACTIONS} AND group_id IN (SELECT group_id FROM history WHERE (entity = 'box' AND entity_id = ?) "
        "OR (entity = 'knife' AND entity_id IN (SELECT id FROM knife WHERE box_id = ?)) OR (entity = 'moved_knife' "
        "AND entity_id IN (SELECT id FROM moved_knife WHERE from_box_id = ?)) OR (entity = 'reading' AND entity_id IN "
        "(SELECT r.id FROM reading r JOIN spot s ON s.id = r.spot_id JOIN knife k ON k.id = s.knife_id "
        "WHERE k.box_id = ?))) ORDER BY id DESC LIMIT ?",
        (box_id, box_id, box_id, box_id, limit),
    )
    return tuple(map(_action, rows))


def lines_backwards(database: ShopDatabase, group_id: str) -> tuple[Line, ...]:
    """The changed rows of an action, last first."""
    rows = database.rows(
        "SELECT id, entity, entity_id, before, after FROM history WHERE group_id = ? ORDER BY line DESC", (group_id,)
    )
    return tuple(
        Line(id=_int(r[0]), entity=str(r[1]), entity_id=_int(r[2]), before=_stored(r[3]), after=_stored(r[4]))
        for r in rows
    )


def left_by(database: ShopDatabase, line: Line) -> Stored | None:
    """The whole row as a line of history left it, put together from its life until then; None where it was taken away.

    A column that is newer than the row's last line is not in it.
    """
    left: Stored | None = None
    for (after,) in database.rows(
        "SELECT after FROM history WHERE entity = ? AND entity_id = ? AND id <= ? ORDER BY id",
        (line.entity, line.entity_id, line.id),
    ):
        now = _stored(after)
        left = None if now is None else {**(left or {}), **now}
    return left


def undone_groups(database: ShopDatabase) -> frozenset[str]:
    """The actions that are undone now: each undo that is not itself undone cancels its action."""
    undone: set[str] = set()
    # Without its index's name the whole history would be read through, to spare the sorting.
    for group, undoes in database.rows(
        "SELECT group_id, undoes FROM history INDEXED BY history_undoes WHERE undoes IS NOT NULL ORDER BY id DESC"
    ):
        if group not in undone:
            undone.add(str(undoes))
    return frozenset(undone)


def texts_before(database: ShopDatabase, history_id: int) -> dict[str, str]:
    """A person's own texts as they stood before one line, by field; those that were erased are not among them."""
    rows = database.rows(
        "SELECT field, text FROM personal WHERE history_id = ? AND side = 'before' AND text <> ''", (history_id,)
    )
    return {str(name): str(text) for name, text in rows}


def who_changed_last(database: ShopDatabase, entity: str, entity_id: int, after_id: int = 0) -> str | None:
    """Initials of who changed a row last, after a line of history."""
    rows = database.rows(
        "SELECT by FROM history WHERE entity = ? AND entity_id = ? AND id > ? ORDER BY id DESC LIMIT 1",
        (entity, entity_id, after_id),
    )
    return str(rows[0][0]) if rows else None


def newest_line(database: ShopDatabase) -> tuple[int, int] | None:
    """The id and the instant (microseconds UTC) of the newest line; None in an empty history."""
    rows = database.rows("SELECT id, at_us FROM history ORDER BY id DESC LIMIT 1")
    return (_int(rows[0][0]), _int(rows[0][1])) if rows else None


def _action(row: tuple[Cell, ...]) -> Action:
    group_id, operation, about, at_us, by, undoes = row
    return Action(
        str(group_id),
        str(operation),
        _READ(str(about))[0] if about else {},
        _int(at_us),
        str(by),
        None if undoes is None else str(undoes),
    )


def _stored(cell: Cell) -> Stored | None:
    stored: Stored | None = None if cell is None else _READ(str(cell))[0]
    return stored


def _int(cell: Cell) -> int:
    return int(cell or 0)


def lines_after(database: ShopDatabase, line: int) -> tuple[tuple[Cell, ...], ...] | None:
    """Entity, its id, before and after of the lines behind one, oldest first; None for more than MOST_LINES.

    Which of them are about an entity is not asked of the database, which would walk all lines of it for that.
    """
    lines = database.rows(
        "SELECT entity, entity_id, before, after FROM history WHERE id > ? ORDER BY id LIMIT ?", (line, MOST_LINES + 1)
    )
    return None if len(lines) > MOST_LINES else tuple(lines)
