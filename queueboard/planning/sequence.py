"""The order of the knives at the bench: fresh from their ranks, or as a day list was fixed."""

from collections.abc import Iterable
from itertools import groupby, takewhile

from queueboard.planning.ranks import LAST_CHANCES, Piece
from queueboard.values.plan import OrderChange
from queueboard.words import OrderWord, RunReason


def fresh_order(pieces: Iterable[Piece]) -> tuple[Piece, ...]:
    """By rank, then by what is due together, and inside that grouped by process.

    A group starts with the process the group before it ended with (that saves a set-up), then goes on with the
    process of its earliest ship-by.
    """
    ordered: list[Piece] = []
    by_group = sorted(pieces, key=lambda p: (p.group, p.place))
    for _, group in groupby(by_group, key=lambda p: p.group):
        ordered.extend(_by_process(tuple(group), after=ordered[-1].knife.process if ordered else None))
    return tuple(ordered)


def _by_process(group: tuple[Piece, ...], after: str | None) -> tuple[Piece, ...]:
    """The pieces of one group, each process together; group is sorted by place and stays so inside a process."""
    first_seen = list(dict.fromkeys(piece.knife.process for piece in group))
    turn = {process: place for place, process in enumerate(sorted(first_seen, key=lambda name: name != after))}
    return tuple(sorted(group, key=lambda p: turn[p.knife.process]))


def kept_order(
    pieces: Iterable[Piece], fixed_order: tuple[int, ...]
) -> tuple[tuple[Piece, ...], tuple[OrderChange, ...]]:
    """The order as it was fixed, and what had to change in it.

    What stands on the bench leads (a bench in use is never reordered, and what is not begun cannot come before it).
    Then the list as fixed with the new last chances in it, each ahead of all that has a weaker reason, then what is
    new. A last chance is new when its knife is not in the list, or when it stands there behind a knife that is none: a
    fixed list begins with its last chances.
    """
    fresh = fresh_order(pieces)
    listed_at = {knife_id: place for place, knife_id in enumerate(fixed_order)}
    listed = sorted((p for p in fresh if p.knife.knife_id in listed_at), key=lambda p: listed_at[p.knife.knife_id])
    begun = tuple(p for p in listed if _begun(p)) + tuple(
        p for p in fresh if _begun(p) and p.knife.knife_id not in listed_at
    )
    waiting_turn = tuple(p for p in listed if not _begun(p))
    leading = tuple(takewhile(_last_chance, waiting_turn))
    leading_ids = {p.knife.knife_id for p in leading}
    moved_up = tuple(p for p in fresh if _last_chance(p) and p.knife.knife_id not in leading_ids)
    kept = tuple(p for p in waiting_turn if not _last_chance(p))
    new = tuple(p for p in fresh if not (_begun(p) or _last_chance(p) or p.knife.knife_id in listed_at))
    changes = _changes(moved_up, OrderWord.LAST_CHANCE) + _changes(new, OrderWord.NEW)
    return begun + _put_between(leading, moved_up) + kept + new, changes


def _put_between(leading: tuple[Piece, ...], moved_up: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Leading in its order, with each that moves up ahead of the first with a weaker reason."""
    together = list(leading)
    for piece in moved_up:
        ahead_of = next((place for place, other in enumerate(together) if other.group > piece.group), len(together))
        together.insert(ahead_of, piece)
    return tuple(together)


def _begun(piece: Piece) -> bool:
    return piece.why is RunReason.BEGUN


def _last_chance(piece: Piece) -> bool:
    return piece.why in LAST_CHANCES


def _changes(pieces: tuple[Piece, ...], what: OrderWord) -> tuple[OrderChange, ...]:
    return tuple(OrderChange(tag=piece.knife.tag, what=what) for piece in pieces)
