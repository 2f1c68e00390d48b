"""Opening and starting a shop; the handle that screens pass on and never look inside."""

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from queueboard.errors import ChangedError, FileError, LostError
from queueboard.records import copying, holding, typed_password
from queueboard.records import database as db
from queueboard.records.kept_days import KeptDays
from queueboard.records.migrations import STEPS
from queueboard.records.pointing import address_in as address_in  # noqa: PLC0414  # where a command says a shop is
from queueboard.records.pointing import checked_address, folder_name, is_address, point
from queueboard.records.reading import OpenWork
from queueboard.shop.bench_work import Minutes
from queueboard.values.actor import Actor

if TYPE_CHECKING:
    from queueboard.records.writing import Writing
    from queueboard.shop.known_customers import KnownCustomers


class Shop:
    """An open shop file. Opaque: only the shop room knows what is in it."""

    __slots__ = (
        "_database",
        "_held",
        "_salt",
        "_unsettled",
        "backup_at",
        "customers_cache",
        "minutes_cache",
        "path",
        "work_cache",
    )

    def __init__(self, path: Path, database: db.ShopDatabase, salt: str, held: holding.Hold = None) -> None:
        self.path = path
        self.backup_at: datetime | None = None
        self.minutes_cache: tuple[KeptDays, tuple[object, ...], Minutes] | None = None
        """The worked days as they were last known, what else the minutes were learned from, and the minutes."""
        self.work_cache: tuple[int, OpenWork] | None = None
        """The open work as it was last read, and the line of history that was the newest then."""
        self.customers_cache: KnownCustomers | None = None
        self._database = database
        self._salt = salt
        self._held = held
        self._unsettled = ""

    @contextmanager
    def reading(self) -> Iterator[db.ShopDatabase]:
        """One consistent view of the shop."""
        with db.faults(self.path), self._database.reading():
            self._insist_on_layout()
            yield self._database

    @contextmanager
    def writing(self, actor: Actor, operation: str) -> "Iterator[Writing]":
        """One transaction of one action; FileError where the shop may only be read.

        Where the connection was lost on the way, the action is looked for in history: it happens at most once.
        """
        from queueboard.records.writing import transaction  # a look needs none of what it knows of tables

        if self.only_read:
            raise db.only_to_read(self.path)
        self._settle()
        try:
            with db.faults(self.path), transaction(self._database, actor, operation, self._salt) as writing:
                self._insist_on_layout()
                yield writing
        except LostError:
            self._unsettled = actor.group_id
            if not self._stored_after_all():
                raise

    def _settle(self) -> None:
        """Learn what became of an action that the connection was lost under; ChangedError when it was stored."""
        if self._unsettled and self._stored_after_all():
            raise ChangedError(
                "What you did when the connection was lost was stored after all; nothing was stored now. "
                "Look again, then decide."
            )

    def _stored_after_all(self) -> bool:
        """True when the last action stands in history; LostError or BusyError while nobody can tell.

        Asked behind the writers' lock, so that a server that is still at it has ended before.
        """
        with db.faults(self.path), self._database.atomic():
            found = self._database.one("SELECT 1 FROM history WHERE group_id = ?", (self._unsettled,))
        self._unsettled = ""
        return found is not None

    def _insist_on_layout(self) -> None:
        """Refuse a file that another, newer queueboard has led to its own layout while this one had it open."""
        version = self._database.layout()
        if version > len(STEPS):
            raise db.newer(self.path, version)

    @property
    def only_read(self) -> bool:
        """True for a file that whoever opened it may not write: it is shown, and every action is refused."""
        return self._database.only_read

    @property
    def on_server(self) -> bool:
        """True for a shop in a database on a server, whose copies are made there."""
        return self._database.on_server

    def close(self) -> None:
        """Close the file, and let others put a copy in its place."""
        self._database.close()
        holding.let_go(self.path, self._held)
        self._held = None

    @property
    def database(self) -> db.ShopDatabase:
        """The connection, for the shop room's own reading and copying."""
        return self._database


def default_file() -> Path:
    """The shop file when none is named: QUEUEBOARD_FILE, else shop.qb in the user's data folder.

    FileError where no such folder is known: customers' data must not lie wherever the program happens to be started.
    """
    named = os.environ.get("QUEUEBOARD_FILE")
    if named:
        return place_named(named)
    return _data_folder() / "shop.qb"


def place_named(text: str) -> Path:
    """The shop's file as somebody named it; for the address of a server, the file on this machine that points there.

    FileError for an address with a password in it.
    """
    if not is_address(text):
        return Path(text)
    path = _data_folder() / "servers" / folder_name(text) / "shop.qb"
    point(path, checked_address(text))
    return path


def keep_password(password: str) -> None:
    """Use a password that somebody typed, for as long as the program runs."""
    typed_password.keep(password)


def _data_folder() -> Path:
    import platformdirs

    folder = platformdirs.user_data_path("queueboard")
    if not folder.is_absolute():
        raise FileError(
            f"No folder for your data is known: {folder} is no full path. Set HOME, correct XDG_DATA_HOME, "
            "or name the shop's file with --file."
        )
    return folder


def open_shop(path: Path, *, patience_ms: int = 250) -> Shop:
    """Open a shop file; a missing, foreign, newer or damaged one raises FileError with its own sentence.

    One that may only be read is opened all the same, and says so (Shop.only_read).
    patience_ms is how long an action waits for another window that is writing.
    """
    address = address_in(path)
    if address is not None:
        from queueboard.shop.on_server import open_on_server

        database, salt = open_on_server(path, address, patience_ms)
        return Shop(path, database, salt)
    db.check_library()
    db.look_before_opening(path)
    held = holding.hold(path)
    try:
        return _opened(path, patience_ms, held)
    except BaseException:
        holding.let_go(path, held)
        raise


def _opened(path: Path, patience_ms: int, held: holding.Hold) -> Shop:
    version = db.look_before_opening(path)  # once more behind the lock: a copy may have been put there meanwhile
    with db.faults(path):
        database = db.connect(path, patience_ms)
    try:
        if version < len(STEPS):
            _migrate(path, database)
        with db.faults(path):
            salt = database.one("SELECT salt FROM shop")
            database.one("SELECT count(*) FROM history WHERE id = 0")
        if salt is None:
            raise FileError(f"{path} was never finished being made. Move it away and run `queueboard start` again.")
    except FileError:
        database.close()
        raise
    return Shop(path, database, str(salt), held)


def close_shop(shop: Shop) -> None:
    """Close the file; the handle is of no use afterwards."""
    shop.close()


def _migrate(path: Path, database: db.FileDatabase) -> None:
    """Lead an older file to today's layout, after a copy of the old one beside it."""
    with db.faults(path):
        db.bring_up(database.raw(), before=lambda: _copy_aside(path))


def _copy_aside(path: Path) -> None:
    """Copy a file as it is, by a connection that only reads: the one that holds the writer's lock may not."""
    aside = path.with_name(f"{path.stem}-before-layout-{len(STEPS)}.qb")
    passing = copying.passing_name(aside)
    reader = db.connect(path, patience_ms=0)
    try:
        passing.unlink(missing_ok=True)
        copying.copy_whole(reader.raw(), passing)
        if not copying.same_content(reader.raw(), passing):
            raise db.damaged(path)
        copying.give_name(passing, aside)
    except OSError as error:
        raise FileError(
            f"The copy {aside} that is made before the shop file gets a newer layout could not be written: "
            f"{error.strerror or error}. The shop file is as it was; free some room there and open it again."
        ) from error
    finally:
        reader.close()
        with suppress(OSError):
            passing.unlink(missing_ok=True)
