"""Going back to a copy: verified whole before anything moves, nothing deleted, and history tells of it."""

import sqlite3
from pathlib import Path

from queueboard.errors import FileError
from queueboard.records import database as db
from queueboard.records import erased_list, holding, looking_over, putting_back
from queueboard.records.copies import as_written, has_sum
from queueboard.records.keeping_tables import RestoredRow
from queueboard.records.pointing import insist_on_file
from queueboard.records.writing import Writing
from queueboard.shop.erasing import erase_again, lists_for
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.slotted import dataclass
from queueboard.values.actor import Actor

PATIENCE_MS = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Restored:
    """What became of it."""

    aside: Path | None
    """Where the file lies that stood there before; None when there was none."""
    lines_kept: int
    """Lines of history in the copy."""
    lines_beyond: int | None
    """Lines of history that only the file before had; None where nobody can tell."""
    erased_again: int
    """Customers who were erased since the copy was made, and are erased in it now."""


def restore(path: Path, copy: Path, actor: Actor) -> Restored:
    """Put a verified copy in the place of the shop file; the present file is moved aside with all that belongs to it.

    FileError, with the present file as it was, for a copy that is damaged, not as it was written, foreign or newer;
    BusyError while anybody has the file open.
    """
    insist_on_file(path)
    db.check_library()
    db.look_before_opening(copy)
    if path.exists() and copy.samefile(path):
        raise FileError(f"{copy} is the shop file itself. Name the copy to go back to.")
    if has_sum(copy) and not as_written(copy):
        raise _not_good(copy, "it is not as it was written any more")
    try:
        with holding.alone(path), putting_back.workshop(path) as folder:
            made = folder / "made.qb"
            putting_back.fetch(copy, made)
            return _put_back(path, copy, made, actor)
    except OSError as error:
        raise FileError(
            f"{copy} could not be put in the place of {path}: {error.strerror or error}. The shop file is as it was; "
            "free some room there and try again."
        ) from error


def _put_back(path: Path, copy: Path, made: Path, actor: Actor) -> Restored:
    aside = putting_back.aside_folder(path, actor.now) if putting_back.anything_at(path) else None
    with db.faults(copy):
        database = db.connect(made, PATIENCE_MS)
        try:
            db.bring_up(database.raw())
            found = looking_over.look_over(database.raw())
            if not found.sound:
                raise _not_good(copy, "; ".join((*found.integrity, *found.history)) or "its rows do not fit")
            if db.has_wal_reset_fix(sqlite3.sqlite_version_info):
                database.one("PRAGMA journal_mode = WAL")
            if aside is not None:
                putting_back.settle(path, aside)
            head = str(database.one("SELECT hash FROM history ORDER BY id DESC LIMIT 1") or "")
            beyond = putting_back.lines_beyond(path, found.lines, head)
            erased = lists_for(path, copy) | putting_back.erased_in(path)
            shop = Shop(made, database, str(database.one("SELECT salt FROM shop")))
            note_restored(shop, actor, copy, aside, found.lines, beyond)
            again = erase_again(shop, actor, erased)
        finally:
            database.close()
    putting_back.put_in_place(made, path, path.parent if aside is None else aside)
    erased_list.add_to(erased_list.list_in(path.parent, path), erased)
    return Restored(aside=aside, lines_kept=found.lines, lines_beyond=beyond, erased_again=again)


@operation(step=False, for_good=True)
def note_restored(writing: Writing, copy: Path, aside: Path | None, lines_kept: int, lines_beyond: int | None) -> None:
    """Write down in history that a copy was put in the place of the file."""
    writing.insert(
        RestoredRow,
        from_file=_as_text(copy),
        aside="" if aside is None else _as_text(aside),
        lines_kept=lines_kept,
        lines_beyond=lines_beyond,
        restored_us=writing.now_us,
        restored_by=writing.actor.initials,
    )


def _as_text(path: Path) -> str:
    """A path as it can be stored: a name may hold bytes that are no letters."""
    return str(path).encode(errors="replace").decode()[:1000]


def _not_good(copy: Path, why: str) -> FileError:
    return FileError(f"{copy} is no good copy: {why}. Nothing was changed; go back to another copy.")
