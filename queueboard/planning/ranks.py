"""How strongly each box asks for the bench: why, by when, and what it costs to be late with it."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import UTC, datetime, time, timedelta

from queueboard.slotted import dataclass
from queueboard.values.plan import BoxWork, KnifeWork
from queueboard.words import RunReason

LAST_CHANCES = frozenset({RunReason.THIS_NEXT, RunReason.DUE_TODAY, RunReason.LABEL_TODAY})
"""The reasons that may move a knife up in a day list that was already fixed."""

NEVER_SLIP, RUSH, REWORK = 100, 3, 2
"""What being late with such a box weighs against one of an ordinary box (invented; the order is common practice).

A box that was put off once is as one that never slips: it is given up only where nothing else can give way.
"""

NEVER = datetime.max.replace(tzinfo=UTC)
"""The due of what was promised to nobody."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One knife in the queue, with its box and the reason it has now."""

    knife: KnifeWork
    box: BoxWork
    why: RunReason

    @property
    def place(self) -> tuple[datetime, int, int, int]:
        """Sorts by ship-by, then by box and tag, so that the order of the input never matters."""
        due = self.box.ship_by.astimezone(UTC) if self.box.ship_by else NEVER
        return (due, self.box.number, self.box.box_id, self.knife.knife_id)


def rank(box: BoxWork, knife: KnifeWork, now: datetime) -> RunReason:
    """The strongest reason for working this knife, seen at now (aware, in the shop's zone)."""
    today = now.date()
    ship_by_day = box.ship_by.astimezone(now.tzinfo).date() if box.ship_by else None
    label_day = box.label_by.astimezone(now.tzinfo).date() if box.label_by and box.label_by >= now else None
    tests = (
        (RunReason.BEGUN, knife.begun),
        (RunReason.THIS_NEXT, box.this_next),
        (RunReason.DUE_TODAY, box.promised_today or (ship_by_day is not None and ship_by_day <= today)),
        (RunReason.LABEL_TODAY, label_day == today),
        (RunReason.LABEL_TOMORROW, label_day == today + timedelta(days=1)),
        (RunReason.RUSH, box.rush),
        (RunReason.REWORK, knife.rework),
        (RunReason.SHIP_BY, ship_by_day is not None),
    )
    return next((reason for reason, holds in tests if holds), RunReason.NO_PROMISE)


def pieces_of(boxes: Iterable[BoxWork], now: datetime) -> tuple[Piece, ...]:
    """Every knife that may be worked now, by ship-by and tag; boxes that wait for somebody are left out."""
    pieces = (
        Piece(knife=knife, box=box, why=rank(box, knife, now))
        for box in boxes
        if not box.waiting
        for knife in box.knives
    )
    return tuple(sorted(pieces, key=lambda piece: piece.place))


def due_at(box: BoxWork, now: datetime) -> datetime | None:
    """By when the box must be done: its ship-by, or earlier where its label dies; a rush not promised: by tomorrow.

    Labels that die and rush bind the plan this way; they are no second order beside it.
    """
    asked = [box.ship_by] if box.ship_by else []
    if box.label_by and box.label_by >= now:
        asked.append(box.label_by)
    if box.rush and not box.ship_by:
        asked.append(datetime.combine(now.date() + timedelta(days=1), time.max, tzinfo=now.tzinfo))
    return min(asked, key=lambda instant: instant.astimezone(UTC), default=None)


def without_lost_labels(pieces: Sequence[Piece], late: frozenset[int], now: datetime) -> list[Piece]:
    """The same, but boxes that are late for their label alone go by their promise: the label is lost either way.

    late: the ids of the boxes that a plan with all labels is late with.
    """
    lost = {
        piece.box.box_id: replace(piece.box, label_by=None)
        for piece in pieces
        if piece.box.box_id in late and due_at(piece.box, now) != due_at(replace(piece.box, label_by=None), now)
    }
    return [
        Piece(knife=piece.knife, box=box, why=rank(box, piece.knife, now)) if box else piece
        for piece, box in ((piece, lost.get(piece.box.box_id)) for piece in pieces)
    ]


def asked_by(piece: Piece, now: datetime) -> datetime:
    """By when a knife's box must be done, in UTC: now for what is late already, NEVER when nothing was promised."""
    due = due_at(piece.box, now)
    return NEVER if due is None else max(due.astimezone(UTC), now.astimezone(UTC))


def weight(box: BoxWork) -> int:
    """What it costs to be late with the box; 1 for an ordinary one."""
    rework = any(knife.rework for knife in box.knives)
    asked = ((box.never_slip or box.put_off, NEVER_SLIP), (box.rush, RUSH), (rework, REWORK))
    return max((cost for holds, cost in asked if holds), default=1)
