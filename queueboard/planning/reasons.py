"""Why each run of a plan stands where it does."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from queueboard.planning.ranks import NEVER, asked_by
from queueboard.planning.timing import Batch
from queueboard.values.plan import Run
from queueboard.words import RunReason

_RANK = {reason: place for place, reason in enumerate(RunReason)}
_SET_BY_HAND = (RunReason.BEGUN, RunReason.THIS_NEXT)


def with_reasons(runs: Sequence[Run], batches: Sequence[Batch], late: frozenset[int], now: datetime) -> tuple[Run, ...]:
    """The runs, each with its reason: the strongest of its knives, unless the planner had one of its own.

    A run that holds nothing but boxes that are late either way stands behind what can still be on time. One that comes
    before others that are due earlier saves a set-up there and makes nobody late.
    """
    due_later = NEVER
    reasons: list[RunReason] = []
    for batch in reversed(batches):
        earliest = min(asked_by(piece, now) for piece in batch)
        reasons.append(_reason(batch, late, pulled=earliest > due_later))
        on_time = [asked_by(piece, now) for piece in batch if piece.box.box_id not in late]
        due_later = min([due_later, *on_time])
    return tuple(replace(run, why=why) for run, why in zip(runs, reversed(reasons), strict=True))


def _reason(batch: Batch, late: frozenset[int], *, pulled: bool) -> RunReason:
    strongest = min((piece.why for piece in batch), key=_RANK.__getitem__)
    if strongest in _SET_BY_HAND:
        return strongest
    if all(piece.box.box_id in late for piece in batch):
        return RunReason.LATE_EITHER_WAY
    return RunReason.SAVES_SET_UP if pulled else strongest
