"""Return labels: typed from the label itself, bought, used."""

from datetime import date

from queueboard.errors import RuleError
from queueboard.records.tables import BoxRow, LabelRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.days import checked_day
from queueboard.shop.operation import operation
from queueboard.shop.receiving import add_label
from queueboard.values.box import Box, ReturnLabel
from queueboard.values.new import NewLabel
from queueboard.words import GoesBy, LabelState


@operation()
def set_label(writing: Writing, box: Box, new: NewLabel) -> None:
    """Give a box a return label, or replace the one that is not used yet."""
    if box.goes_by is not GoesBy.PARCEL:
        raise RuleError(f"Box {box.number} is picked up; it needs no return label. Correct how it goes back first.")
    writing.tell(number=box.number)
    rows.fresh_box(writing, box)
    writing.touch(BoxRow, box.id)
    old = rows.newest_label(writing.database, box.id)
    if old is not None and old.state is not LabelState.USED:
        writing.remove(LabelRow, old.id)
    add_label(writing, box.id, new)
    rows.compare_again(writing, box.id)
    if box.waiting_for is not None and box.waiting_for.value == "return label" and new.state is LabelState.HERE:
        writing.change(BoxRow, box.id, None, waiting_for=None, waiting_since_us=None)


@operation(undo_needs_reason=True)
def label_bought(writing: Writing, label: ReturnLabel, expires_on: date | None = None, carrier: str = "") -> None:
    """Mark a return label bought, with the expiry and carrier typed from it."""
    if label.state is not LabelState.TO_BUY:
        raise RuleError(f"That label is {label.state.value} already.")
    writing.tell(number=rows.box_now(writing.database, label.box_id).number)
    changes: dict[str, str] = {"state": LabelState.HERE.value}
    if expires_on is not None:
        changes["expires_on"] = checked_day(writing, expires_on, "last day of the label")
    if carrier.strip():
        changes["carrier"] = rows.checked_thing(carrier)
    writing.change(LabelRow, label.id, label.version, **changes)
    rows.compare_again(writing, label.box_id)
