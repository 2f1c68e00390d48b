"""Knives that come back since they are not sharp: a new box, or one received already, linked to the one that had gone.

The shop's own rule says up to how many days after it left the work is done again for nothing.
"""

from collections.abc import Sequence
from datetime import datetime

from queueboard.clean import clean
from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.priced_words import ChargeSort
from queueboard.records.charge_table import ChargeRow
from queueboard.records.charges import charges_of_boxes
from queueboard.records.reading import knives_of
from queueboard.records.shelf import call_backs_of
from queueboard.records.shelf_tables import CallBackKnifeRow, CallBackRow
from queueboard.records.tables import BoxRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.shop.receiving import store_box
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.values.new import NewBox, NewKnife
from queueboard.values.shelf import CallBack, GoneSeen, NewCallBack
from queueboard.words import CameBy, Column, GoesBy

_OF_THE_WHOLE = {ChargeSort.MINIMUM, ChargeSort.SHIPPING}
"""What is not charged for a box of which all work is done again for nothing."""


def days_since(gone: GoneSeen, now: datetime) -> int:
    """Calendar days of the shop from the day a box left to today."""
    return max(0, (now.astimezone(gone.left_at.tzinfo).date() - gone.left_at.date()).days)


def free_by_rule(days: int, settings: Settings) -> bool:
    """True where the shop does the work again for nothing, so many days after it left."""
    return days <= settings.shelf.redo_days


def twins_of(knives: Sequence[Knife], old: Sequence[Knife]) -> tuple[tuple[Knife, Knife], ...]:
    """Each knife of a box with the one it was in the box before: kind, edge, length and mark alike, each once."""
    left, pairs = list(old), []
    for knife in knives:
        twin = next((one for one in left if _looks(one) == _looks(knife)), None)
        if twin is not None:
            left.remove(twin)
            pairs.append((knife, twin))
    return tuple(pairs)


def _looks(knife: Knife) -> tuple[object, ...]:
    return knife.kind, knife.edge, knife.length_mm, knife.mark.casefold()


@operation(undo_needs_reason=True)
def take_back(writing: Writing, new: NewCallBack) -> int:
    """Receive knives that came back as a new box, linked to the one that had gone; returns its number.

    Each knife has the kind, length, mark and wish that it had, and the gauge is asked for it. TypedError where the
    shop's days are over and it was not said whether it is free.
    """
    old = rows.box_now(writing.database, new.old_box_id)
    chosen = [k for k in rows.knives_of_box(writing.database, old.id) if k.id in new.old_knife_ids]
    if not chosen or len(chosen) < len(set(new.old_knife_ids)):
        raise TypedError(f"Say which knives of box {old.number} came back.")
    if any(knife.column is not Column.GONE for knife in chosen):
        raise RuleError(f"Not all of these knives of box {old.number} had left; move them back to the bench instead.")
    _not_here_already(writing, old, chosen)
    days = _days(writing, old)
    free = _free(writing, days, said=new.free)
    writing.tell(was=str(old.number))
    box = NewBox(
        customer_id=old.customer_id,
        came_by=CameBy.COUNTER if new.goes_by is GoesBy.PICK_UP else CameBy.MAIL,
        goes_by=new.goes_by,
        carrier_days=new.carrier_days,
        counted=len(chosen),
        knives=tuple(_again(knife, free=free) for knife in chosen),
        free=free,
    )
    number = store_box(writing, box, complaint=1)
    box_id = _newest(writing, number)
    made = rows.knives_of_box(writing.database, box_id)
    _link(writing, box_id, old, list(zip(made, chosen, strict=True)), free=free, days=days, why=new.why)
    return number


def _not_here_already(writing: Writing, old: Box, chosen: Sequence[Knife]) -> None:
    """Refuse knives that came back before and have not left again: they would be on the board twice."""
    wanted = {knife.id for knife in chosen}
    for before in call_backs_of(writing.database, "c.old_box_id = ?", old.id):
        again = rows.box_now(writing.database, before.box_id)
        if again.closed_at is None and wanted & {old_id for _, old_id in before.knives}:
            raise RuleError(f"Some of these knives of box {old.number} are here already, in box {again.number}.")


@operation(undo_needs_reason=True)
def link_call_back(
    writing: Writing, box: Box, old_box_id: int, pairs: Sequence[tuple[int, int]], why: str, *, free: bool | None = None
) -> None:
    """Say that an open box came back: link it to the one that had gone, and its knives to what they were.

    pairs are ids of knives, each with its old one; they may be empty where nobody can tell. Free means that the linked
    knives cost nothing, or all of them where none is linked.
    """
    rows.fresh_box(writing, box)
    rows.only_opened(box)
    old = rows.box_now(writing.database, old_box_id)
    if old.id == box.id or old.customer_id != box.customer_id:
        raise RuleError(f"Box {old.number} is not an earlier box of this customer.")
    writing.tell(number=box.number, was=str(old.number))
    days = _days(writing, old)
    is_free = _free(writing, days, said=free)
    known = {k.id: k for k in (*rows.knives_of_box(writing.database, box.id), *_of(writing, old.id))}
    if any(known.get(new) is None or known.get(was) is None for new, was in pairs):
        raise RuleError("Those knives are not in these two boxes any more; look again.")
    linked = [(known[new], known[was]) for new, was in pairs]
    writing.change(BoxRow, box.id, box.version, complaint=1)
    if is_free:
        _charge_nothing(writing, box, [knife for knife, _ in linked])
    _link(writing, box.id, old, linked, free=is_free, days=days, why=why)


def _of(writing: Writing, box_id: int) -> tuple[Knife, ...]:
    return knives_of(writing.database, "k.box_id = ? AND k.place = ?", box_id, Column.GONE.value)


def call_back_now(writing: Writing, box_id: int) -> CallBack | None:
    """The call-back that a box is."""
    return next(iter(call_backs_of(writing.database, "c.box_id = ?", box_id)), None)


def _days(writing: Writing, old: Box) -> int:
    if old.closed_at is None:
        raise RuleError(f"Box {old.number} is still here; what of it is not sharp goes back to the bench.")
    zone = settings_in(writing.database).zone
    left, now = old.closed_at.astimezone(zone), writing.actor.now.astimezone(zone)
    return max(0, (now.date() - left.date()).days)


def _free(writing: Writing, days: int, *, said: bool | None) -> bool:
    settings = settings_in(writing.database)
    if said is None and not free_by_rule(days, settings):
        raise TypedError(
            f"It left {days} days ago, and the shop works again for nothing up to {settings.shelf.redo_days} days: "
            "say whether it is free."
        )
    return said is not False


def _again(knife: Knife, *, free: bool) -> NewKnife:
    return NewKnife(
        kind=knife.kind,
        edge=knife.edge,
        condition=knife.condition,
        length_mm=knife.length_mm,
        mark=knife.mark,
        wish=knife.wish,
        price_cents=0 if free else None,
    )


def _newest(writing: Writing, number: int) -> int:
    return max(box_id for box_id in writing.boxes if rows.box_now(writing.database, box_id).number == number)


def _charge_nothing(writing: Writing, box: Box, linked: Sequence[Knife]) -> None:
    """Take price and add-ons off the knives that came back; of a box that is all of them also what is on the whole."""
    here = [knife for knife in rows.knives_of_box(writing.database, box.id) if knife.on_hand]
    ids = {knife.id for knife in linked or here}
    for knife in here:
        if knife.id in ids:
            writing.change(KnifeRow, knife.id, knife.version, price_cents=0)
            rows.no_charges(writing, knife.id)
    if all(knife.id in ids for knife in here):
        for charge in charges_of_boxes(writing.database, "?", box.id):
            if charge.sort in _OF_THE_WHOLE:
                writing.remove(ChargeRow, charge.id)


def _link(
    writing: Writing, box_id: int, old: Box, pairs: Sequence[tuple[Knife, Knife]], *, free: bool, days: int, why: str
) -> None:
    text = clean(why, limit=500, field="what is wrong")
    if not text:
        raise ReasonNeededError("Type what the customer says is wrong with the edge.")
    if call_back_now(writing, box_id) is not None:
        raise RuleError("This box is linked to an earlier one already; undo that first.")
    call_back_id = writing.insert(
        CallBackRow,
        box_id=box_id,
        old_box_id=old.id,
        free=int(free),
        days=days,
        why=text,
        noted_us=writing.now_us,
        noted_by=writing.actor.initials,
    )
    for knife, was in pairs:
        writing.insert(CallBackKnifeRow, call_back_id=call_back_id, knife_id=knife.id, old_knife_id=was.id)
