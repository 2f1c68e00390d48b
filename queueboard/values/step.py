"""One step of history that can be told in words and undone."""

from datetime import datetime

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What a step was about, without any person's text: tags, a box number, from and to."""

    tags: tuple[str, ...] = ()
    number: int | None = None
    was: str = ""
    to: str = ""
    cents: int | None = None
    undone: str = ""
    """For an undo: the operation that was undone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One action as history holds it."""

    group_id: str
    operation: str
    """The operation's name, such as move_knives."""
    about: About
    at: datetime
    by: str
    needs_reason: bool
    """True when undoing it asks for a reason (a parcel, a payment or a told promise is concerned)."""
