"""Knives that left their box without leaving the shop: put into another box, or found and nobody's yet."""

from datetime import datetime

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedKnife:
    """A knife that was put from one box into another."""

    id: int
    knife_id: int
    from_box_id: int
    from_box_number: int
    from_number: int
    """The second half of the tag that it had there."""
    to_box_id: int
    to_box_number: int
    why: str
    moved_at: datetime
    moved_by: str
    added: bool
    """True for a knife that came later than the box in which it came."""

    @property
    def from_tag(self) -> str:
        """The tag that it had before."""
        return f"{self.from_box_number}-{self.from_number}"


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundKnife:
    """A knife that is here and in no box."""

    id: int
    version: int
    kind: str
    length_mm: int | None
    mark: str
    """What tells it apart."""
    place: str
    """Where it lies."""
    from_box_id: int | None
    """The box in which it was one too many, and whose customer said that it is not theirs."""
    from_box_number: int | None
    found_at: datetime
    found_by: str
    settled_at: datetime | None = None
    settled_how: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Off:
    """Knives that were counted with a box and taken off it again."""

    struck: int = 0
    """Typed by mistake and never there."""
    found: int = 0
    """Not the customer's: they went to the found knives."""
