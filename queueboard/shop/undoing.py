"""History as steps in words, and undo: a further action that puts back what an earlier one changed."""

from collections.abc import Mapping
from itertools import islice

from queueboard.clean import clean
from queueboard.errors import ChangedError, ReasonNeededError, RuleError
from queueboard.records import asking, telling
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.row import Row
from queueboard.records.tables import STATE, SettingsRow
from queueboard.records.writing import Values, Writing, masked
from queueboard.shop import (
    announcing,
    call_backs,
    charging,
    closing,
    correcting,
    counting,
    erasing,
    evening,
    fitting,
    found_knives,
    gauging,
    labelling,
    losing,
    market,
    money,
    moving,
    noting,
    numbers,
    offering,
    orders,
    promising,
    receiving,
    rehoming,
    restoring,
    running,
    saying,
    shelving,
    stable,
    swapping,
    testing,
    trialling,
    waiting,
    weighing,
    wobbling,
)
from queueboard.shop.opening import Shop
from queueboard.shop.operation import OPERATIONS, operation
from queueboard.values.step import About, Step

FAMILIES = (
    announcing,
    call_backs,
    charging,
    closing,
    correcting,
    counting,
    erasing,
    evening,
    fitting,
    found_knives,
    gauging,
    labelling,
    losing,
    market,
    money,
    moving,
    noting,
    numbers,
    offering,
    orders,
    promising,
    receiving,
    rehoming,
    restoring,
    running,
    saying,
    shelving,
    stable,
    swapping,
    testing,
    trialling,
    waiting,
    weighing,
    wobbling,
)
"""An operation is known only once its family is loaded, and history may hold any of them."""

LOOK_BACK = 400
"""How many of a person's newest actions are looked through for steps to undo."""


def steps(shop: Shop, initials: str, limit: int = 20) -> tuple[Step, ...]:
    """What this person did and has not undone, newest first."""
    with shop.reading() as database:
        done = telling.actions_by(database, initials, LOOK_BACK)
        undone = telling.undone_groups(database)
    standing = (a for a in done if a.group_id not in undone and a.undoes is None and OPERATIONS[a.operation].step)
    return tuple(map(_step, islice(standing, limit)))


def last_undo(shop: Shop, initials: str) -> Step | None:
    """A person's newest action when it is an undo: undoing that does the thing again. None otherwise."""
    with shop.reading() as database:
        newest = telling.actions_by(database, initials, 1)
    return _step(newest[0]) if newest and newest[0].undoes is not None else None


def box_history(shop: Shop, box_id: int, limit: int = 50) -> tuple[Step, ...]:
    """What was done to a box and its knives, newest first."""
    with shop.reading() as database:
        return tuple(map(_step, telling.actions_on_box(database, box_id, limit)))


@operation(step=False)
def undo(writing: Writing, group_id: str, reason: str = "") -> None:
    """Undo one action: put back what it changed, unless the same rows have changed since.

    It corrects the record, not the world: where a parcel, a payment or a told promise is concerned a reason is needed.
    Undoing an undo does the action again.
    """
    database = writing.database
    action = telling.action(database, group_id)
    if action is None:
        raise RuleError("That step is not in the history.")
    if group_id in telling.undone_groups(database):
        raise RuleError("That step is undone already.")
    if OPERATIONS[action.operation].for_good:
        raise RuleError("That was done for good and cannot be undone.")
    if not reason.strip() and _needs_reason(database, action):
        raise ReasonNeededError("A parcel, a payment or a told date is concerned: type why this is taken back.")
    writing.undoes = group_id
    writing.reason = clean(reason, limit=500, field="reason")
    writing.about = {**action.about, "undone": "" if action.operation == "undo" else action.operation}
    currency = numbers.currency_of(database)
    for line in telling.lines_backwards(database, group_id):
        _put_back(writing, line)
    if asking.settings_id(database) is None:
        raise RuleError("These are the shop's first settings; take in others instead of taking them back.")
    numbers.insist_on_currency(database, currency)


def _needs_reason(database: ShopDatabase, action: telling.Action) -> bool:
    """True where undoing an action asks for a reason; an undo asks as the action it undid."""
    undone = None if action.undoes is None else telling.action(database, action.undoes)
    kind = OPERATIONS.get((undone or action).operation)
    return kind is not None and kind.undo_needs_reason


def _put_back(writing: Writing, line: telling.Line) -> None:
    table = STATE[line.entity]
    if table is SettingsRow and (asking.settings_id(writing.database) or 0) > line.entity_id:
        raise ChangedError("Later numbers of the shop are in force; undo those first, or type this one anew.")
    current = writing.row(table, line.entity_id)
    if not _same(writing, table, current, telling.left_by(writing.database, line)):
        raise ChangedError(_since(writing, line))
    if line.before is None:
        writing.remove(table, line.entity_id)
        return
    full = _with_texts(writing.database, line.id, table, line.before)
    if current is None:
        writing.put_back(table, line.entity_id, full)
    else:
        changes = {name: cell for name, cell in full.items() if name not in ("id", "row_version")}
        writing.change(table, line.entity_id, None, **changes)


def _same(writing: Writing, table: type[Row], current: Values | None, after: Mapping[str, Cell] | None) -> bool:
    """True when the row still holds what the action left, whatever its version."""
    if current is None or after is None:
        return current is after
    now = masked(table, current, writing.salt)
    return all(now[name] == cell for name, cell in after.items() if name != "row_version")


def _with_texts(database: ShopDatabase, history_id: int, table: type[Row], before: Mapping[str, Cell]) -> Values:
    """The row before, with the person's texts put back in place of their digests."""
    texts = telling.texts_before(database, history_id)
    full = dict(before)
    for name in table.personal:
        if full.get(name) not in (None, ""):
            if name not in texts:
                raise RuleError("The words that stood there were erased since; this step cannot be undone.")
            full[name] = texts[name]
    return full


def _since(writing: Writing, line: telling.Line) -> str:
    by = telling.who_changed_last(writing.database, line.entity, line.entity_id, line.id)
    if by == writing.actor.initials:
        return f"A later step of yours changed this {line.entity.replace('_', '-')} too; undo that one first."
    who = f"{by} has changed it since" if by else "it has changed since"
    return f"This step cannot be undone: {who} ({line.entity.replace('_', '-')}). Undo the later step first."


def _step(action: telling.Action) -> Step:
    about = action.about
    tags = about.get("tags", ())
    undone = str(about.get("undone", ""))
    kind = OPERATIONS.get(undone or action.operation)
    return Step(
        group_id=action.group_id,
        operation=action.operation,
        about=About(
            tags=tuple(map(str, tags)) if isinstance(tags, list) else (),
            number=_number(about.get("number")),
            was=str(about.get("was", "")),
            to=str(about.get("to", "")),
            cents=_number(about.get("cents")),
            undone=undone,
        ),
        at=from_us(action.at_us),
        by=action.by,
        needs_reason=kind is not None and kind.undo_needs_reason,
    )


def _number(told: object) -> int | None:
    return told if isinstance(told, int) else None
