"""History as steps in words, and undo: a further action that puts back what an earlier one changed."""

import json

from queueboard.clean import clean
from queueboard.errors import ChangedError, ReasonNeededError, RuleError
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.tables import STATE, Row
from queueboard.records.writing import Values, Writing, masked
from queueboard.shop.opening import Shop
from queueboard.shop.operation import OPERATIONS, operation
from queueboard.values.step import About, Step

LOOK_BACK = 400
"""How many of a person's newest actions are looked through for steps to undo."""

GROUPS = "SELECT group_id, operation, about, at_us, by, undoes FROM history WHERE line = 0"


def steps(shop: Shop, initials: str, limit: int = 20) -> tuple[Step, ...]:
    """What this person did and has not undone, newest first."""
    with shop.reading() as database:
        groups = database.rows(f"{GROUPS} AND by = ? ORDER BY id DESC LIMIT ?", (initials, LOOK_BACK))
        undone = undone_groups(database)
    standing = (
        _step(row)
        for row in groups
        if row[0] not in undone and row[5] is None and OPERATIONS[str(row[1])].step
    )
    return tuple(step for _, step in zip(range(limit), standing, strict=False))


def last_undo(shop: Shop, initials: str) -> Step | None:
    """This person's newest action when it is an undo: undoing that does the thing again. None otherwise."""
    with shop.reading() as database:
        newest = database.rows(f"{GROUPS} AND by = ? ORDER BY id DESC LIMIT 1", (initials,))
    return _step(newest[0]) if newest and newest[0][5] is not None else None


def box_history(shop: Shop, box_id: int, limit: int = 50) -> tuple[Step, ...]:
    """What was done to a box and its knives, newest first."""
    with shop.reading() as database:
        rows = database.rows(
            f"{GROUPS} AND group_id IN (SELECT group_id FROM history WHERE (entity = 'box' AND entity_id = ?) "
            "OR (entity = 'knife' AND entity_id IN (SELECT id FROM knife WHERE box_id = ?))) "
            "ORDER BY id DESC LIMIT ?",
            (box_id, box_id, limit),
        )
    return tuple(map(_step, rows))


@operation(step=False)
def undo(writing: Writing, group_id: str, reason: str = "") -> None:
    """Undo one action: put back what it changed, unless the same rows have changed since.

    It corrects the record, not the world: where a parcel, a payment or a told promise is concerned a reason is needed.
    Undoing an undo does the action again.
    """
    database = writing.database
    lines = database.rows(
        "SELECT id, operation, about, undoes, entity, entity_id, before, after FROM history WHERE group_id = ? "
        "ORDER BY line DESC",
        (group_id,),
    )
    if not lines:
        raise RuleError("That step is not in the history.")
    if group_id in undone_groups(database):
        raise RuleError("That step is undone already.")
    name = str(lines[0][1])
    if not reason.strip() and needs_reason(database, name, lines[-1][3]):
        raise ReasonNeededError("A parcel, a payment or a told date is concerned: type why this is taken back.")
    writing.undoes = group_id
    writing.reason = clean(reason, limit=500, field="reason")
    writing.about = {**json.loads(str(lines[-1][2] or "{}")), "undone": name}
    if name == "undo":
        writing.about["undone"] = ""
    for line in lines:
        _put_back(writing, line)


def needs_reason(database: ShopDatabase, name: str, undoes: Cell) -> bool:
    """True where undoing the named operation asks for a reason; an undo asks as the operation it undid."""
    if name != "undo":
        return OPERATIONS[name].undo_needs_reason
    undone = database.one("SELECT operation FROM history WHERE group_id = ? AND line = 0", (undoes,))
    return str(undone) in OPERATIONS and OPERATIONS[str(undone)].undo_needs_reason


def undone_groups(database: ShopDatabase) -> frozenset[str]:
    """The actions that are undone now: each undo that is not itself undone cancels its action."""
    undone: set[str] = set()
    for group, undoes in database.rows(
        "SELECT group_id, undoes FROM history WHERE line = 0 AND undoes IS NOT NULL ORDER BY id DESC"
    ):
        if group not in undone:
            undone.add(str(undoes))
    return frozenset(undone)


def _put_back(writing: Writing, line: tuple[Cell, ...]) -> None:
    history_id, entity, row_id = int(line[0] or 0), str(line[4]), int(line[5] or 0)
    table = STATE[entity]
    before = _stored(line[6])
    after = _stored(line[7])
    current = writing.row(table, row_id)
    if not _same(writing, table, current, after):
        raise ChangedError(_since(writing, entity, row_id, history_id))
    if before is None:
        writing.remove(table, row_id)
        return
    full = _with_texts(writing.database, history_id, table, before)
    if current is None:
        writing.put_back(table, row_id, full)
    else:
        changes = {k: v for k, v in full.items() if k not in ("id", "row_version") and v != current[k]}
        writing.change(table, row_id, None, **changes)


def _stored(cell: Cell) -> Values | None:
    return None if cell is None else dict(json.loads(str(cell)))


def _same(writing: Writing, table: type[Row], current: Values | None, after: Values | None) -> bool:
    """True when the row still holds what the action left, whatever its version."""
    if current is None or after is None:
        return current is after
    now = masked(table, current, writing.salt)
    return all(now[name] == cell for name, cell in after.items() if name != "row_version")


def _with_texts(database: ShopDatabase, history_id: int, table: type[Row], before: Values) -> Values:
    """The row before, with the person's texts put back in place of their digests."""
    texts = {
        str(name): str(text)
        for name, text in database.rows(
            "SELECT field, text FROM personal WHERE history_id = ? AND side = 'before'", (history_id,)
        )
    }
    full = dict(before)
    for name in table.personal:
        if full.get(name) not in (None, ""):
            if name not in texts:
                raise RuleError("The words that stood there were erased since; this step cannot be undone.")
            full[name] = texts[name]
    return full


def _since(writing: Writing, entity: str, row_id: int, history_id: int) -> str:
    newest = writing.database.rows(
        "SELECT by, operation FROM history WHERE entity = ? AND entity_id = ? AND id > ? ORDER BY id DESC LIMIT 1",
        (entity, row_id, history_id),
    )
    who = f"{newest[0][0]} has changed it since" if newest else "it has changed since"
    return f"This step cannot be undone: {who} ({entity.replace('_', '-')}). Undo the later step first."


def _step(row: tuple[Cell, ...]) -> Step:
    about = json.loads(str(row[2] or "{}"))
    name = str(row[1])
    undone = str(about.get("undone", ""))
    kind = OPERATIONS.get(undone or name)
    return Step(
        group_id=str(row[0]),
        operation=name,
        about=About(
            tags=tuple(str(tag) for tag in about.get("tags", ())),
            number=about.get("number"),
            was=str(about.get("was", "")),
            to=str(about.get("to", "")),
            cents=about.get("cents"),
            undone=undone,
        ),
        at=from_us(int(row[3] or 0)),
        by=str(row[4]),
        needs_reason=kind is not None and kind.undo_needs_reason,
    )
