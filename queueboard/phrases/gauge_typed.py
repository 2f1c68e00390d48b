"""A reading of the gauge as typed at the bench, taken as it stands or refused with a sentence."""

import re

from queueboard.clean import shown
from queueboard.errors import TypedError

MOST_GF = 5000
"""The shop file's own limit; a table-knife blunt edge needs about 2000 (common practice, no source)."""


def parse_force_gf(text: str) -> int:
    """Read a push in whole grams-force, 1 to 5000; a decimal comma or point is refused, not rounded."""
    typed = text.strip()
    if re.fullmatch(r"[0-9]+[.,][0-9]+", typed):
        raise TypedError(f"{shown(typed)} has a fraction; the gauge is read in whole grams-force. Type it like 165.")
    if re.fullmatch(r"[-−][0-9]+", typed):
        raise TypedError(f"{shown(typed)} is below nothing; an edge never pushes back. Type it like 165.")
    if not re.fullmatch(r"[0-9]+", typed):
        raise TypedError(f"“{shown(typed)}” is no reading. Type whole grams-force, like 165.")
    digits = typed.lstrip("0")
    if not digits:
        raise TypedError("A reading of 0 is no cut: look at the gauge's zero, then read the spot again.")
    if len(digits) > 4 or int(digits) > MOST_GF:
        raise TypedError(f"{shown(digits)} gf is more than {MOST_GF}; was a digit typed twice? Type it again.")
    return int(digits)
