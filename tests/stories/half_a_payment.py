"""A payment that is written and never finished: `python -m tests.stories.half_a_payment SHOP_FILE INSTANT NUMBER`.

It says so on a line of its own and then waits to be killed, within the transaction.
"""

import sys
from datetime import datetime
from pathlib import Path

from queueboard.shop.looking import look
from queueboard.shop.money import add_payment
from queueboard.shop.opening import open_shop
from queueboard.values.actor import Actor
from queueboard.values.new import NewPayment
from queueboard.words import PayWay


def main(file: str, instant: str, number: str) -> None:
    """Begin the transaction, write the payment, and wait."""
    now = datetime.fromisoformat(instant)
    shop = open_shop(Path(file))
    box = look(shop, now).box(int(number))
    assert box is not None
    with shop.writing(Actor(initials="MB", now=now), "take_payment") as writing:
        paid = NewPayment(cents=100, way=PayWay.CASH, paid_before_cents=box.paid_cents)
        add_payment(writing, box.box, paid)
        print("written", flush=True)
        sys.stdin.read()


if __name__ == "__main__":
    main(*sys.argv[1:])
