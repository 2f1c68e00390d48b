"""Bills for close-outs."""

from queueboard.money.bill import Bill, totals
from queueboard.values.knife import Knife
from tests.pictures import payment


def owing(knives_: tuple[Knife, ...], owed_cents: int) -> Bill:
    """The bill of some knives of which so much is still to be paid."""
    due = totals(Bill(knives=knives_)).total_cents
    return Bill(knives=knives_, payments=(payment(due - owed_cents),))
