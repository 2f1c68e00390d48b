"""Several windows that change one thing at once: python -m tests.bench.writers [WRITERS] [CHANGES].

Each process reads a price, adds one and writes it back, as a person does who looks, thinks and types; where it is told
that somebody was faster it looks again. The control writes whatever it saw, without asking for the version that it saw,
and must lose some.
"""

import os
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.errors import BusyError, ChangedError
from queueboard.records.auditing import audit
from queueboard.records.cells import whole
from queueboard.records.tables import KnifeRow
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests.bench.kills import forked
from tests.bench.machine import asked, heading
from tests.shop.place import by, parcel, small_shop

PATIENCE_MS = 10_000


@dataclass(frozen=True)
class Outcome:
    """What became of it."""

    lost: int
    """Changes that were said to be stored and are not there."""
    asked_again: int
    """How often a process was told that somebody was faster, or had to wait too long."""
    sound: bool


def _opened(path: Path) -> Shop:
    """The shop, asked for until the others let go of it for a moment."""
    while True:
        with suppress(BusyError):
            return open_shop(path, patience_ms=PATIENCE_MS)


def add_ones(path: Path, times: int, *, careful: bool) -> int:
    """Add one so many times; how often it had to look again."""
    shop, again = _opened(path), 0
    for _ in range(times):
        done = False
        while not done:
            with suppress(ChangedError, BusyError):
                with shop.reading() as database:
                    ((price, version),) = database.rows("SELECT price_cents, row_version FROM knife WHERE id = 1")
                with shop.writing(by("K"), "set_price") as writing:
                    writing.change(KnifeRow, 1, whole(version) if careful else None, price_cents=whole(price) + 1)
                done = True
            again += not done
    close_shop(shop)
    return again


def race(folder: Path, writers: int, changes: int, *, careful: bool, log: bool = False) -> Outcome:
    """Let processes add ones to one price at the same time; log: in a file, with the write-ahead log."""
    shop = small_shop(folder)
    if not shop.on_server:
        shop.database.rows(f"PRAGMA journal_mode = {'WAL' if log else 'DELETE'}")
    parcel(shop)
    before = int(str(shop.database.one("SELECT price_cents FROM knife WHERE id = 1")))
    close_shop(shop)
    children = []
    for _ in range(writers):
        reads, writes = os.pipe()
        child = forked()
        if child == 0:
            with suppress(BaseException):
                os.write(writes, str(add_ones(shop.path, changes // writers, careful=careful)).encode())
            os._exit(0)
        os.close(writes)
        children.append((child, reads))
    again = 0
    for child, reads in children:
        with open(reads, "rb") as said:  # noqa: PTH123  # an open pipe has no path
            again += int(said.read())
        os.waitpid(child, 0)
    shop = open_shop(shop.path)
    after = int(str(shop.database.one("SELECT price_cents FROM knife WHERE id = 1")))
    sound = list(audit(shop.database.raw())) == []
    close_shop(shop)
    return Outcome(lost=before + changes // writers * writers - after, asked_again=again, sound=sound)


def main() -> None:
    """Print the table."""
    writers, changes = asked(8, 2000)
    print(heading("tests.bench.writers", 0))
    print(f"{'':<50}{'writers':>8}{'changes':>9}{'asked again':>13}{'lost':>6}  file")
    with TemporaryDirectory() as folder:
        for careful, log in ((True, False), (True, True), (False, False), (False, True)):
            done = race(Path(folder) / f"{careful} {log}", writers, changes, careful=careful, log=log)
            name = "with the version that was seen" if careful else "control: whatever was seen"
            name += ", write-ahead log" if log else ", journal"
            sound = "sound" if done.sound else "NOT SOUND"
            print(f"{name:<50}{writers:>8}{changes:>9}{done.asked_again:>13}{done.lost:>6}  {sound}")


if __name__ == "__main__":
    main()
