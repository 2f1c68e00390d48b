"""The command line: the board, and the same lists as text or JSON for scripts and for machines without a terminal.

Exit codes: 0 fine; 1 the shop file, a rule of the shop or the machine said no, or the program failed; 2 the command was
typed wrong, or the board has no terminal; 3 nothing was found; 4 it cannot be promised so; 130 stopped with Ctrl+C.
Trouble is one sentence on standard error.
"""

import gc
import os
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from datetime import UTC, datetime

INTERRUPTED = 130

GARBAGE_FROM = 50_000
"""How many values more than went must have come before Python looks for garbage: nearly all that is loaded stays."""

SERVER_DRIVERS = ("psycopg", "psycopg2", "psycopg2cffi", "pymysql", "MySQLdb")
"""What peewee loads wherever it is installed, whether a server is asked for or not."""


def main(argv: Sequence[str] | None = None, *, clock: Callable[[], datetime] = lambda: datetime.now(UTC)) -> int:
    """Run one command and return its exit code; *clock* tells aware instants."""
    if argv is None:
        _be_quick(sys.argv[1:])
    try:
        # Loading is most of what a short command does, and Ctrl+C may come in the midst of it.
        from queueboard.cli.running import run

        code = run(argv, clock)
    except KeyboardInterrupt:
        with suppress(OSError, AttributeError):
            sys.stderr.write("Stopped.\n")
        code = INTERRUPTED
    if argv is None:
        gc.freeze()  # else Python looks through all of it for garbage once more before it lets the process go
    return code


def _be_quick(argv: Sequence[str]) -> None:
    """Spare a process of our own what a short command would spend much of its time on."""
    gc.set_threshold(GARBAGE_FROM)
    if not any("://" in word for word in (*argv, os.environ.get("QUEUEBOARD_FILE", ""))):
        for name in SERVER_DRIVERS:
            sys.modules.setdefault(name, None)  # type: ignore[arg-type]  # Python's own sign for: not to be had
