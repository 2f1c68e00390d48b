"""Ties and near-ties of rounding against published rules.

values/money_rounding.json, which names its sources: the whole-dollar rule of the IRS (Publication 17: 50 to 99 cents go
up; $2.50 is $3) and of Iowa's IA 1040; HMRC VATREC12030 (half a penny or more goes up); Council Regulation (EC) 1103/97
Article 5 (exactly half-way goes up); Rule A and Rule B of ISO 80000-1 Annex B (ties to even, ties away from zero).
"""

import json
from decimal import Decimal
from pathlib import Path

import pytest

from queueboard.money.rounding import payable, rounded, whole_cents
from queueboard.words import Rounding

GIVEN = json.loads((Path(__file__).parent / "values" / "money_rounding.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("amount", "step", "told"), [*GIVEN["half_up"], *GIVEN["both"]])
def test_half_up_is_the_rule_of_tax_offices(amount: str, step: str, told: str) -> None:
    """What lies exactly half-way goes up, away from zero, at whole units, at cents and at tens."""
    assert rounded(Decimal(amount), Decimal(step), Rounding.HALF_UP) == Decimal(told)


@pytest.mark.parametrize(("amount", "step", "told"), [*GIVEN["half_even"], *GIVEN["both"]])
def test_half_even_goes_to_the_even_neighbour(amount: str, step: str, told: str) -> None:
    """What lies exactly half-way goes to the even neighbour."""
    assert rounded(Decimal(amount), Decimal(step), Rounding.HALF_EVEN) == Decimal(told)


@pytest.mark.parametrize(("amount", "told"), GIVEN["cash_5c_nearest"].items())
def test_a_cash_total_goes_to_the_nearest_five_cents(amount: str, told: str) -> None:
    """A total is asked for in the five cents nearest to it."""
    assert Decimal(payable(int(Decimal(amount) * 100), Rounding.FIVE)).scaleb(-2) == Decimal(told)


def test_a_cent_never_falls_into_a_binary_fraction() -> None:
    """2.675 and 1.005, which binary fractions hold a little too low, are rounded by what is written."""
    assert (round(2.675, 2), f"{1.005:.2f}") == (2.67, "1.00")  # what binary fractions make of them
    assert whole_cents(Decimal("2.675").scaleb(2), Rounding.HALF_UP) == 268
    assert whole_cents(Decimal("1.005").scaleb(2), Rounding.HALF_UP) == 101
