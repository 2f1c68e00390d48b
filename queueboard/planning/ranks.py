"""How strongly each knife asks for the bench, and what it is due together with."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from queueboard.values.plan import BoxWork, KnifeWork
from queueboard.words import RunReason

LAST_CHANCES = frozenset({RunReason.THIS_NEXT, RunReason.PROMISED_TODAY, RunReason.LABEL_TODAY})
"""The ranks that may move a knife up in a day list that was already fixed."""

_RANK = {reason: place for place, reason in enumerate(RunReason)}
_NEVER = datetime.max.replace(tzinfo=UTC)


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One knife in the queue, with its box and the rank it has now."""

    knife: KnifeWork
    box: BoxWork
    why: RunReason
    due: datetime
    """UTC; pieces of one rank with the same instant here are due together and may share a run."""

    @property
    def group(self) -> tuple[int, datetime]:
        """Sorts by rank, then by what is due together."""
        return (_RANK[self.why], self.due)

    @property
    def place(self) -> tuple[datetime, int, int, int]:
        """Sorts inside a group: by ship-by, then by box and tag, so that the order of the input never matters."""
        return (_cut_off(self.box), self.box.number, self.box.box_id, self.knife.knife_id)


def rank(box: BoxWork, knife: KnifeWork, now: datetime) -> RunReason:
    """The strongest reason for working this knife, seen at now (aware, in the shop's zone)."""
    today = now.date()
    ship_by_day = box.ship_by.astimezone(now.tzinfo).date() if box.ship_by else None
    tests = (
        (RunReason.BEGUN, knife.begun),
        (RunReason.THIS_NEXT, box.this_next),
        (RunReason.PROMISED_TODAY, box.promised_today or (ship_by_day is not None and ship_by_day <= today)),
        (RunReason.LABEL_TODAY, box.label_last_day == today),
        (RunReason.LABEL_TOMORROW, box.label_last_day == today + timedelta(days=1)),
        (RunReason.RUSH, box.rush),
        (RunReason.REWORK, knife.rework),
        (RunReason.SHIP_BY, ship_by_day is not None),
    )
    return next((reason for reason, holds in tests if holds), RunReason.NO_PROMISE)


def pieces_of(boxes: Iterable[BoxWork], now: datetime) -> tuple[Piece, ...]:
    """Every knife that may be worked now; boxes that wait for somebody are left out."""
    return tuple(_piece(box, knife, now) for box in boxes if not box.waiting for knife in box.knives)


def _piece(box: BoxWork, knife: KnifeWork, now: datetime) -> Piece:
    why = rank(box, knife, now)
    if why in (RunReason.BEGUN, RunReason.LABEL_TODAY, RunReason.LABEL_TOMORROW):
        # On the bench already, or bound by one and the same day of the label: one group, whatever was promised.
        return Piece(knife=knife, box=box, why=why, due=now.astimezone(UTC))
    # What is already late is due together: now.
    return Piece(knife=knife, box=box, why=why, due=max(_cut_off(box), now.astimezone(UTC)))


def _cut_off(box: BoxWork) -> datetime:
    return box.ship_by.astimezone(UTC) if box.ship_by else _NEVER
