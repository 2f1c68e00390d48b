"""What a close-out found missing: found again, or settled with the customer."""

from queueboard.clean import clean
from queueboard.errors import ReasonNeededError, RuleError
from queueboard.records.tables import KnifeRow, ThingRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.values.knife import Knife, Thing
from queueboard.words import Column, ThingState


@operation()
def found(writing: Writing, lost: Knife | Thing) -> None:
    """Say that a knife or a thing that was looked for is here again."""
    _looked_for(lost)
    if isinstance(lost, Knife):
        writing.tell(tags=[lost.tag])
        rows.fresh_knife(writing, lost)
        writing.change(
            KnifeRow, lost.id, lost.version, looking_for=0, moved_us=writing.now_us, moved_by=writing.actor.initials
        )
    else:
        writing.tell(number=rows.box_now(writing.database, lost.box_id).number)
        writing.change(ThingRow, lost.id, lost.version, state=ThingState.HERE.value)


@operation(undo_needs_reason=True)
def settle_lost(writing: Writing, lost: Knife | Thing, reason: str) -> None:
    """Stop looking: say how the loss was settled with the customer. It leaves the board."""
    text = clean(reason, limit=500, field="reason")
    if not text:
        raise ReasonNeededError("Say how it was settled with the customer.")
    writing.reason = text
    _looked_for(lost)
    if isinstance(lost, Knife):
        writing.tell(tags=[lost.tag])
        rows.fresh_knife(writing, lost)
        writing.change(KnifeRow, lost.id, lost.version, place=Column.GONE.value, looking_for=0, price_cents=0)
        rows.no_charges(writing, lost.id)
    else:
        writing.tell(number=rows.box_now(writing.database, lost.box_id).number)
        writing.change(ThingRow, lost.id, lost.version, state=ThingState.GONE.value)


def _looked_for(lost: Knife | Thing) -> None:
    """Refuse a knife or a thing that nobody misses."""
    if isinstance(lost, Knife) and not lost.looking_for:
        raise RuleError(f"{lost.tag} is not looked for.")
    if isinstance(lost, Thing) and lost.state is not ThingState.LOOKING:
        raise RuleError(f"{lost.name} is not looked for.")
