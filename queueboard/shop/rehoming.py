"""A knife that lies in the wrong box: moved into the right one, or found among another box's knives."""

from queueboard.clean import clean
from queueboard.errors import ReasonNeededError, RuleError
from queueboard.records.charge_table import ChargeRow
from queueboard.records.moved import moves_of
from queueboard.records.moved_tables import MovedKnifeRow
from queueboard.records.tables import BoxRow, KnifeRow, TickRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.values.box import Box
from queueboard.values.knife import Knife


@operation()
def move_to_box(writing: Writing, knife: Knife, to: Box, why: str) -> str:
    """Move a knife into another open box, with the reason; returns its new tag.

    It keeps its price as quoted, its add-ons and what was done to it. Coming back it gets its old tag again. What was
    counted of either box in a close-out under way is counted anew.
    """
    text = _reason(writing, why)
    rows.fresh_knife(writing, knife)
    rows.fresh_box(writing, to)
    rows.only_opened(to)
    _may_move(knife, to)
    number = _number_there(writing, knife, to.id)
    tag = f"{to.number}-{number}"
    writing.tell(tags=[knife.tag], was=str(knife.box_number), to=tag)
    writing.insert(
        MovedKnifeRow,
        knife_id=knife.id,
        from_box_id=knife.box_id,
        from_number=knife.number,
        to_box_id=to.id,
        why=text,
        moved_us=writing.now_us,
        moved_by=writing.actor.initials,
    )
    for charge_id in _charges(writing, knife.id):
        writing.change(ChargeRow, charge_id, None, box_id=to.id)
    writing.change(KnifeRow, knife.id, knife.version, box_id=to.id, number=number)
    for box_id in (knife.box_id, to.id):
        rows.count_again(writing, box_id)
    return tag


@operation()
def found_among(writing: Writing, knife: Knife, among: Box, why: str) -> None:
    """Say that a knife that was missing lay in another box's tray, with the reason; it is back with its own.

    What was counted of that other box, in a close-out or in its wrapping, is counted anew; in a close-out of its own
    box the knife is ticked.
    """
    _reason(writing, why)
    rows.fresh_knife(writing, knife)
    rows.fresh_box(writing, among)
    if among.id == knife.box_id:
        raise RuleError(f"{knife.tag} is of box {among.number} itself; say that it was found.")
    writing.tell(tags=[knife.tag], was=str(among.number))
    writing.change(
        KnifeRow, knife.id, knife.version, looking_for=0, moved_us=writing.now_us, moved_by=writing.actor.initials
    )
    close = rows.close_out_now(writing.database, knife.box_id)
    if close is not None and close.ticking and knife.can_leave and knife.id not in close.ticked:
        writing.insert(TickRow, close_out_id=close.id, knife_id=knife.id, thing_id=None)
    rows.count_again(writing, among.id)
    writing.touch(BoxRow, among.id)


def _reason(writing: Writing, why: str) -> str:
    text = clean(why, limit=500, field="reason")
    if not text:
        raise ReasonNeededError("Say why it goes there; a knife never goes silently from one box to another.")
    writing.reason = text
    return text


def _may_move(knife: Knife, to: Box) -> None:
    if knife.box_id == to.id:
        raise RuleError(f"{knife.tag} is in box {to.number} already.")
    if knife.apart:
        raise RuleError(f"{knife.tag} waits for the yes to the count; answer that first.")
    if knife.agreed:
        raise RuleError(f"{knife.tag} was agreed to beyond the note of box {knife.box_number}; it stays there.")
    if knife.looking_for:
        raise RuleError(f"{knife.tag} is looked for; say first that it was found.")


def _number_there(writing: Writing, knife: Knife, box_id: int) -> int:
    """Its old number where it comes back, else the next."""
    moves = moves_of(writing.database, "?", box_id)
    back = [m.from_number for m in moves if m.knife_id == knife.id and m.from_box_id == box_id]
    return back[-1] if back else rows.next_knife_number(writing.database, box_id)


def _charges(writing: Writing, knife_id: int) -> tuple[int, ...]:
    """Ids of the add-ons of a knife."""
    rows_found = writing.database.rows("SELECT id FROM charge WHERE knife_id = ? ORDER BY id", (knife_id,))
    return tuple(int(row[0] or 0) for row in rows_found)
