"""A copy put in the place of the shop file: made ready out of sight, and then there in one step."""

import os
import sqlite3
import stat
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from datetime import datetime
from pathlib import Path

from queueboard.errors import FileError
from queueboard.records import database as db
from queueboard.records.copies import stem_of
from queueboard.records.making import make_private_folder, to_disk

BESIDE = ("-wal", "-shm", "-journal")
"""How the names of the files end that SQLite keeps beside its own while there is something in them."""


def aside_folder(path: Path, at: datetime) -> Path:
    """Where the file goes that stands there now: a folder of its own, so that what belongs together keeps its names."""
    return path.with_name(f"{stem_of(path)}-aside-{at:%Y-%m-%d-%H%M%S}")


@contextmanager
def workshop(path: Path) -> Iterator[Path]:
    """A place on the same disk that only the owner may enter; nothing of it stays."""
    import shutil
    import tempfile

    make_private_folder(path.parent)
    folder = Path(tempfile.mkdtemp(prefix=".queueboard-", dir=path.parent))
    try:
        yield folder
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def fetch(copy: Path, made: Path) -> None:
    """Bring a copy, with what SQLite left beside it, to where it is made ready."""
    import shutil

    for end in ("", *BESIDE):
        part = copy.with_name(copy.name + end)
        if end == "" or part.exists():
            shutil.copyfile(part, made.with_name(made.name + end))
    made.chmod(stat.S_IRUSR | stat.S_IWUSR)


def settle(path: Path, aside: Path) -> None:
    """Have SQLite bring into the present file what still lies beside it, so that the file can be changed in one step.

    SQLite throws away what it cannot use; therefore it is copied into *aside* first.
    """
    import shutil

    for end in BESIDE:
        part = path.with_name(path.name + end)
        if end != "-shm" and part.exists() and part.stat().st_size > 0:
            aside.mkdir(mode=0o700, exist_ok=True)
            shutil.copyfile(part, aside / part.name)
            (aside / part.name).chmod(stat.S_IRUSR | stat.S_IWUSR)
    with suppress(FileError, sqlite3.DatabaseError, OSError):
        db.look_before_opening(path)
        with closing(sqlite3.connect(path, isolation_level=None)) as present:
            present.execute("SELECT count(*) FROM sqlite_master").fetchone()
            present.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()


def lines_beyond(path: Path, lines: int, head: str) -> int | None:
    """How many lines of history the present file has beyond those of a copy; None where nobody can tell.

    It can be told only where the file has the copy's history in it.
    """
    try:
        db.look_before_opening(path)
        with closing(sqlite3.connect(path)) as present:
            same = present.execute("SELECT hash FROM history WHERE id = ?", (lines,)).fetchone()
            (newest,) = present.execute("SELECT coalesce(max(id), 0) FROM history").fetchone()
    except (FileError, sqlite3.DatabaseError, UnicodeDecodeError):
        return None
    return int(newest) - lines if same == (head,) else None


def erased_in(path: Path) -> frozenset[str]:
    """What names the customers erased in the present file, as far as it can be read."""
    with suppress(FileError, sqlite3.DatabaseError, UnicodeDecodeError):
        db.look_before_opening(path)
        with closing(sqlite3.connect(path)) as present:
            return frozenset(
                str(one)
                for (one,) in present.execute(
                    "SELECT h.hash FROM history h JOIN erased_customer e ON h.entity_id = e.customer_id "
                    "WHERE h.entity = 'customer' AND h.before IS NULL"
                )
            )
    return frozenset()


def anything_at(path: Path) -> bool:
    """True when there is a file, or what SQLite left beside one."""
    return any(path.with_name(path.name + end).exists() for end in ("", *BESIDE))


def put_in_place(made: Path, path: Path, aside: Path) -> None:
    """Give a finished file its name; what stood there lies in *aside* afterwards, and nothing is written over.

    Where the disk knows second names there is no moment without a shop file.
    """
    to_disk(made)
    if anything_at(path):
        aside.mkdir(mode=0o700, exist_ok=True)
        for part in (path.with_name(path.name + end) for end in BESIDE):
            if part.exists() and part.stat().st_size == 0 and (aside / part.name).exists():
                part.unlink()
            elif part.exists():
                part.replace(aside / part.name)
        if path.exists():
            _keep(path, aside / path.name)
        to_disk(aside)
    made.replace(path)
    to_disk(path.parent)


def _keep(path: Path, kept: Path) -> None:
    try:
        os.link(path, kept)
    except OSError:
        path.rename(kept)
