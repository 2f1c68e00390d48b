"""Parts of a cent made whole by the shop's rule; always from exact decimals, never from binary fractions."""

from collections.abc import Mapping
from decimal import ROUND_DOWN, ROUND_HALF_EVEN, ROUND_HALF_UP, ROUND_UP, Decimal

from queueboard.words import Rounding

MILLION = 1_000_000
"""Shares and rates are in millionths: 7.25 % is 72,500."""

_MODES: Mapping[Rounding, str] = {
    Rounding.HALF_UP: ROUND_HALF_UP,
    Rounding.HALF_EVEN: ROUND_HALF_EVEN,
    Rounding.DOWN: ROUND_DOWN,
    Rounding.UP: ROUND_UP,
    Rounding.FIVE: ROUND_HALF_UP,
}


def rounded(amount: Decimal, step: Decimal, rule: Rounding) -> Decimal:
    """An amount as a multiple of a step (1, 0.01, 10); half up goes away from zero, as EU Regulation 1103/97 Art. 5."""
    return (amount / step).quantize(Decimal(1), rounding=_MODES[rule]) * step


def whole_cents(cents: Decimal, rule: Rounding) -> int:
    """Whole cents of an amount in cents."""
    return int(rounded(cents, Decimal(1), rule))


def share(cents: int, ppm: int, rule: Rounding) -> int:
    """So many millionths of an amount, in whole cents."""
    return whole_cents(Decimal(cents * ppm).scaleb(-6), rule)


def payable(cents: int, rule: Rounding) -> int:
    """A total as it is asked for: to the nearest five cents where the shop rounds so, else as it is."""
    return int(rounded(Decimal(cents), Decimal(5), rule)) if rule is Rounding.FIVE else cents
