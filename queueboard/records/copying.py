"""A whole copy of a shop file, and the look that tells a good copy from an empty one."""

import os
import sqlite3
import stat
from contextlib import suppress
from pathlib import Path

from queueboard.records.copies import sum_file, sum_of
from queueboard.records.making import to_disk
from queueboard.values.progress import Doing, tell

_OF_THE_SOURCE = ("SQLITE_BUSY", "SQLITE_LOCKED", "SQLITE_IOERR_READ", "SQLITE_IOERR_SHORT_READ")
"""What the file that is copied may say; nobody else knows the copy, and it is not read while it is written."""

PAGES_AT_ONCE = 1000
"""Pages between two words about how far it is."""

_WHY_NOT = {"SQLITE_FULL": "its disk is full", "SQLITE_READONLY": "it may only be read"}
"""SQLite's own words for it would read as if they were about the shop file."""


def copy_whole(source: sqlite3.Connection, target: Path) -> None:
    """Copy a file into a new one that only the owner may read.

    The source is to be in a transaction, or locked: SQLite would begin again whenever another window has written.
    OSError where the copy cannot be written; where the source cannot be read, SQLite's own error.
    """
    os.close(os.open(target, os.O_CREAT | os.O_EXCL | os.O_RDWR, stat.S_IRUSR | stat.S_IWUSR))
    copy = sqlite3.connect(target)
    try:
        source.backup(copy, pages=PAGES_AT_ONCE, progress=_tell)
        copy.execute("PRAGMA journal_mode = DELETE")
    except sqlite3.OperationalError as error:
        if error.sqlite_errorname.startswith(_OF_THE_SOURCE):
            raise
        raise OSError(_WHY_NOT.get(error.sqlite_errorname, str(error))) from error
    finally:
        copy.close()


def _tell(_status: int, remaining: int, total: int) -> None:
    tell(Doing.COPYING, total - remaining, total)


def same_content(original: sqlite3.Connection, copied: Path) -> bool:
    """True for a copy that is whole, ours, and holds as much as its original (quick_check passes empty ones)."""
    tables = [name for (name,) in original.execute("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY 1")]
    questions = ["PRAGMA application_id", "PRAGMA user_version", "SELECT hash FROM history ORDER BY id DESC LIMIT 1"]
    questions += [f"SELECT count(*) FROM {table}" for table in tables]
    wanted = [original.execute(one).fetchall() for one in questions]
    copy = sqlite3.connect(copied)
    tell(Doing.CHECKING, 0, 0)
    try:
        good = copy.execute("PRAGMA quick_check").fetchone() == ("ok",)
        return good and [copy.execute(one).fetchall() for one in questions] == wanted
    except sqlite3.DatabaseError:
        return False
    finally:
        copy.close()


def give_name(passing: Path, target: Path) -> None:
    """Let a verified copy appear under its name: on the disk first, and never without the sum to check it by."""
    to_disk(passing)
    sums = sum_file(target)
    fresh = sums.with_name(f"{sums.name}.{os.getpid()}.part")
    try:
        fresh.touch(mode=0o600)
        fresh.write_text(f"{sum_of(passing)}  {target.name}\n", encoding="utf-8", errors="surrogateescape")
        to_disk(fresh)
        fresh.replace(sums)
        passing.replace(target)
        to_disk(target.parent)
    finally:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)


def copy_bytes(copy: Path, target: Path) -> bool:
    """Copy a verified copy once more, to another disk; False, and nothing there, when what arrived differs."""
    import shutil

    passing = passing_name(target)
    try:
        passing.unlink(missing_ok=True)
        passing.touch(mode=0o600)
        shutil.copyfile(copy, passing)
        to_disk(passing)
        if sum_of(passing) != sum_of(copy):
            return False
        give_name(passing, target)
        return True
    finally:
        with suppress(OSError):
            passing.unlink(missing_ok=True)


def passing_name(target: Path) -> Path:
    """Where a copy is made until it is known to be good; another window may be making the same."""
    return target.with_name(f"{target.name}.{os.getpid()}.part")
