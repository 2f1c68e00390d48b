"""What tells people of the same surname apart, to be asked on the phone."""

from collections.abc import Sequence

from queueboard.clean import figures, folded
from queueboard.shop.finding import surname
from queueboard.values.customer import Customer

FIGURES = 4


def phone_end(customer: Customer) -> str:
    """The last four figures of a phone; empty for none."""
    return figures(customer.phone)[-FIGURES:]


def phone_end_words(customer: Customer) -> str:
    """Phone ends in 4417; no phone."""
    return f"phone ends in {phone_end(customer)}" if phone_end(customer) else "no phone"


def apart_words(customer: Customer, found: Sequence[Customer]) -> str:
    """Same surname: ask first name, town, last four; empty where nobody else has it."""
    same = {one.id: one for one in found if surname(one.name) == surname(customer.name)}
    if len(same) < 2:
        return ""
    told = (
        ("first name", [folded(one.name) for one in same.values()]),
        ("town", [folded(one.town) for one in same.values()]),
        ("last four", [phone_end(one) for one in same.values()]),
    )
    differ = [what for what, words in told if len(set(words)) > 1]
    return f"same surname: ask {', '.join(differ)}" if differ else "same surname, told apart by nothing"
