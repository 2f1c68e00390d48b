"""What of random damage is noticed: python -m tests.bench.damage [FLIPS] [SEED].

Each single bit of a shop file is turned in a copy of its own. A turn counts when it changes what stands in the file, or
makes it unreadable; what stands in it is read straight from SQLite, without our program. The control is SQLite's own
integrity_check, which misses most.
"""

import random
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.errors import FileError
from queueboard.shop.checking import check
from queueboard.shop.demo import make_demo_shop
from queueboard.shop.opening import close_shop
from tests.bench.machine import asked, heading
from tests.shop.place import NOW


@dataclass
class Tally:
    """What became of the turned bits."""

    turned: int = 0
    changed: int = 0
    """Turns that changed what stands in the file."""
    noticed: int = 0
    by_sqlite: int = 0
    """Of those that changed something, noticed by integrity_check alone."""
    missed: list[int] | None = None
    """Bits whose change was not noticed."""


def content(path: Path) -> object:
    """All that stands in a file, byte for byte; the error's name where it cannot be read."""
    with closing(sqlite3.connect(f"file:{path}?mode=ro&immutable=1", uri=True)) as raw:
        raw.text_factory = bytes
        try:
            rows = [raw.execute(f"PRAGMA {what}").fetchall() for what in ("application_id", "user_version")]
            master = raw.execute("SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY rowid").fetchall()
            names = [b"sqlite_sequence", *(name for kind, name, *_ in master if kind == b"table")]
            tables = [raw.execute(f"SELECT * FROM {name.decode()} ORDER BY rowid").fetchall() for name in names]
        except (sqlite3.DatabaseError, ValueError) as error:
            return type(error).__name__
        return rows, master, tables


def sqlite_notices(path: Path) -> bool:
    """True when SQLite's own check finds something."""
    with closing(sqlite3.connect(f"file:{path}?mode=ro&immutable=1", uri=True)) as raw:
        try:
            return bool(raw.execute("PRAGMA integrity_check(1)").fetchone() != ("ok",))
        except (sqlite3.DatabaseError, ValueError):
            return True


def we_notice(path: Path) -> bool:
    """True when the check command would not call the file sound."""
    try:
        return not check(path, NOW).sound
    except FileError:
        return True


def turn_bits(whole: bytes, wanted: int, seed: int, folder: Path) -> Tally:
    """Turn single bits until *wanted* of them have changed something."""
    draw, tally, missed = random.Random(seed), Tally(), []  # noqa: S311  # a test draws, nobody guards a secret
    path = folder / "turned.qb"
    path.write_bytes(whole)
    before = content(path)
    while tally.changed < wanted:
        bit = draw.randrange(len(whole) * 8)
        turned = bytearray(whole)
        turned[bit // 8] ^= 1 << bit % 8
        path.write_bytes(turned)
        tally.turned += 1
        if content(path) == before:
            continue
        tally.changed += 1
        tally.by_sqlite += sqlite_notices(path)
        if we_notice(path):
            tally.noticed += 1
        else:
            missed.append(bit)
    tally.missed = missed
    return tally


def main() -> None:
    """Print the table."""
    wanted, seed = asked(2000, 7)
    with TemporaryDirectory() as folder:
        shop = make_demo_shop(Path(folder) / "demo.qb", NOW)
        close_shop(shop)
        tally = turn_bits(shop.path.read_bytes(), wanted, seed, Path(folder))
    print(heading("tests.bench.damage", seed))
    for says, count in (
        ("bits turned, one at a time", tally.turned),
        ("that changed what stands in the file", tally.changed),
        ("of these noticed by `queueboard check`", tally.noticed),
        ("control: by SQLite's integrity_check alone", tally.by_sqlite),
    ):
        print(f"{says:<44} {count:>7}")
    if tally.missed:
        print("missed bits:", *tally.missed)


if __name__ == "__main__":
    main()
