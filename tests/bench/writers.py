"""Several windows that move one knife at once: python -m tests.bench.writers [WRITERS] [MOVES].

Each process looks where the knife is and moves it on, from the bench to ready or back, as a person does who looks
and presses a key; where it is told that somebody was faster it looks again. Each move back makes the knife's rework one
more than was seen, so that a move that was written over is missing there. The control writes whatever it saw, without
asking for the version that it saw, and must lose some.
"""

import os
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.errors import BusyError, ChangedError
from queueboard.records.auditing import audit
from queueboard.records.cells import whole
from queueboard.records.connection import Cell
from queueboard.records.row import Row
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.words import Column
from tests.bench.kills import forked
from tests.bench.machine import asked, heading
from tests.shop.place import by, parcel, small_shop

PATIENCE_MS = 10_000


@dataclass(frozen=True)
class Outcome:
    """What became of it."""

    lost: int
    """Moves back to the bench that were said to be stored and are not counted."""
    back: int
    """Moves back to the bench that were said to be stored."""
    asked_again: int
    """How often a process was told that somebody was faster, or had to wait too long."""
    sound: bool


def _opened(path: Path) -> Shop:
    """The shop, asked for until the others let go of it for a moment."""
    while True:
        with suppress(BusyError):
            return open_shop(path, patience_ms=PATIENCE_MS)


def _forget_versions() -> None:
    """From here on nobody in this process asks for the version that was seen."""
    change = Writing.change

    def whatever(writing: Writing, table: type[Row], row_id: int, _: int | None, **values: Cell) -> None:
        change(writing, table, row_id, None, **values)

    Writing.change = whatever  # type: ignore[method-assign,assignment]  # the child that does so ends without coming back
    rows.fresh_knife = lambda writing, knife: None  # noqa: ARG005  # as it is called


def move_on(path: Path, times: int) -> tuple[int, int]:
    """Move the knife to where it was not, so many times; how often back to the bench, and how often looked again."""
    shop, back, again = _opened(path), 0, 0
    for _ in range(times):
        done = False
        while not done:
            with suppress(ChangedError, BusyError):
                with shop.reading() as database:
                    knife = rows.knives_of_box(database, 1)[0]
                to = Column.READY if knife.column is Column.ON_BENCH else Column.ON_BENCH
                move_knives(shop, by("K"), [knife], to)
                done = True
                back += to is Column.ON_BENCH
            again += not done
    close_shop(shop)
    return back, again


def _shop_of_one(folder: Path, *, log: bool) -> Path:
    shop = small_shop(folder)
    if not shop.on_server:
        shop.database.rows(f"PRAGMA journal_mode = {'WAL' if log else 'DELETE'}")
    move_knives(shop, by(), parcel(shop, knives=1).knives, Column.ON_BENCH)
    close_shop(shop)
    return shop.path


def race(folder: Path, writers: int, moves: int, *, careful: bool, log: bool = False) -> Outcome:
    """Let processes move one knife at the same time; log: in a file, with the write-ahead log."""
    path, children = _shop_of_one(folder, log=log), list[tuple[int, int]]()
    for _ in range(writers):
        reads, writes = os.pipe()
        child = forked()
        if child == 0:
            with suppress(BaseException):
                if not careful:
                    _forget_versions()
                os.write(writes, "{} {}".format(*move_on(path, moves // writers)).encode())
            os._exit(0)
        os.close(writes)
        children.append((child, reads))
    back = again = 0
    for child, reads in children:
        with open(reads, "rb") as said:  # noqa: PTH123  # an open pipe has no path
            went_back, looked_again = map(int, said.read().split())
        back, again = back + went_back, again + looked_again
        os.waitpid(child, 0)
    shop = open_shop(path)
    rework = whole(shop.database.one("SELECT rework FROM knife WHERE id = 1"))
    sound = list(audit(shop.database.raw())) == []
    close_shop(shop)
    return Outcome(lost=back - rework, back=back, asked_again=again, sound=sound)


HEADING = f"{'':<50}{'writers':>8}{'moves':>7}{'back':>6}{'asked again':>13}{'lost':>6}"


def line(name: str, writers: int, moves: int, done: Outcome) -> str:
    """One line of the table."""
    figures = f"{writers:>8}{moves:>7}{done.back:>6}{done.asked_again:>13}{done.lost:>6}"
    return f"{name:<50}{figures}  {'sound' if done.sound else 'NOT SOUND'}"


def main() -> None:
    """Print the table."""
    writers, moves = asked(8, 2000)
    print(heading("tests.bench.writers", 0))
    print(f"{HEADING}  file")
    with TemporaryDirectory() as folder:
        for careful, log in ((True, False), (True, True), (False, False), (False, True)):
            done = race(Path(folder) / f"{careful} {log}", writers, moves, careful=careful, log=log)
            name = "with the version that was seen" if careful else "control: whatever was seen"
            print(line(f"{name}, {'write-ahead log' if log else 'journal'}", writers, moves, done), flush=True)


if __name__ == "__main__":
    main()
