"""The close-out of a box, step by step; each step is stored the moment it is taken."""

from collections.abc import Mapping

from queueboard.clean import clean
from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.money.bill import totals
from queueboard.parcels.closing import check
from queueboard.records import asking
from queueboard.records.database import Cell
from queueboard.records.reading import customer_by_id
from queueboard.records.tables import BoxRow, CloseOutRow, KnifeRow, LabelRow, ThingRow, TickRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.days import today_of
from queueboard.shop.laws import close_if_empty, drop_close_out
from queueboard.shop.money import add_payment
from queueboard.shop.operation import operation
from queueboard.shop.receiving import add_label
from queueboard.values.box import Box, CloseCheck, CloseOut
from queueboard.values.gone import GoneBox
from queueboard.values.knife import Knife, Thing
from queueboard.values.new import NewLabel, NewPayment
from queueboard.words import CloseStep, Column, GoesBy, LabelOwner, LabelState, Settling, ThingState

_COUNTING = frozenset({CloseStep.COUNT, CloseStep.TICK, CloseStep.MISSING, CloseStep.COMES_WITH})
"""The steps in which it is not yet said what goes."""


@operation()
def begin_close_out(writing: Writing, box: Box) -> None:
    """Begin the close-out of a box; one that is under way is gone on with, and nothing changes."""
    if rows.close_out_now(writing.database, box.id) is not None:
        return
    rows.only_opened(box)
    on_hand = [knife for knife in rows.knives_of_box(writing.database, box.id) if knife.on_hand]
    things_only = not on_hand and any(
        thing.state is ThingState.HERE for thing in rows.things_of_box(writing.database, box.id)
    )
    if not things_only and not any(knife.can_leave for knife in on_hand):
        raise RuleError(f"Nothing of box {box.number} is ready to leave.")
    writing.tell(number=box.number)
    writing.insert(CloseOutRow, box_id=box.id, started_us=writing.now_us, **rows.NOT_COUNTED)


@operation()
def leave_close_out(writing: Writing, close: CloseOut) -> None:
    """Give a close-out up: its count and ticks are dropped, the box stays as it is."""
    writing.tell(number=rows.box_now(writing.database, close.box_id).number)
    _under_way(writing, close)
    drop_close_out(writing, close)


@operation()
def count(writing: Writing, close: CloseOut, counted: int) -> None:
    """Store the number counted blind, 0 to 999. A second count replaces the first and begins the ticking afresh."""
    if not 0 <= counted <= 999:
        raise TypedError(f"A count of {counted} is outside 0 to 999.")
    _under_way(writing, close)
    expected = sum(knife.can_leave for knife in rows.knives_of_box(writing.database, close.box_id))
    writing.tell(number=rows.box_now(writing.database, close.box_id).number)
    writing.change(
        CloseOutRow,
        close.id,
        close.version,
        **{**rows.NOT_COUNTED, "counted": counted, "ticking": int(counted != expected)},
    )
    for tick_id in asking.ticks_of(writing.database, close.id):
        writing.remove(TickRow, tick_id)


@operation()
def tick(writing: Writing, close: CloseOut, knife_id: int) -> None:
    """Tick a knife in hand. One that is not this box's, or not ready, is refused with where it stands."""
    knives = {knife.id: knife for knife in rows.knives_of_box(writing.database, close.box_id)}
    if knife_id not in knives:
        raise RuleError("That knife belongs to another box; put it aside and look up its tag.")
    knife = knives[knife_id]
    if knife.column is Column.GONE:
        raise RuleError(f"{knife.tag} has left already; undo that close-out first if it is in your hand.")
    if knife.looking_for:
        raise RuleError(f"{knife.tag} is looked for: say that it was found, then tick it.")
    if not knife.can_leave:
        raise RuleError(f"{knife.tag} stands in {knife.column.value}: move it to ready, or leave it out.")
    if knife_id in close.ticked:
        return
    writing.tell(tags=[knife.tag])
    writing.change(CloseOutRow, close.id, None, ticking=1, ticks_done=0)
    writing.insert(TickRow, close_out_id=close.id, knife_id=knife_id, thing_id=None)


@operation()
def untick(writing: Writing, close: CloseOut, knife_id: int) -> None:
    """Take a tick back."""
    tags = [k.tag for k in rows.knives_of_box(writing.database, close.box_id) if k.id == knife_id]
    writing.tell(tags=tags)
    for tick_id in asking.ticks_of(writing.database, close.id, "knife_id", knife_id):
        writing.remove(TickRow, tick_id)
    writing.change(CloseOutRow, close.id, None, ticks_done=0)


@operation()
def tick_thing(writing: Writing, close: CloseOut, thing_id: int) -> None:
    """Tick something that came with the box (sheath, roll); a second press takes the tick back."""
    if thing_id not in {thing.id for thing in rows.things_of_box(writing.database, close.box_id)}:
        raise RuleError("That did not come with this box.")
    writing.tell(number=rows.box_now(writing.database, close.box_id).number)
    ticks = asking.ticks_of(writing.database, close.id, "thing_id", thing_id)
    for tick_id in ticks:
        writing.remove(TickRow, tick_id)
    if not ticks:
        writing.insert(TickRow, close_out_id=close.id, knife_id=None, thing_id=thing_id)
    writing.change(CloseOutRow, close.id, None, things_done=0)


@operation()
def ticks_done(writing: Writing, close: CloseOut) -> None:
    """Say that every tag in hand is ticked; what is not ticked now counts as missing."""
    if not close.ticked:
        raise RuleError("No tag is ticked: there is nothing in hand to send off.")
    _set(writing, close, ticks_done=1)


@operation()
def things_done(writing: Writing, close: CloseOut) -> None:
    """Say that everything in hand that came with the box is ticked."""
    _set(writing, close, things_done=1)


@operation()
def why_missing(writing: Writing, close: CloseOut, reason: str) -> None:
    """Say why the box goes without what is missing; needed, and kept."""
    text = clean(reason, limit=500, field="reason")
    if not text:
        raise ReasonNeededError("Type why it goes without them, or go back and look; the missing stay looked for.")
    _set(writing, close, missing_reason=text)


@operation()
def confirm_names(writing: Writing, close: CloseOut) -> None:
    """Say that the name on the wrapping, on the job and on the label are the same."""
    only_counted(writing, close)
    _set(writing, close, names_ok=1)


@operation()
def confirm_label(writing: Writing, close: CloseOut, handed_to: str = "") -> None:
    """Say that the label is on and in date, or who picks the box up."""
    box = rows.box_now(writing.database, close.box_id)
    who = clean(handed_to, limit=300, field="name of the collector")
    if box.goes_by is GoesBy.PICK_UP and not any(sign.isalpha() for sign in who):
        raise TypedError(f"Type the name of who picks it up; {who!r} is none." if who else "Type who picks it up.")
    only_counted(writing, close)
    state = _check(writing, close)
    if state.step is CloseStep.LABEL and state.trouble:
        raise RuleError(state.trouble)
    _set(writing, close, label_ok=1, handed_to=who)


@operation(undo_needs_reason=True)
def settle(
    writing: Writing, close: CloseOut, settled: Settling, why: str = "", payment: NewPayment | None = None
) -> None:
    """Say how the money stands: paid, on account, or gone unpaid with the reason.

    payment is money that changes hands for it; it is stored together with the answer, or neither is.
    """
    text = clean(why, limit=500, field="reason")
    if settled is Settling.UNPAID and not text:
        raise ReasonNeededError("Gone unpaid, because ...: type the reason.")
    box = rows.box_now(writing.database, close.box_id)
    writing.tell(number=box.number)
    if payment is not None:
        add_payment(writing, box, payment)
    _set(writing, close, settled=settled.value, settled_why=text)


@operation(undo_needs_reason=True)
def send_off(writing: Writing, close: CloseOut) -> GoneBox:
    """Let the box, or the part in hand, go: the last step, in one transaction."""
    state = _check(writing, close)
    if state.step is not CloseStep.GO or state.trouble:
        raise RuleError(state.trouble or f"The close-out is not done yet: {state.step.value}.")
    database = writing.database
    box = rows.box_now(database, close.box_id)
    knives = {knife.id: knife for knife in rows.knives_of_box(database, box.id)}
    things = [thing for thing in rows.things_of_box(database, box.id) if thing.state is ThingState.HERE]
    writing.tell(number=box.number, tags=[knives[i].tag for i in state.going], cents=None)
    for knife_id in state.going:
        _knife_leaves(writing, knives[knife_id])
    for knife_id in state.missing:
        writing.change(KnifeRow, knife_id, None, looking_for=1)
    for thing in things:
        if thing.id in state.missing_things:
            writing.change(ThingRow, thing.id, None, state=ThingState.LOOKING.value)
        elif thing.id in close.ticked_things:
            writing.change(ThingRow, thing.id, None, state=ThingState.GONE.value)
    label = rows.newest_label(database, box.id)
    used = label is not None and box.goes_by is GoesBy.PARCEL and label.state is LabelState.HERE
    if used and label is not None:
        writing.change(LabelRow, label.id, None, state=LabelState.USED.value)
    settled = close.settled or Settling.PAID
    writing.change(CloseOutRow, close.id, close.version, settled=settled.value, finished_us=writing.now_us)
    writing.change(BoxRow, box.id, None, packing=None)
    closed = close_if_empty(writing, box.id)
    if not closed:
        writing.change(BoxRow, box.id, None, packed_g=None, parcel_mm="")  # the rest is another parcel
    if used and not closed:
        add_label(writing, box.id, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))
    return _summary(writing, close, state, knives, things, settled, closed=closed)


def only_counted(writing: Writing, close: CloseOut) -> None:
    """Refuse what comes behind the count as long as that does not add up and nobody has said why it goes so."""
    state = _check(writing, close)
    if state.step in _COUNTING:
        number = rows.box_now(writing.database, close.box_id).number
        raise RuleError(
            f"What is in hand of box {number} does not add up yet. Find what is missing, or type why it goes without; "
            "names and label come after that."
        )


def _set(writing: Writing, close: CloseOut, **values: Cell) -> None:
    writing.tell(number=rows.box_now(writing.database, close.box_id).number)
    writing.change(CloseOutRow, close.id, close.version, **values)


def _under_way(writing: Writing, close: CloseOut) -> CloseOut:
    """The close-out as it is stored now; refused when it is not under way any more."""
    now = rows.close_out_now(writing.database, close.box_id)
    if now is None or now.id != close.id:
        raise RuleError("This close-out is not under way any more; look again.")
    return now


def _check(writing: Writing, close: CloseOut) -> CloseCheck:
    """Where the close-out stands as it is stored now."""
    database, box = writing.database, rows.box_now(writing.database, close.box_id)
    return check(
        _under_way(writing, close),
        rows.knives_of_box(database, box.id),
        rows.things_of_box(database, box.id),
        box.goes_by,
        rows.newest_label(database, box.id),
        rows.bill_of(database, box.id),
        today_of(writing),
    )


def _knife_leaves(writing: Writing, knife: Knife) -> None:
    writing.change(
        KnifeRow,
        knife.id,
        None,
        place=Column.GONE.value,
        moved_us=writing.now_us,
        moved_by=writing.actor.initials,
    )


def _summary(
    writing: Writing,
    close: CloseOut,
    state: CloseCheck,
    knives: Mapping[int, Knife],
    things: list[Thing],
    settled: Settling,
    *,
    closed: bool,
) -> GoneBox:
    database = writing.database
    box = rows.box_now(database, close.box_id)
    customer = customer_by_id(database, box.customer_id)
    if customer is None:
        raise KeyError(box.customer_id)  # a box of a merged customer was given to the other one
    return GoneBox(
        box=box,
        customer=customer,
        knives=tuple(knives[i] for i in state.going),
        things=tuple(t for t in things if t.id in close.ticked_things),
        missing=tuple(knives[i] for i in state.missing),
        missing_things=tuple(t for t in things if t.id in state.missing_things),
        missing_reason=close.missing_reason,
        staying=tuple(knives[i] for i in state.staying),
        totals=totals(rows.bill_of(database, box.id).without(state.missing)),
        settled=settled,
        settled_why=close.settled_why,
        handed_to=close.handed_to,
        at=writing.actor.now,
        by=writing.actor.initials,
        closed=closed,
    )
