"""Everything in a shop file written out as lines of JSON, and taken into a new file."""

import sqlite3
from contextlib import AbstractContextManager, closing
from pathlib import Path

from queueboard.errors import FileError
from queueboard.plainfiles import insist_on_plain_file
from queueboard.records import database as db
from queueboard.records import looking_over
from queueboard.records.line_file import Reading, WrongLineError, fill, lay_out, write_lines
from queueboard.records.making import making, there_already
from queueboard.records.migrations import STEPS
from queueboard.records.pointing import address_in
from queueboard.records.schema_v1 import APPLICATION_ID
from queueboard.shop.erasing import erase_again, lists_for
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor

PATIENCE_MS = 10_000
ELSEWHERE = "Name a new file for it."


def write_out(shop: Shop, target: Path) -> int:
    """Write all of a sound shop file into a new file that only the owner may read; how many rows that was."""
    if target.exists():
        raise there_already(target, ELSEWHERE)
    with shop.reading() as database, making(target, ELSEWHERE) as made:
        found = looking_over.look_over(database.raw())
        if not found.sound:
            raise db.damaged(shop.path)
        try:
            with made.open("wb") as out:
                return write_lines(database.raw(), out)
        except OSError as error:
            raise FileError(
                f"{target} could not be written: {error.strerror or error}. The shop file is whole; "
                "free some room there, or name another place."
            ) from error


def take_in(path: Path, source: Path, actor: Actor) -> tuple[int, int]:
    """Make a new shop file of what was written out; how many lines of history it has, and who was erased in it again.

    A file in which anything is not as it was written is refused whole, with the line; so is one that is complete but
    does not fit its own history. An existing shop file is never written over.
    """
    db.check_library()
    address = address_in(path)
    if address is None and path.exists():
        raise there_already(path)
    try:
        insist_on_plain_file(source, "a shop written out", "Name a file that `queueboard export` wrote.")
        with source.open("rb") as lines, _new(path, address) as made, db.faults(path):
            return _fill(made, Reading(lines), source), _erase(made, lists_for(path, source), actor)
    except WrongLineError as error:
        raise FileError(
            f"{source}: {error}. Nothing was taken in; write it out again where it came from, or take another."
        ) from error
    except OSError as error:
        raise FileError(f"{source} cannot be read: {error.strerror or error}.") from error


def _new(path: Path, address: str | None) -> AbstractContextManager[Path]:
    """Where the file is made: under a passing name, or, for a shop on a server, in a folder that is thrown away."""
    if address is None:
        return making(path)
    from queueboard.shop.on_server import new_on_server

    return new_on_server(path, address)


def _erase(made: Path, hashes: frozenset[str], actor: Actor) -> int:
    """Erase who was erased after this was written; without anybody not a byte is changed."""
    if not hashes:
        return 0
    database = db.connect(made, PATIENCE_MS)
    try:
        return erase_again(Shop(made, database, str(database.one("SELECT salt FROM shop"))), actor, hashes)
    finally:
        database.close()


def _fill(made: Path, reading: Reading, source: Path) -> int:
    reading.head()
    if not 1 <= reading.layout <= len(STEPS):
        raise db.newer(source, reading.layout)
    with closing(sqlite3.connect(made, isolation_level=None)) as connection:
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        if db.has_wal_reset_fix(sqlite3.sqlite_version_info):
            connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("BEGIN IMMEDIATE")
        lay_out(connection, reading.layout)
        fill(connection, reading)
        connection.execute("COMMIT")
        db.bring_up(connection)
        found = looking_over.look_over(connection)
    if not found.sound:
        why = "; ".join((*found.integrity, *found.history)) or "its rows do not fit each other"
        raise FileError(f"{source} is complete, but what it holds is not: {why}. Nothing was taken in.")
    return found.lines
