"""Knives through the columns, and how far a ready box is packed."""

from collections.abc import Sequence

from queueboard.errors import RuleError, TypedError
from queueboard.records.tables import BoxRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.closing import only_counted
from queueboard.shop.operation import operation
from queueboard.shop.proving import prove
from queueboard.shop.sampling import ask_for_gauge
from queueboard.shop.trialling import draw_for
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column, Packing, WaitingFor


@operation()
def move_knives(writing: Writing, knives: Sequence[Knife], to: Column) -> None:
    """Move knives to a column, forward or back; all of them or none.

    From testing or ready back to the bench counts as rework. A knife that waits, is looked for or was declined is
    refused with its tag; a knife already there is left as it is, and one for which the gauge is asked goes no further
    than testing.
    """
    if to not in ON_BOARD:
        raise RuleError("A knife leaves the board only by its box's close-out.")
    if not knives:
        raise TypedError("Nothing is marked to move.")
    moving = [knife for knife in knives if knife.column is not to]
    came_from = {knife.column.value for knife in moving}
    writing.tell(
        tags=[knife.tag for knife in moving], was=came_from.pop() if len(came_from) == 1 else None, to=to.value
    )
    pass_on(writing, moving, to)


def pass_on(writing: Writing, knives: Sequence[Knife], to: Column) -> None:
    """Move knives with the tests that it stands for; those for which the gauge is asked stop at the test."""
    asked = [knife for knife in knives if to is Column.READY and knife.stops_at_test]
    rest = [knife for knife in knives if knife not in asked]
    if asked and not rest and all(knife.column is Column.TESTING for knife in asked):
        tags = ", ".join(knife.tag for knife in asked)
        raise RuleError(f"The gauge is asked for {tags}: E reads the edge, or lets it go by eye. Nothing moved.")
    prove(writing, rest, to)
    place_knives(writing, rest, to)
    place_knives(writing, asked, Column.TESTING)


def place_knives(writing: Writing, knives: Sequence[Knife], to: Column) -> None:
    """Put knives into a column, all of them or none; those that are there already are only looked at.

    Those that come to the bench for the first time are drawn for the belt trials that go on, and by the shop's rule the
    gauge is asked for some of them.
    """
    writing.read_rows(KnifeRow, {knife.id for knife in knives})
    if to is not Column.RECEIVED:
        _estimates_are_agreed(writing, knives)
    for knife in knives:
        _may_move(writing, knife)
        if knife.column is to:
            continue
        rework = to is Column.ON_BENCH and knife.column in (Column.TESTING, Column.READY)
        writing.change(
            KnifeRow,
            knife.id,
            knife.version,
            place=to.value,
            rework=knife.rework + int(rework),
            moved_us=writing.now_us,
            moved_by=writing.actor.initials,
        )
    if to is Column.ON_BENCH:
        coming = [knife for knife in knives if knife.column is Column.RECEIVED]
        draw_for(writing, coming)
        ask_for_gauge(writing, coming)


def _estimates_are_agreed(writing: Writing, knives: Sequence[Knife]) -> None:
    """Refuse to go on with a box whose customer is asked about the price: who says no would get it sharpened."""
    for box_id in sorted({knife.box_id for knife in knives}):
        box = rows.box_now(writing.database, box_id)
        if box.waiting_for is WaitingFor.ESTIMATE:
            raise RuleError(
                f"Box {box.number} waits for the yes to the estimate: w says that it goes on. Nothing moved."
            )


def _may_move(writing: Writing, knife: Knife) -> None:
    rows.fresh_knife(writing, knife)
    if knife.declined is not None:
        raise RuleError(f"{knife.tag} was declined ({knife.declined.value}); take that back before it moves.")
    if knife.waiting_for is not None:
        raise RuleError(f"{knife.tag} waits for {knife.waiting_for.value}; say that it goes on before it moves.")
    if knife.apart:
        raise RuleError(
            f"{knife.tag} is beyond the customer's note; it waits for the yes to the count: w takes the answer."
        )
    if knife.looking_for:
        raise RuleError(f"{knife.tag} is looked for; say that it was found before it moves.")


def _may_be_packed(box: Box, knives: Sequence[Knife]) -> None:
    """Refuse a box of which something is still to be done, or nothing is here."""
    here = [knife for knife in knives if knife.on_hand and not knife.looking_for]
    ready = sum(knife.can_leave for knife in here)
    if not here:
        first = "Say first that they were found." if box.opened else "Open it first."
        raise RuleError(f"Box {box.number} cannot be packed: none of its knives is here. {first}")
    if ready < len(here):
        raise RuleError(
            f"Box {box.number} cannot be packed: {ready} of its {len(here)} knives "
            f"{'is' if ready == 1 else 'are'} ready. Move the others to ready first."
        )


@operation()
def pack_box(writing: Writing, box: Box, packing: Packing | None) -> None:
    """Say how far a box is packed, once every knife that is here is ready. None takes it back.

    The label is not on as long as a close-out under way does not add up.
    """
    if packing is not None:
        _may_be_packed(box, rows.knives_of_box(writing.database, box.id))
    close = rows.close_out_now(writing.database, box.id)
    if packing is Packing.LABEL_ON and close is not None:
        only_counted(writing, close)
    writing.tell(
        number=box.number,
        was="" if box.packing is None else box.packing.value,
        to="" if packing is None else packing.value,
    )
    writing.change(BoxRow, box.id, box.version, packing=None if packing is None else packing.value)
