"""Who acts, and when."""

from dataclasses import field
from datetime import datetime
from uuid import uuid4

from queueboard.slotted import dataclass


def new_group_id() -> str:
    """A fresh id for one action; a retry with the same id can never act twice."""
    return uuid4().hex


@dataclass(frozen=True, slots=True, kw_only=True)
class Actor:
    """Initials, the instant of the action, and the id that binds all its history lines together."""

    initials: str
    now: datetime
    """An aware datetime; naive times are refused where they are stored."""
    group_id: str = field(default_factory=new_group_id)
