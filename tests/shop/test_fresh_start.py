"""What works in a program that has only just begun and has loaded nothing but what it asked for."""

import subprocess
import sys

from queueboard.shop.opening import Shop
from tests.shop.place import parcel

LOOKS = (
    "import sys; from pathlib import Path; from queueboard.shop.opening import open_shop; "
    "from queueboard.shop.undoing import steps; print([s.operation for s in steps(open_shop(Path(sys.argv[1])), 'J')])"
)


def test_steps_are_told_before_any_operation_was_done(shop: Shop) -> None:
    """A board opened afresh tells the steps of the day before, whichever operations they were."""
    parcel(shop)

    told = subprocess.run([sys.executable, "-c", LOOKS, str(shop.path)], capture_output=True, text=True, check=True)

    assert told.stdout.strip() == "['receive_box', 'add_customer', 'take_settings']"
