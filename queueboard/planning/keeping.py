"""A day list that was fixed: its order is kept, and only what must is changed in it."""

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from functools import partial
from itertools import takewhile

from queueboard.planning.batches import kept
from queueboard.planning.ranks import LAST_CHANCES, Piece, asked_by
from queueboard.planning.timing import Batch
from queueboard.values.plan import OrderChange
from queueboard.words import OrderWord, RunReason

Late = Callable[[Sequence[Batch]], frozenset[int]]
"""The ids of the boxes that batches in this order finish late."""


def kept_batches(
    fresh: Sequence[Batch], fixed: Sequence[Sequence[int]], late: Late, now: datetime
) -> tuple[tuple[Batch, ...], tuple[OrderChange, ...]]:
    """The order as it was fixed, and what had to change in it.

    What stands on the bench leads (a bench in use is never reordered, and what is not begun cannot come before it).
    Then the list as fixed with the new last chances in it, each ahead of the first that is due later; then what is new.
    A last chance is new when its knife is not in the list, when it was set next and does not lead, or when the list as
    fixed would miss it and a fresh plan does not.
    """
    pieces = {piece.knife.knife_id: piece for batch in fresh for piece in batch}
    begun = _ids(pieces.values(), lambda piece: piece.why is RunReason.BEGUN)
    listed = _listed(fixed, pieces, begun)
    in_list = frozenset(piece.knife.knife_id for batch in listed for piece in batch)
    leading = takewhile(lambda batch: all(_set_next(piece) for piece in batch), listed)
    lead = frozenset(piece.knife.knife_id for batch in leading for piece in batch)
    up = _ids(
        pieces.values(),
        lambda piece: piece.why in LAST_CHANCES and piece.knife.knife_id not in (lead if _set_next(piece) else in_list),
    )
    new = frozenset(pieces) - begun - in_list - up
    put = partial(_put_together, fresh, listed, begun=begun, lead=lead, new=new, now=now)
    order = put(up=up)
    missed = late(order) - late(fresh)
    saved = _ids(
        pieces.values(),
        lambda piece: piece.why in LAST_CHANCES and piece.box.box_id in missed and piece.knife.knife_id not in begun,
    )
    if saved - lead:
        up |= saved - lead
        order = put(up=up)
    return order, _changes(kept(fresh, up), OrderWord.LAST_CHANCE) + _changes(kept(fresh, new), OrderWord.NEW)


def _listed(fixed: Sequence[Sequence[int]], pieces: dict[int, Piece], begun: frozenset[int]) -> tuple[Batch, ...]:
    """The fixed runs with the knives that still have to begin; one whose process was changed since is new."""
    runs: list[Batch] = []
    for ids in fixed:
        left = [pieces[knife_id] for knife_id in ids if knife_id in pieces and knife_id not in begun]
        by_process = dict.fromkeys(piece.knife.process for piece in left)
        runs += [tuple(piece for piece in left if piece.knife.process == process) for process in by_process]
    return tuple(runs)


def _put_together(
    fresh: Sequence[Batch],
    listed: Sequence[Batch],
    *,
    begun: frozenset[int],
    lead: frozenset[int],
    up: frozenset[int],
    new: frozenset[int],
    now: datetime,
) -> tuple[Batch, ...]:
    rest = frozenset(piece.knife.knife_id for batch in listed for piece in batch) - lead - up
    middle = _put_between(kept(listed, rest), kept(fresh, up), now)
    return (*kept(fresh, begun), *kept(listed, lead), *middle, *kept(fresh, new))


def _put_between(listed: Sequence[Batch], up: Sequence[Batch], now: datetime) -> tuple[Batch, ...]:
    """The list in its order, with each batch that moves up ahead of the first that is due later."""
    together = list(listed)
    for batch in up:
        due = _due(batch, now)
        place = next((place for place, other in enumerate(together) if _due(other, now) > due), len(together))
        together.insert(place, batch)
    return tuple(together)


def _due(batch: Batch, now: datetime) -> tuple[bool, datetime]:
    """Sorts by when a batch is due, what was set next ahead of all."""
    return not any(map(_set_next, batch)), min(asked_by(piece, now) for piece in batch)


def _set_next(piece: Piece) -> bool:
    return piece.why is RunReason.THIS_NEXT


def _ids(pieces: Iterable[Piece], holds: Callable[[Piece], bool]) -> frozenset[int]:
    return frozenset(piece.knife.knife_id for piece in pieces if holds(piece))


def _changes(batches: Sequence[Batch], what: OrderWord) -> tuple[OrderChange, ...]:
    return tuple(OrderChange(tag=piece.knife.tag, what=what) for batch in batches for piece in batch)
