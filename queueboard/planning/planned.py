"""What comes out of planning; whoever only shows it need not load what makes it."""

from typing import TYPE_CHECKING

from queueboard.slotted import dataclass
from queueboard.values.plan import Plan

if TYPE_CHECKING:
    from queueboard.planning.ledger import Ledger


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """The plan, and the ledger behind it that can be asked for more."""

    plan: Plan
    ledger: "Ledger | None"
    """None for a shop without bench time, and before anything is planned."""
