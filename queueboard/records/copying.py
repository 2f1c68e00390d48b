"""A whole copy of a shop file, and the look that tells a good copy from an empty one."""

import os
import sqlite3
import stat
from pathlib import Path

from queueboard.records.database import ShopDatabase

COUNTED = ("customer", "box", "knife", "payment", "promise", "history", "personal")
"""Tables whose row counts a copy must share with its original."""

_OF_THE_SOURCE = ("SQLITE_BUSY", "SQLITE_LOCKED", "SQLITE_IOERR_READ", "SQLITE_IOERR_SHORT_READ")
"""What the file that is copied may say; nobody else knows the copy, and it is not read while it is written."""

_WHY_NOT = {"SQLITE_FULL": "its disk is full", "SQLITE_READONLY": "it may only be read"}
"""SQLite's own words for it would read as if they were about the shop file."""


def copy_whole(source: sqlite3.Connection, target: Path) -> None:
    """Copy a file in one go into a new one that only the owner may read.

    OSError where the copy cannot be written; where the source cannot be read, SQLite's own error.
    """
    os.close(os.open(target, os.O_CREAT | os.O_EXCL | os.O_RDWR, stat.S_IRUSR | stat.S_IWUSR))
    copy = sqlite3.connect(target)
    try:
        source.backup(copy, pages=-1)
        copy.execute("PRAGMA journal_mode = DELETE")
    except sqlite3.OperationalError as error:
        if error.sqlite_errorname.startswith(_OF_THE_SOURCE):
            raise
        raise OSError(_WHY_NOT.get(error.sqlite_errorname, str(error))) from error
    finally:
        copy.close()


def same_content(original: ShopDatabase, copied: Path) -> bool:
    """True for a copy that is whole, ours, and holds as much as its original (quick_check passes empty ones)."""
    questions = ["PRAGMA application_id", "PRAGMA user_version", "SELECT hash FROM history ORDER BY id DESC LIMIT 1"]
    questions += [f"SELECT count(*) FROM {table}" for table in COUNTED]
    wanted = [original.rows(one) for one in questions]
    copy = sqlite3.connect(copied)
    try:
        good = copy.execute("PRAGMA quick_check").fetchone() == ("ok",)
        return good and [copy.execute(one).fetchall() for one in questions] == wanted
    except sqlite3.DatabaseError:
        return False
    finally:
        copy.close()
