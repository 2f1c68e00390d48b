"""What a box comes to, in whole cents."""

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """The sums of a bill; each total is the sum of its parts, so that they cannot disagree."""

    knives_cents: int = 0
    """Prices of the knives that are charged."""
    add_ons_cents: int = 0
    """Chips, rust and the like, and other work."""
    rush_cents: int = 0
    minimum_cents: int = 0
    """What is missing up to the minimum."""
    discount_cents: int = 0
    """What comes off, at least 0."""
    shipping_cents: int = 0
    tax_cents: int = 0
    rounding_cents: int = 0
    """What rounding to five cents adds or takes, -2 to 2."""
    paid_cents: int = 0
    """All money taken, less what was given back."""

    @property
    def work_cents(self) -> int:
        """The subtotal: all work with its discount, before shipping and tax."""
        gross = self.knives_cents + self.add_ons_cents + self.rush_cents + self.minimum_cents
        return gross - self.discount_cents

    @property
    def total_cents(self) -> int:
        """What is to be paid in all."""
        return self.work_cents + self.shipping_cents + self.tax_cents + self.rounding_cents

    @property
    def owed_cents(self) -> int:
        """What is still to be paid; less than 0 when too much was."""
        return self.total_cents - self.paid_cents

    @property
    def plain(self) -> bool:
        """True when the knives' prices are all there is."""
        return self.total_cents == self.knives_cents and not (self.discount_cents or self.add_ons_cents)
