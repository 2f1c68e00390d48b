"""The command line: the board, and the same lists as text or JSON for scripts and for machines without a terminal.

Exit codes: 0 fine; 1 the shop file, a rule of the shop or the machine said no, or the program failed; 2 the command was
typed wrong, or the board has no terminal; 3 nothing was found; 4 it cannot be promised so; 130 stopped with Ctrl+C.
Trouble is one sentence on standard error.
"""

import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from datetime import UTC, datetime

INTERRUPTED = 130


def main(argv: Sequence[str] | None = None, *, clock: Callable[[], datetime] = lambda: datetime.now(UTC)) -> int:
    """Run one command and return its exit code; *clock* tells aware instants."""
    try:
        # Loading is most of what a short command does, and Ctrl+C may come in the midst of it.
        from queueboard.cli.running import run

        return run(argv, clock)
    except KeyboardInterrupt:
        with suppress(OSError, AttributeError):
            sys.stderr.write("Stopped.\n")
        return INTERRUPTED
