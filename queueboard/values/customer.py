"""A customer of the shop."""

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Customer:
    """Whose box it is. Text is a person's own words, cleaned but never interpreted."""

    id: int
    version: int
    name: str
    phone: str = ""
    town: str = ""
    address: str = ""
    notes: str = ""
    proof_card: bool = False
    """True when a card with the readings of each knife goes with the box."""
