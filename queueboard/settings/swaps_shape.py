"""The shape of what the shop does with swap sets of kitchens."""

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Swaps:
    """The shop's own choices; a shop that says nothing has no swap sets."""

    on: bool = False
    """True for a shop that has kitchens with swap sets."""
    waiting_days: int = 7
    """A missing knife goes on the kitchen's statement after so many days, 0 to 365."""
    free_nick_um: int = 1000
    """A nick up to so deep is ground out for nothing, in micrometres, 0 to 50,000."""
