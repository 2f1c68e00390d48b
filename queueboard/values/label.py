"""What a return label demands of the shop."""

from datetime import date

from queueboard.slotted import dataclass
from queueboard.words import LabelWord


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelDue:
    """A return label to buy or to use, with the last day on which using it still works."""

    box_id: int
    word: LabelWord
    last_day: date | None
    """The last day on which the carrier still takes it, on or before expiry; None when it has no expiry."""
