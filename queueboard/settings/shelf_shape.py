"""The shape of what the shop does about boxes that nobody fetches, and about call-backs."""

from datetime import date

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """The shop's own days; a shop that says nothing has what stands here."""

    notice_days: tuple[int, ...] = (7, 21, 42)
    """So many days after a box is ready its first, second ... notice is due; rising, each 1 to 3650, empty for none."""
    long_days: int = 60
    """On the shelf longer than so many days the local law is to be looked up, 1 to 3650."""
    redo_days: int = 14
    """A knife that is not sharp is worked again for nothing up to so many days after it left, 0 to 3650."""
    last_checked: date | None = None
    """When somebody last read the local law on goods that nobody fetches; None for never."""
