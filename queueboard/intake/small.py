"""Small things typed at receiving: whole numbers, what a box comes with."""

from queueboard.clean import shown
from queueboard.errors import TypedError


def read_number(text: str) -> int:
    """A whole number from 0 to 999999; its true range is the operation's business."""
    typed = text.strip()
    if not (typed.isascii() and typed.isdecimal()) or len(typed) > 6:
        raise TypedError(f"“{shown(typed)}” is not a whole number. Type digits only.")
    return int(typed)


def read_things(text: str) -> tuple[str, ...]:
    """What a box comes with, typed with commas between: sheath, roll."""
    return tuple(part for part in (part.strip() for part in text.split(",")) if part)


def counts_differ(counted: int, typed: int) -> str:
    """What is said while the count by hand and the number of knives typed are not the same."""
    knives = "knife" if typed == 1 else "knives"
    return f"You counted {counted} and typed {typed} {knives}; one of the two is not right yet."
