"""What is left when the power goes: python -m tests.bench.power [CUTS] [SEED].

Shops are worked in by the program itself, and every statement that it sends to SQLite is written down with its values,
those that set the file up included. The same statements then run on a disk that forgets what was not synced
(power_disk.py), through `apsw`, since the sqlite3 of Python lets nobody in between. That it is the same work is held by
the file at the end: row for row what the program's own file holds. What a cut leaves is opened by the program as on
the morning after, and all it had said was stored must be there, whole actions only, sound against its own history.

The write-ahead log runs in exclusive mode there, since such a disk has no shared memory, and is brought into the file
every 100 pages, so that cuts meet that too. The controls must lose: without waiting for the disk, and in DELETE mode,
where the last removal of the journal may be forgotten.
"""

import random
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import apsw

from queueboard.errors import QueueboardError
from queueboard.records.auditing import audit
from queueboard.records.database import Cell
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import note_box
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.undoing import steps, undo
from queueboard.words import Column
from tests.bench.kill_works import goes
from tests.bench.machine import asked, heading
from tests.bench.power_disk import Disk, Said, cuts
from tests.shop.place import NOW, box, by, counter, parcel, small_shop

Statement = tuple[str, tuple[Cell, ...]]


@dataclass
class Told:
    """What the program asked of SQLite, session by session, with what it said was stored in between."""

    sessions: list[list[Statement | Said]] = field(default_factory=list)


class Noted(sqlite3.Connection):
    """A connection that writes down what it is asked."""

    told: list[Statement | Said]

    def cursor(self, *args: object) -> sqlite3.Cursor:  # type: ignore[override]  # the class of the cursor is ours
        made = super().cursor(NotedCursor)
        made.told = self.told
        return made

    def commit(self) -> None:
        self.told.append(("COMMIT", ()))
        super().commit()

    def rollback(self) -> None:
        self.told.append(("ROLLBACK", ()))
        super().rollback()


class NotedCursor(sqlite3.Cursor):
    """A cursor that writes down what it is asked."""

    told: list[Statement | Said]

    def execute(self, sql: str, values: Sequence[Cell] = ()) -> "NotedCursor":  # type: ignore[override]  # as the program calls it
        self.told.append((sql, tuple(values)))
        super().execute(sql, values)
        return self


@contextmanager
def noted(path: Path, told: Told) -> Iterator[Shop]:
    """The shop, opened as a board opens it, all that its connection is asked written down."""
    session: list[Statement | Said] = []
    connect = sqlite3.connect

    def noting(*args: object, **kwargs: object) -> sqlite3.Connection:
        made = connect(*args, factory=Noted, **kwargs)  # type: ignore[call-overload]  # handed on as they come
        made.told = session
        return made  # type: ignore[no-any-return]  # what an untyped call gives back

    with patch("sqlite3.connect", noting):
        shop = open_shop(path)
    told.sessions.append(session)
    yield shop
    close_shop(shop)


def day(shop: Shop) -> Iterator[object]:
    """Boxes come, are noted, go and are undone; each step is one that a person was told is stored."""
    yield parcel(shop)
    yield counter(shop)
    numbers = [seen.box.number for seen in look(shop, NOW).boxes]
    yield note_box(shop, by(), box(shop, numbers[0]).box, "call before six, twice if need be")
    yield from goes(shop, numbers[0], "J")
    yield undo(shop, by(), steps(shop, "J")[0].group_id, "the wrong box")
    yield move_knives(shop, by(), box(shop, numbers[-1]).knives, Column.ON_BENCH)


DAYS = 3
"""How many there are in a shop that is worked in."""


@dataclass(frozen=True, slots=True)
class Worked:
    """A shop that was worked in for some days."""

    before: bytes
    """Its file before that."""
    told: Told
    path: Path
    """Where its file lies now."""


def worked(folder: Path, *, log: bool) -> Worked:
    """Work in a shop for some days, with or without the write-ahead log."""
    shop = small_shop(folder)
    close_shop(shop)
    with closing(sqlite3.connect(shop.path)) as raw:
        raw.execute(f"PRAGMA journal_mode = {'WAL' if log else 'DELETE'}")
    before, told = shop.path.read_bytes(), Told()
    for _ in range(DAYS):
        with noted(shop.path, told) as opened:
            for _ in day(opened):
                said = int(str(opened.database.one("SELECT count(*) FROM history")))
                told.sessions[-1].append(Said(said))
    return Worked(before, told, shop.path)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mode:
    """One way to run, and whether it must hold."""

    name: str
    log: bool = False
    instead: tuple[str, str] = ("", "")
    """A setting of the program, and what takes its place in a control."""
    holds: bool = True


MODES = (
    Mode(name="TRUNCATE, FULL: as used"),
    Mode(name="WAL, FULL: as used", log=True),
    Mode(name="control: TRUNCATE, OFF", instead=("synchronous = 2", "synchronous = 0"), holds=False),
    Mode(name="control: WAL, OFF", log=True, instead=("synchronous = 2", "synchronous = 0"), holds=False),
    Mode(name="control: DELETE, FULL", instead=("journal_mode = TRUNCATE", "journal_mode = DELETE"), holds=False),
)


def replayed(work: Worked, mode: Mode) -> Disk:
    """The same statements on a disk that forgets."""
    disk = Disk(f"forgetful, {mode.name}", {"shop.qb": work.before})
    for session in work.told.sessions:
        connection = apsw.Connection("shop.qb", flags=apsw.SQLITE_OPEN_READWRITE, vfs=disk.name)
        if mode.log:
            connection.execute("PRAGMA locking_mode = EXCLUSIVE; PRAGMA wal_autocheckpoint = 100").fetchall()
        for step in session:
            if isinstance(step, Said):
                disk.steps.append(step)
            else:
                sql, values = step
                asked_now = sql.replace(*mode.instead) if mode.instead[0] else sql
                connection.execute(asked_now, values).fetchall()
        connection.close()
    return disk


@dataclass
class Tally:
    """What became of the cuts of one mode."""

    cuts: int = 0
    lost: int = 0
    """Cuts after which something was missing that was said to be stored."""
    corrupt: int = 0
    """Cuts after which the file could not be opened, was not sound, or held half an action."""


def look_after(path: Path, said: int, whole: frozenset[int], tally: Tally) -> None:
    """Open what a cut left, as a board would the next morning."""
    tally.cuts += 1
    try:
        shop = open_shop(path)
    except QueueboardError:
        tally.corrupt += 1
        return
    try:
        raw = shop.database.raw()
        lines = int(raw.execute("SELECT count(*) FROM history").fetchone()[0])
        sound = list(audit(raw)) == [] and raw.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        tally.lost += lines < said
        tally.corrupt += not (sound and lines in whole)
    except (sqlite3.DatabaseError, UnicodeDecodeError):
        tally.corrupt += 1
    finally:
        close_shop(shop)


def cut_off(work: Worked, mode: Mode, wanted: int, seed: int, folder: Path) -> Tally:
    """Cut the power so often in the middle of the same days."""
    disk, tally = replayed(work, mode), Tally()
    whole = whole_actions(work, disk)
    for said, left in cuts(disk, wanted, random.Random(seed)):  # noqa: S311  # no secret hangs on it
        place = folder / "after"
        place.mkdir()
        for name, content in left.items():
            (place / name).write_bytes(content)
        look_after(place / "shop.qb", said, whole, tally)
        for file in place.iterdir():
            file.unlink()
        place.rmdir()
    return tally


def whole_actions(work: Worked, disk: Disk) -> frozenset[int]:
    """The lines of history at which an action ends, from the file that nothing was cut from.

    AssertionError where the statements came to another file than the program's own.
    """
    with closing(sqlite3.connect(work.path)) as ours, closing(sqlite3.connect(":memory:")) as theirs:
        theirs.deserialize(settled(disk))
        if list(ours.iterdump()) != list(theirs.iterdump()):
            raise AssertionError("the same statements came to another file")
        ends = theirs.execute("SELECT max(id) FROM history GROUP BY group_id")
        return frozenset({0, *(int(row[0]) for row in ends)})


def settled(disk: Disk) -> bytes:
    """The shop file when nothing was cut, in the form that needs no log beside it."""
    content = bytearray(disk.contents[disk.names["shop.qb"]])
    content[18:20] = b"\x01\x01"
    return bytes(content)


def main() -> None:
    """Print the table."""
    wanted, seed = asked(1000, 7)
    print(f"{heading('tests.bench.power', seed)} · the disk was written by SQLite {apsw.sqlite_lib_version()}")
    print(f"{'mode':<28}{'cuts':>7}{'lost':>7}{'corrupt':>9}")
    for log in (False, True):
        with TemporaryDirectory() as folder:
            work = worked(Path(folder), log=log)
            for mode in (mode for mode in MODES if mode.log is log):
                tally = cut_off(work, mode, wanted, seed, Path(folder))
                print(f"{mode.name:<28}{tally.cuts:>7}{tally.lost:>7}{tally.corrupt:>9}", flush=True)


if __name__ == "__main__":
    main()
