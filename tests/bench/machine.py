"""On what a figure was measured, in one line above it."""

import platform
import sys
from datetime import UTC, datetime

from tests import engines


def heading(script: str, seed: int) -> str:
    """Script, seed, versions, day and machine."""
    return (
        f"# {script} seed {seed} · Python {platform.python_version()} · {engines.version()} · "
        f"{datetime.now(UTC):%Y-%m-%d} · {platform.system()} {platform.machine()}"
    )


def asked(*usual: int) -> tuple[int, ...]:
    """The numbers typed behind a script's name; the usual ones in place of those that were left out."""
    typed = tuple(int(word) for word in sys.argv[1:])
    return typed + usual[len(typed) :]
