"""What holds for every box when an action ends, whatever the action was. Undo is an action too.

What follows from the rest of the box is put right in the same transaction; what can not be is refused, so that the
whole action leaves no trace.
"""

from collections.abc import Iterator, Sequence

from queueboard.errors import RuleError
from queueboard.intake.adding_up import BoxSum, add_up
from queueboard.records import asking
from queueboard.records.moved import moves_of, off_of
from queueboard.records.reading import boxes_of, by_box, knives_of, labels_of, payments_of, things_of
from queueboard.records.tables import BoxRow, CloseOutRow, CustomerRow, TickRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.bench_laws import keep_bench
from queueboard.shop.run_laws import keep_runs
from queueboard.slotted import dataclass
from queueboard.values.box import Box, CloseOut
from queueboard.values.found import Off
from queueboard.values.knife import Knife, Thing
from queueboard.words import LabelState, Settling, ThingState, WaitingFor


@dataclass(frozen=True, slots=True, kw_only=True)
class _Touched:
    """A box as the action has left it."""

    box: Box
    knives: tuple[Knife, ...]
    things: tuple[Thing, ...]
    labels_to_use: int
    total: BoxSum
    paid_cents: int


def keep_laws(writing: Writing) -> None:
    """Put right, or refuse, every box the action has touched, every run under way, and what it did at the bench."""
    owners = set(writing.customers)
    for touched in _touched(writing):
        owners.add(touched.box.customer_id)
        _keep(writing, touched)
    for customer_id in sorted(owners):
        _whose(writing, customer_id)
    keep_runs(writing)
    keep_bench(writing)


def _touched(writing: Writing) -> Iterator[_Touched]:
    """All boxes that the action has touched; as many queries for forty of them as for one."""
    ids, database = sorted(writing.boxes), writing.database
    if not ids:
        return
    marks = ", ".join("?" * len(ids))
    inside = f"box_id IN ({marks})"
    knives = by_box(knives_of(database, f"k.{inside}", *ids), lambda knife: knife.box_id)
    things = by_box(things_of(database, inside, *ids), lambda thing: thing.box_id)
    labels = by_box(labels_of(database, inside, *ids), lambda label: label.box_id)
    payments = by_box(payments_of(database, inside, *ids), lambda payment: payment.box_id)
    moves, off = moves_of(database, marks, *ids), off_of(database, marks, *ids)
    for box in boxes_of(database, f"id IN ({marks}) ORDER BY id", *ids):
        own = knives.get(box.id, ())
        yield _Touched(
            box=box,
            knives=own,
            things=things.get(box.id, ()),
            labels_to_use=sum(label.state is not LabelState.USED for label in labels.get(box.id, ())),
            total=add_up(box, own, moves, off.get(box.id, Off())),
            paid_cents=sum(payment.in_cents for payment in payments.get(box.id, ())),
        )


def close_if_empty(writing: Writing, box_id: int) -> bool:
    """Close an open box when nothing of it is on hand or looked for; True when it closed."""
    if _anything_here(rows.knives_of_box(writing.database, box_id), rows.things_of_box(writing.database, box_id)):
        return False
    _close(writing, box_id)
    return True


def _close(writing: Writing, box_id: int) -> None:
    """Close a box; a close-out that was under way for it has nothing left to close, and is dropped."""
    close = rows.close_out_now(writing.database, box_id)
    if close is not None:
        drop_close_out(writing, close)
    writing.change(BoxRow, box_id, None, closed_us=writing.now_us, packing=None, this_next=0)


def drop_close_out(writing: Writing, close: CloseOut) -> None:
    """Take a close-out away with its ticks."""
    for tick_id in asking.ticks_of(writing.database, close.id):
        writing.remove(TickRow, tick_id)
    writing.remove(CloseOutRow, close.id)


def _keep(writing: Writing, touched: _Touched) -> None:
    box, knives, things = touched.box, touched.knives, touched.things
    if touched.labels_to_use > 1:
        raise RuleError(f"Box {box.number} has another return label by now; undo that first. Nothing was stored.")
    _adds_up(box, knives, touched.total)
    _no_more_back_than_paid(box, touched.paid_cents)
    if box.closed_at is not None:
        _closed_is_closed(writing, box, knives, things)
    elif box.opened:
        _something_in_it(writing, box, touched.total, knives, things)
        if box.packing is not None and any(k.on_hand and not k.can_leave and not k.looking_for for k in knives):
            writing.change(BoxRow, box.id, None, packing=None)


def _adds_up(box: Box, knives: Sequence[Knife], total: BoxSum) -> None:
    """No knife is lost, and none is there twice; while one is held apart, the box waits for the yes to its count."""
    if not total.adds_up:
        raise RuleError(
            f"Box {box.number} would not add up: {total.came} came in, and {total.is_where} are accounted for. "
            "Add the knife that is missing, or take off the one that was never there. Nothing was stored."
        )
    apart = any(knife.apart and knife.on_hand for knife in knives)
    if apart and box.closed_at is None and box.waiting_for is not WaitingFor.COUNT:
        raise RuleError(
            f"Box {box.number} waits for the yes to its count: say first what became of the knife beyond the note."
        )


def _no_more_back_than_paid(box: Box, paid_cents: int) -> None:
    if paid_cents < 0:
        raise RuleError(
            f"{-paid_cents / 100:.2f} more would be given back for box {box.number} than was paid: undo that first. "
            "Nothing was stored."
        )


def _whose(writing: Writing, customer_id: int) -> None:
    """No box stands under an entry that was put together with another: nobody would find it there."""
    customer = writing.row(CustomerRow, customer_id)
    if (
        customer is not None
        and customer["merged_into"] is not None
        and asking.boxes_of_customer(writing.database, customer_id)
    ):
        raise RuleError("A box would stand under a customer who was put together with another; undo that first.")


def _closed_is_closed(writing: Writing, box: Box, knives: Sequence[Knife], things: Sequence[Thing]) -> None:
    """Nothing stands in a closed box, where no screen shows it, no close-out goes on there, and what went paid is."""
    if _anything_here(knives, things) or rows.close_out_now(writing.database, box.id) is not None:
        raise RuleError(f"Box {box.number} is closed out; undo its close-out first. Nothing was stored.")
    went_as = asking.settled_as(writing.database, box.id)
    if went_as == Settling.PAID.value and rows.owed_cents(writing.database, box.id) > 0:
        raise RuleError(f"Box {box.number} went as paid with this; undo its close-out first. Nothing was stored.")


def _something_in_it(
    writing: Writing, box: Box, total: BoxSum, knives: Sequence[Knife], things: Sequence[Thing]
) -> None:
    if not knives and not things and not (total.moved_out or total.found):
        raise RuleError(f"That is all there is in box {box.number}: take back the receiving of the box instead.")
    if not _anything_here(knives, things):
        _close(writing, box.id)


def _anything_here(knives: Sequence[Knife], things: Sequence[Thing]) -> bool:
    return any(knife.on_hand for knife in knives) or any(thing.state is not ThingState.GONE for thing in things)
