"""What the shop's own numbers say of kitchens that swap sets, and of market days."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Swaps:
    """How sets of kitchens are swapped."""

    on: bool = False
    wait_days: int = 7
    """So many days a missing knife is waited for before it is charged, 0 to 365."""
    round_days: int = 7
    """Days from one round to the next, 1 to 60."""
    nick_um: int = 500
    """Chips up to this depth, in micrometres, cost nothing, 0 to 10,000."""
    missing_cents: int = 0
    """What a knife costs that does not come back; 0 where it is agreed each time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Market:
    """How market days are caught up with."""

    on: bool = False
    kind: str = "chef"
    """What a knife is taken for when only the count was written down."""
