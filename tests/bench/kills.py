"""What is left when the program is killed: python -m tests.bench.kills [KILLS] [SEED].

Each round a child does one kind of work over and over and says so behind each, until it is killed with SIGKILL after a
moment drawn by chance. Then the file is looked over: all that was said to be done must be there, and it must be sound
against its own history. The control stores state and history in two transactions, and must come apart.
"""

import os
import random
import select
import shutil
import signal
import sqlite3
import sys
import warnings
from collections import Counter
from collections.abc import Callable
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import timedelta
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.records.auditing import audit
from queueboard.records.copies import as_written, copies_of
from queueboard.records.tables import KnifeRow
from queueboard.records.writing import Values
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.keeping import copy_to, daily_copy
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import note_box
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.receiving import receive_box
from queueboard.shop.restoring import restore
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy
from tests.bench.machine import heading
from tests.records.test_migrating import OLDER, old_file
from tests.shop.place import NOW, by, chef, parcel, small_shop

LONGEST_SECONDS = 0.25
KILLER = "K"

Work = Callable[[Path], Callable[[int], object]]
"""Given the shop file, in the child: what is done over and over."""


def noting(path: Path) -> Callable[[int], object]:
    """Another note on the same box."""
    shop = open_shop(path)
    return lambda number: note_box(shop, by(KILLER), look(shop, NOW).boxes[0].box, f"note {number}")


def moving(path: Path) -> Callable[[int], object]:
    """A whole box to and fro."""
    shop = open_shop(path)
    to = (Column.ON_BENCH, Column.TESTING)
    return lambda number: move_knives(shop, by(KILLER), look(shop, NOW).boxes[0].knives, to[number % 2])


def receiving(path: Path) -> Callable[[int], object]:
    """A box comes in: many rows in one transaction."""
    shop = open_shop(path)
    new = NewBox(customer_id=1, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=9, knives=(chef(mark="nick"),) * 9)
    return lambda _: receive_box(shop, by(KILLER), new)


def copying(path: Path) -> Callable[[int], object]:
    """The copy of another day, old ones thinned out."""
    shop = open_shop(path)
    return lambda number: daily_copy(shop, NOW + timedelta(days=number))


def restoring(path: Path) -> Callable[[int], object]:
    """Back to a copy, again and again."""
    return lambda number: restore(path, path.with_name("copy.qb"), by("R", minutes=number))


def taking(path: Path) -> Callable[[int], object]:
    """An export taken into another new file."""
    return lambda number: take_in(path.with_name(f"taken-{number}.qb"), path.with_name("out.jsonl"), by())


def leading_on(path: Path) -> Callable[[int], object]:
    """Another file of an older layout led to today's."""

    def lead(number: int) -> None:
        old = path.with_name(f"old-{number}.qb")
        # The copying is not what is tried here: half a file would be no file of ours.
        Path(shutil.copyfile(path.with_name("older.qb"), path.with_name("half"))).replace(old)
        close_shop(open_shop(old))

    return lead


def in_two_transactions(path: Path) -> Callable[[int], object]:
    """The control: the state in one transaction, its line of history in the next."""
    shop = open_shop(path)

    def change(number: int) -> None:
        before = _knife(shop)
        shop.database.rows(
            "UPDATE knife SET price_cents = ?, row_version = row_version + 1 WHERE id = 1", (number % 9000,)
        )
        with shop.writing(by(KILLER), "set_price") as writing:
            writing._remember(KnifeRow, 1, before, writing.row(KnifeRow, 1))

    return change


def _knife(shop: Shop) -> Values:
    with shop.reading() as database:
        (row,) = KnifeRow.select().where(KnifeRow.id == 1).dicts().execute(database)
    return dict(row)


WORKS: tuple[Work, ...] = (noting, moving, receiving, copying, restoring, taking, leading_on)


@dataclass
class Tally:
    """What became of the rounds of one kind of work."""

    kills: int = 0
    said: int = 0
    """Acts that were said to be done."""
    lost: int = 0
    unsound: int = 0


def forked() -> int:
    """os.fork, without Python's warning of threads: the child opens its own file and shares nothing with them."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        return os.fork()


def round_of(work: Work, path: Path, seconds: float) -> int:
    """Let a child work and kill it after so many seconds; how many acts it said were done."""
    reads, writes = os.pipe()
    child = forked()
    if child == 0:
        os.close(reads)
        with suppress(BaseException):
            act = work(path)
            for number in count():
                act(number)
                os.write(writes, b".")
        os._exit(1)
    os.close(writes)
    select.select([], [], [], seconds)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    with open(reads, "rb") as said:  # noqa: PTH123  # an open pipe has no path
        return len(said.read())


def prepared(folder: Path) -> Path:
    """A shop file with a box, a copy, an export and a file of an older layout beside it."""
    shop = small_shop(folder)
    parcel(shop)
    copy_to(shop, shop.path.with_name("copy.qb"), NOW)
    write_out(shop, shop.path.with_name("out.jsonl"))
    close_shop(shop)
    old_file(OLDER[-1], shop.path.with_name("older.qb"))
    return shop.path


def done_by(path: Path) -> int:
    """How many acts of the child are in a file's history."""
    with closing(sqlite3.connect(path)) as raw:
        found = raw.execute("SELECT count(DISTINCT group_id) FROM history WHERE by = ?", (KILLER,)).fetchone()
    return int(found[0])


def is_sound(path: Path) -> bool:
    """True when a file opens, as a board would open it, and fits its own history."""
    shop: Shop = open_shop(path)
    try:
        return list(audit(shop.database.raw())) == [] and shop.database.one("PRAGMA integrity_check") == "ok"
    finally:
        close_shop(shop)


def kill(work: Work, kills: int, seed: int, folder: Path) -> Tally:
    """So many rounds of one kind of work, each on a fresh shop."""
    draw, tally = random.Random(seed), Tally()  # noqa: S311  # no secret hangs on it
    fresh = prepared(folder / "fresh")
    for number in range(kills):
        path = shutil.copytree(fresh.parent, folder / str(number)) / fresh.name
        said = round_of(work, path, draw.uniform(0.005, LONGEST_SECONDS))
        tally.kills += 1
        tally.said += said
        beside = [*path.parent.glob("taken-*.qb"), *path.parent.glob("old-?.qb"), *path.parent.glob("old-??.qb")]
        whole = [is_sound(one) for one in (path, *beside)] + [as_written(copy) for copy in copies_of(path)]
        tally.unsound += not all(whole)
        if work in {noting, moving, receiving}:
            tally.lost += max(0, said - done_by(path))
        elif work is taking:
            tally.lost += max(0, said - len(list(path.parent.glob("taken-*.qb"))))
        shutil.rmtree(folder / str(number))
    shutil.rmtree(folder / "fresh")
    return tally


def main() -> None:
    """Print the table."""
    kills, seed = (int(word) for word in (*sys.argv[1:], "2000", "7")[:2])
    print(heading("tests.bench.kills", seed))
    print(f"{'work':<22}{'kills':>7}{'said done':>11}{'lost':>6}{'unsound':>9}")
    total = Counter[str]()
    with TemporaryDirectory() as folder:
        for work in (*WORKS, in_two_transactions):
            tally = kill(work, kills // len(WORKS) + 1, seed, Path(folder))
            name = work.__name__.replace("_", " ") + (" (control)" if work is in_two_transactions else "")
            print(f"{name:<22}{tally.kills:>7}{tally.said:>11}{tally.lost:>6}{tally.unsound:>9}")
            if work is not in_two_transactions:
                total.update(kills=tally.kills, said=tally.said, lost=tally.lost, unsound=tally.unsound)
    print(f"{'in all':<22}{total['kills']:>7}{total['said']:>11}{total['lost']:>6}{total['unsound']:>9}")


if __name__ == "__main__":
    main()
