"""Dates told to customers, and what binds a box's turn."""

from queueboard.clean import clean
from queueboard.errors import TypedError
from queueboard.records.reading import promises_of
from queueboard.records.tables import BoxRow, PromiseRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.days import checked_day
from queueboard.shop.operation import operation
from queueboard.values.box import Box
from queueboard.values.new import NewPromise


@operation(undo_needs_reason=True)
def promise(writing: Writing, box: Box, new: NewPromise) -> None:
    """Tell the customer a date. A second one needs who was told and why; the first stays as it was told."""
    writing.tell(number=box.number, to=new.day.isoformat())
    rows.fresh_box(writing, box)
    writing.touch(BoxRow, box.id)
    first = not promises_of(writing.database, "box_id = ?", box.id)
    add_promise(writing, box.id, new, first=first)


def add_promise(writing: Writing, box_id: int, new: NewPromise, *, first: bool) -> None:
    """Store a promise that holds together."""
    if (new.at is None) is new.kind.has_time:
        raise TypedError(
            "A promise by a time needs the time of day." if new.at is None else "Only a promise by a time has a time."
        )
    told_to = clean(new.told_to, limit=300, field="name told")
    reason = clean(new.reason, limit=500, field="reason")
    if not first and not (told_to and reason):
        raise TypedError("A second date needs who was told and why; the first one stays in the history.")
    writing.insert(
        PromiseRow,
        box_id=box_id,
        kind=new.kind.value,
        day=checked_day(writing, new.day, "day told"),
        at=None if new.at is None else new.at.strftime("%H:%M"),
        told_to=told_to,
        told_us=writing.now_us,
        told_by=writing.actor.initials,
        reason=reason,
        reckoned=clean(new.reckoned, limit=300, field="sum"),
    )


@operation()
def set_flags(
    writing: Writing,
    box: Box,
    *,
    rush: bool | None = None,
    this_next: bool | None = None,
    never_slip: bool | None = None,
    complaint: bool | None = None,
) -> None:
    """Set or take back rush, this next, never slip this one, came with a complaint; None leaves a flag as it is."""
    typed = {"rush": rush, "this_next": this_next, "never_slip": never_slip, "complaint": complaint}
    changes = {name: int(value) for name, value in typed.items() if value is not None}
    writing.tell(
        number=box.number,
        to=", ".join(f"{name.replace('_', ' ')} {'on' if on else 'off'}" for name, on in changes.items()),
    )
    writing.change(BoxRow, box.id, box.version, **changes)
