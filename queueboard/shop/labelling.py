"""Return labels: typed from the label itself, bought, used, and what else can be done where one dies."""

from queueboard.errors import RuleError
from queueboard.records.tables import BoxRow, LabelRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.label_fields import printed
from queueboard.shop.operation import operation
from queueboard.shop.receiving import add_label
from queueboard.values.box import Box, ReturnLabel
from queueboard.values.new import NewLabel
from queueboard.words import GoesBy, LabelState


@operation()
def set_label(writing: Writing, box: Box, new: NewLabel) -> None:
    """Give a box a return label, or replace the one that is not used yet."""
    replace_label(writing, box, new)


def replace_label(writing: Writing, box: Box, new: NewLabel) -> None:
    """The same inside another operation."""
    if box.goes_by is not GoesBy.PARCEL:
        raise RuleError(f"Box {box.number} is picked up; it needs no return label. Correct how it goes back first.")
    writing.tell(number=box.number)
    rows.fresh_box(writing, box)
    writing.touch(BoxRow, box.id)
    old = rows.newest_label(writing.database, box.id)
    unused = old if old is not None and old.state is not LabelState.USED else None
    if unused is not None:
        writing.remove(LabelRow, unused.id)
    add_label(writing, box.id, new, unused)
    rows.compare_again(writing, box.id)
    if box.waiting_for is not None and box.waiting_for.value == "return label" and new.state is LabelState.HERE:
        writing.change(BoxRow, box.id, None, waiting_for=None, waiting_since_us=None)


@operation(undo_needs_reason=True)
def label_bought(writing: Writing, label: ReturnLabel, new: NewLabel) -> None:
    """Mark a return label bought, with what is printed on it; what it is and whose it stays."""
    if label.state is not LabelState.TO_BUY:
        raise RuleError(f"That label is {label.state.value} already.")
    writing.tell(number=rows.box_now(writing.database, label.box_id).number)
    writing.change(LabelRow, label.id, label.version, state=LabelState.HERE.value, **printed(writing, new, label))
    rows.compare_again(writing, label.box_id)
