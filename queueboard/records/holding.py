"""Who has a shop file open: a lock beside it that the system lets go of when a program ends, however it ends.

SQLite's own locks stand only while something is read or written; a board that waits for a key holds none.
"""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from queueboard.errors import BusyError

if sys.platform != "win32":
    import fcntl

Hold = int | None
"""An open lock; None where the disk or the system knows no such locks, and nobody can tell."""


def hold(path: Path) -> Hold:
    """Say that the file is open here, among others; BusyError while a copy is just being put in its place."""
    try:
        return _lock(path, alone=False)
    except BlockingIOError:
        raise BusyError(f"A copy is just being put in the place of {path}. Try again in a moment.") from None


@contextmanager
def alone(path: Path) -> Iterator[None]:
    """Have the file for oneself; BusyError, before anything happens, while anybody else has it open."""
    try:
        held = _lock(path, alone=True)
    except BlockingIOError:
        raise BusyError(
            f"{path} is open in a board or a command. Close every board on it, then try again; nothing was changed."
        ) from None
    try:
        yield
    finally:
        let_go(path, held)


def let_go(path: Path, held: Hold) -> None:
    """The file is not open here any more; the last one to go takes the lock file along."""
    if held is None or sys.platform == "win32":
        return
    try:
        with suppress(OSError):
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
            _lock_file(path).unlink(missing_ok=True)
    finally:
        os.close(held)


def _lock(path: Path, *, alone: bool) -> Hold:
    """BlockingIOError when somebody else holds it otherwise."""
    if sys.platform == "win32":
        return None
    while True:
        try:
            number = os.open(_lock_file(path), os.O_RDWR | os.O_CREAT, 0o600)
        except OSError:
            return None
        try:
            fcntl.flock(number, (fcntl.LOCK_EX if alone else fcntl.LOCK_SH) | fcntl.LOCK_NB)
            # Whoever was last may have taken the file away between opening and locking; then the lock is of no use.
            if os.path.samestat(os.fstat(number), _lock_file(path).stat()):
                return number
        except BlockingIOError:
            os.close(number)
            raise
        except FileNotFoundError:
            pass
        except OSError:
            os.close(number)
            return None
        os.close(number)


def _lock_file(path: Path) -> Path:
    return path.with_name(path.name + ".open")
