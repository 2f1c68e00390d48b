"""What is left when the program is killed: python -m tests.bench.kills [KILLS] [SEED].

Each round a child does one kind of work over and over and says so behind each act, until it is killed with SIGKILL:
once it has said so a number of times drawn by chance, and a moment drawn by chance after that. Then the file is looked
over: all that was said to be done must be there, and it must be sound against its own history. All of it is done with
either kind of journal, whichever of them the SQLite at hand would be given. The control stores state and history in two
transactions, and must come apart.
"""

import os
import random
import select
import shutil
import signal
import warnings
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.records.auditing import audit
from queueboard.records.copies import as_written, copies_of
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests.bench.kill_works import CONTROL, WORKS, Work, prepared
from tests.bench.machine import asked, heading

LONGEST_SECONDS = 0.03
"""How long after that at most; about as long as two acts take."""


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


def round_of(work: Work, path: Path, wait_for: int, seconds: float) -> int:
    """Let a child work and kill it so long after so many acts; how many acts it said were done."""
    reads, writes = os.pipe()
    child = forked()
    if child == 0:
        os.close(reads)
        with suppress(BaseException):
            act = work.begin(path)
            for number in count():
                act(number)
                os.write(writes, b".")
        os._exit(1)
    os.close(writes)
    said = 0
    while said < wait_for and (heard := os.read(reads, 1)):
        said += len(heard)
    select.select([], [], [], seconds)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    with open(reads, "rb") as rest:  # noqa: PTH123  # an open pipe has no path
        return said + len(rest.read())


def is_sound(path: Path) -> bool:
    """True when a file opens, as a board would open it, and fits its own history."""
    shop: Shop = open_shop(path)
    try:
        return list(audit(shop.database.raw())) == [] and shop.database.one("PRAGMA integrity_check") == "ok"
    finally:
        close_shop(shop)


def files_of(path: Path) -> Iterator[bool]:
    """For each file that a round has left, whether it is good."""
    for one in (path, *path.parent.glob("taken-*.qb"), *path.parent.glob("old-?.qb"), *path.parent.glob("old-??.qb")):
        yield is_sound(one)
    for copy in copies_of(path):
        yield as_written(copy)


def kill(work: Work, kills: int, seed: int, folder: Path, *, log: bool = False) -> Tally:
    """So many rounds of one kind of work, each on a fresh shop."""
    draw, tally = random.Random(f"{seed} {work.name} {log}"), Tally()  # noqa: S311  # no secret hangs on it
    fresh = prepared(folder / "fresh", log=log)
    for number in range(kills):
        path = shutil.copytree(fresh.parent, folder / str(number)) / fresh.name
        said = round_of(work, path, draw.randint(0, work.most_said), draw.uniform(0, LONGEST_SECONDS))
        tally.kills += 1
        tally.said += said
        tally.lost += work.missing(path, said)
        tally.unsound += not all(files_of(path))
        shutil.rmtree(folder / str(number))
    shutil.rmtree(folder / "fresh")
    return tally


def main() -> None:
    """Print the table."""
    kills, seed = asked(2000, 7)
    each = -(-kills // (2 * len(WORKS)))
    print(heading("tests.bench.kills", seed))
    print(f"{'work':<40}{'kills':>7}{'said done':>11}{'lost':>6}{'unsound':>9}")
    total = Tally()
    with TemporaryDirectory() as folder:
        for work in (*WORKS, CONTROL):
            for log in (False, True):
                tally = kill(work, each, seed, Path(folder), log=log)
                _print(f"{work.name}, {'write-ahead log' if log else 'journal'}", tally)
                if work is not CONTROL:
                    total.kills += tally.kills
                    total.said += tally.said
                    total.lost += tally.lost
                    total.unsound += tally.unsound
    _print("in all, without the control", total)


def _print(name: str, tally: Tally) -> None:
    print(f"{name:<40}{tally.kills:>7}{tally.said:>11}{tally.lost:>6}{tally.unsound:>9}", flush=True)


if __name__ == "__main__":
    main()
