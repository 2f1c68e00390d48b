"""Opening, creating and looking at a shop file; every fault becomes a sentence before a byte is written."""

import os
import sqlite3
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import quote

from peewee import DatabaseError, IntegrityError, InterfaceError, OperationalError, SqliteDatabase

from queueboard.errors import BusyError, FileError
from queueboard.plainfiles import insist_on_plain_file
from queueboard.records import migrations
from queueboard.records.connection import Cell as Cell  # noqa: PLC0414  # the name by which all ask for it
from queueboard.records.connection import ShopDatabase as ShopDatabase  # noqa: PLC0414  # as Cell
from queueboard.records.copies import newest_copy_words
from queueboard.records.lost import server_sentence
from queueboard.records.refusals import refused
from queueboard.records.schema_v1 import APPLICATION_ID

OLDEST_SQLITE = (3, 37, 0)
"""STRICT tables came with 3.37 (sqlite.org/stricttables.html)."""


class FileDatabase(ShopDatabase, SqliteDatabase):
    """A connection to one shop file that reports SQLite's own error when SQLite has already rolled back."""

    def rollback(self) -> None:
        """Roll back, unless SQLite did so itself (disk full): a second ROLLBACK would hide the real error."""
        if self.raw().in_transaction:
            super().rollback()

    def raw(self) -> sqlite3.Connection:
        """The standard library's own connection beneath."""
        connection = self.connection()  # type: ignore[no-untyped-call]  # the stubs leave it untyped
        if not isinstance(connection, sqlite3.Connection):
            raise TypeError(f"sqlite3 was expected beneath, not {type(connection).__module__}")
        return connection

    def layout(self) -> int:
        """Stands in the file as user_version."""
        return int(self.one("PRAGMA user_version") or 0)

    def run(self, sql: str, values: Sequence[Cell] = ()) -> sqlite3.Cursor:
        """Run one fixed statement; the cursor knows what it did."""
        cursor: sqlite3.Cursor = self.execute_sql(sql, values)  # type: ignore[no-untyped-call]  # untyped in the stubs
        return cursor

    def insert(self, sql: str, values: Sequence[Cell]) -> int:
        """SQLite says by itself which id it gave."""
        return int(self.run(sql, values).lastrowid or 0)

    def leave_no_trace(self) -> None:
        """The words must not stand in an unused corner of the file."""
        self.rows("PRAGMA secure_delete = ON")

    def bring_home(self) -> None:
        """Empty the write-ahead log."""
        self.rows("PRAGMA wal_checkpoint(TRUNCATE)")

    @contextmanager
    def reading(self) -> Iterator[None]:
        """One consistent view over several queries; it never takes the writer's lock."""
        self.rows("BEGIN DEFERRED")
        try:
            yield
        finally:
            if self.raw().in_transaction:
                self.rows("ROLLBACK")


def check_library() -> None:
    """Refuse a SQLite without STRICT tables."""
    if sqlite3.sqlite_version_info < OLDEST_SQLITE:
        raise FileError(
            f"This machine's SQLite is {sqlite3.sqlite_version}; queueboard needs 3.37 or newer. "
            "Install a newer Python, which brings a newer SQLite with it."
        )


def has_wal_reset_fix(version: tuple[int, ...]) -> bool:
    """True when this SQLite cannot damage a WAL file by the checkpoint race (sqlite.org/wal.html#walresetbug)."""
    return version >= (3, 51, 3) or (3, 50, 7) <= version < (3, 51, 0) or (3, 44, 6) <= version < (3, 45, 0)


def look_before_opening(path: Path) -> int:
    """Read the header without SQLite and return the schema version; each thing that is wrong has its sentence."""
    _must_be_a_file(path)
    try:
        with path.open("rb") as file:
            header = file.read(100)
    except PermissionError:
        raise FileError(f"You may not read {path}. Ask its owner, or choose another file with --file.") from None
    except OSError as error:
        raise FileError(f"{path} cannot be read: {error.strerror}. Choose another file with --file.") from None
    if not header:
        raise empty(path)
    if header[:16] != b"SQLite format 3\x00" or int.from_bytes(header[68:72]) != APPLICATION_ID:
        raise FileError(
            f"{path} is not a shop file of queueboard; nothing in it was touched. Choose another with --file."
        )
    version = int.from_bytes(header[60:64])
    if version > len(migrations.STEPS):
        raise newer(path, version)
    _check_size(path, header)
    return version


def _must_be_a_file(path: Path) -> None:
    """Refuse what is not there, and what is there but no plain file."""
    try:
        insist_on_plain_file(path, "a shop file", "Choose another with --file.")
    except (FileNotFoundError, NotADirectoryError):
        raise FileError(
            f"There is no shop file at {path}. `queueboard start` makes one; `queueboard demo` shows an invented shop."
        ) from None
    except OSError as error:
        raise FileError(f"{path} cannot be looked at: {error.strerror}. Choose another file with --file.") from None


def _check_size(path: Path, header: bytes) -> None:
    """A file cut short is damaged, unless a WAL beside it still holds the rest."""
    page_size = int.from_bytes(header[16:18])
    page_size = 65536 if page_size == 1 else page_size
    pages = int.from_bytes(header[28:32])
    if not unfinished(path) and path.stat().st_size != pages * page_size:
        raise damaged(path)


def unfinished(path: Path) -> bool:
    """True while a log or a journal beside a file holds what is not in it yet; TRUNCATE leaves empty ones lying."""
    beside = (path.with_name(path.name + end) for end in ("-wal", "-journal"))
    return any(one.exists() and one.stat().st_size > 0 for one in beside)


def empty(path: Path) -> FileError:
    """The sentence for a file without a single byte, which a full or failing disk leaves of what it was to keep."""
    return FileError(
        f"{path} is empty and so is not a shop file, or no longer one. Put {newest_copy_words(path)}, "
        "or move it away and run `queueboard start`."
    )


def newer(path: Path, version: int) -> FileError:
    """The sentence for a file of a layout that this program does not know."""
    return FileError(
        f"{path} was written by a newer queueboard (its layout is {version}, this one knows {len(migrations.STEPS)}). "
        "Upgrade queueboard; nothing in the file was touched."
    )


def only_to_read(path: Path) -> FileError:
    """The sentence for a file that may not be written."""
    return FileError(f"{path} may only be read, not written. Check who owns the file and its folder.")


def damaged(path: Path) -> FileError:
    """The sentence for a damaged file."""
    return FileError(
        f"{path} is damaged; nothing in it was touched. Put {newest_copy_words(path)}; "
        "the damaged file is kept beside it."
    )


def connect(path: Path, patience_ms: int) -> FileDatabase:
    """Open an existing file that look_before_opening has found good; faults are the caller's to tell.

    Where the file or its folder may not be written it is opened to be read only.
    """
    only_read = not _writable(path)
    database = FileDatabase(
        f"file:{quote(os.fsencode(path.absolute()))}?mode={_to_read(path) if only_read else 'rw'}",
        uri=True,
        lock_type="IMMEDIATE",
        autoconnect=False,
        pragmas={
            "busy_timeout": patience_ms,
            "foreign_keys": 1,
            "synchronous": 2,
            "trusted_schema": 0,
        },
    )
    database.only_read = only_read
    database.connect()
    if database.one("PRAGMA journal_mode") != "wal":
        database.one("PRAGMA journal_mode = TRUNCATE")
    return database


def _to_read(path: Path) -> str:
    """How SQLite is asked for a file that may only be read.

    With a write-ahead log it wants to keep a file beside it even to read; a file with nothing left in a log stands
    still as far as we can tell, and is read as such.
    """
    with path.open("rb") as file:
        logged = file.read(100)[18] == 2
    return "ro&immutable=1" if logged and not unfinished(path) else "ro"


def create(path: Path, salt: str, now_us: int) -> None:
    """Make a new shop file with its tables where there is none; faults are the caller's to tell.

    salt: 32 hexadecimal figures behind which history hides people's texts.
    """
    connection = sqlite3.connect(path, isolation_level=None)
    try:
        if has_wal_reset_fix(sqlite3.sqlite_version_info):
            connection.execute("PRAGMA journal_mode = WAL")
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        bring_up(connection)
        connection.execute("INSERT INTO shop (id, salt, created_us) VALUES (1, ?, ?)", (salt, now_us))
    finally:
        connection.close()


def hurry(database: ShopDatabase) -> None:
    """Wait for no disk and keep no journal on it, in a file that only gets its name once it is whole."""
    database.rows("PRAGMA synchronous = OFF")
    database.rows("PRAGMA locking_mode = EXCLUSIVE")
    if database.one("PRAGMA journal_mode") != "wal":
        database.one("PRAGMA journal_mode = MEMORY")


def bring_up(connection: sqlite3.Connection, before: Callable[[], None] = lambda: None) -> None:
    """Lead a file to the newest layout, in one transaction: wholly old or wholly new.

    Which layout it has is read behind the writer's lock: of two windows that open an old file at once the second finds
    it led on already. *before* is called behind the same lock, and only where there is something to do.
    """
    connection.execute("BEGIN IMMEDIATE")
    try:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version < len(migrations.STEPS):
            before()
            for statement in migrations.statements("\n".join(migrations.STEPS[version:])):
                connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {len(migrations.STEPS)}")
        connection.execute("COMMIT")
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")


@contextmanager
def faults(path: Path) -> Iterator[None]:
    """Turn the database's errors into the shop's sentences."""
    try:
        yield
    except IntegrityError as error:
        raise refused(error) from error
    except (OperationalError, DatabaseError, InterfaceError, sqlite3.DatabaseError, UnicodeDecodeError) as error:
        raise server_sentence(path, error) or _sentence(path, error) from error


def _writable(path: Path) -> bool:
    """False where the file, its folder or a journal beside it may not be written, for which SQLite has other words."""
    beside = (path, path.parent, path.with_name(path.name + "-journal"))
    effective = os.access in os.supports_effective_ids
    return all(os.access(one, os.W_OK, effective_ids=effective) for one in beside if one.exists())


def _sentence(path: Path, error: Exception) -> FileError:
    """The sentence for one database error, by SQLite's own error name."""
    cause = getattr(error, "orig", None) or error.__cause__ or error
    name = str(getattr(cause, "sqlite_errorname", ""))
    if name.startswith(("SQLITE_BUSY", "SQLITE_LOCKED")):
        return BusyError("Busy: another window was just writing. Nothing was lost; try again.")
    if name.startswith("SQLITE_FULL"):
        return FileError(f"The disk that holds {path} is full. Nothing stored was lost; free some room and try again.")
    if name == "SQLITE_READONLY_DBMOVED":
        return FileError(
            f"{path} was moved or taken away while it was open. Put it back, or leave and open it where it is."
        )
    if name.startswith("SQLITE_READONLY") or (name.startswith("SQLITE_IOERR") and not _writable(path)):
        return only_to_read(path)
    if name.startswith(("SQLITE_CANTOPEN", "SQLITE_PERM")):
        return FileError(f"{path} cannot be opened. Check that the file and its folder are yours to write.")
    no_text = isinstance(error, UnicodeDecodeError) or str(cause).startswith("Could not decode to UTF-8")
    if no_text or name.startswith(("SQLITE_CORRUPT", "SQLITE_NOTADB")):
        return damaged(path)
    if name.startswith("SQLITE_IOERR"):
        return FileError(
            f"The disk that holds {path} could not be read or written ({error}). Nothing was stored; "
            "see that it is there and has room, then try again."
        )
    if path.is_file() and path.stat().st_size == 0:
        return empty(path)
    return FileError(f"The shop file {path} gave an error: {error}. Nothing was stored; try again.")
