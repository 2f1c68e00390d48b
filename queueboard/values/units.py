"""Exact definitions of the units in which shops measure (international yard and pound agreement of 1959; SI)."""

from decimal import Decimal

MM_PER_CM = Decimal(10)
MM_PER_INCH = Decimal("25.4")
GRAMS_PER_POUND = Decimal("453.59237")
GRAMS_PER_OUNCE = GRAMS_PER_POUND / 16
MILLINEWTONS_PER_GRAM_FORCE = Decimal("9.80665")
"""Standard gravity times one gram."""
