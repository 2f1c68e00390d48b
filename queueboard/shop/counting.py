"""The answer to a count that differs from the customer's note: yes, do them; or the knife is not theirs."""

from queueboard.errors import RuleError
from queueboard.money.bill import totals
from queueboard.records.tables import BoxRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.found_knives import put_to_found
from queueboard.shop.operation import operation
from queueboard.shop.receiving import take_off
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import WaitingFor

AGREED = 2
"""What stands in knife.apart once the customer has said yes."""


@operation()
def yes_to_count(writing: Writing, box: Box) -> None:
    """The customer says yes to the knives beyond the note: they are done and charged like the others.

    Both counts stay on the box, and the knives stay known as those beyond the note, so that the total before the yes
    can still be told.
    """
    apart = _apart(writing, box)
    before = totals(rows.bill_of(writing.database, box.id)).total_cents
    writing.tell(number=box.number, tags=[knife.tag for knife in apart], cents=before)
    _goes_on(writing, box)
    for knife in apart:
        writing.change(KnifeRow, knife.id, knife.version, apart=AGREED)


@operation(undo_needs_reason=True)
def not_theirs(writing: Writing, box: Box, place: str) -> None:
    """The customer says that the knives beyond the note are not theirs: they go to the found knives.

    place: where they lie from now on, 1 to 200 signs. They leave the box, and go into no other.
    """
    apart = _apart(writing, box)
    writing.tell(number=box.number, tags=[knife.tag for knife in apart])
    _goes_on(writing, box)
    for knife in apart:
        put_to_found(writing, knife.kind, knife.length_mm, knife.mark, place, from_box_id=box.id)
        take_off(writing, knife)


def _apart(writing: Writing, box: Box) -> tuple[Knife, ...]:
    """The knives held apart; RuleError where there are none."""
    rows.fresh_box(writing, box)
    knives = rows.knives_of_box(writing.database, box.id)
    apart = tuple(knife for knife in knives if knife.apart and knife.on_hand)
    if not apart:
        raise RuleError(f"No knife of box {box.number} is held apart; there is nothing to answer.")
    return apart


def _goes_on(writing: Writing, box: Box) -> None:
    """The box waits for its count no longer."""
    waits = box.waiting_for is WaitingFor.COUNT
    changes = {"waiting_for": None, "waiting_since_us": None} if waits else {}
    writing.change(BoxRow, box.id, box.version, **changes)
