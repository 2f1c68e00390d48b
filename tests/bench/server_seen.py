"""How soon a board shows what another bench does: python -m tests.bench.server_seen [MOVES] [SEED].

The invented shop with 400 open knives is taken to a server. The board stands open there in a terminal, and nobody
presses a key. A window of its own process moves one knife to and fro, each time at a moment by chance, and says when
that was stored; clocked, by the wall, is the time from there until the knife stands in its other column on the
terminal. Beside it the same over a file, as two windows on one machine have it, and what a board that nobody touches
costs its machine and the server. The control looks for what others wrote too seldom, and must be found too late.
"""

import os
import random
import select
import signal
import statistics
import sys
import time
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.board import watching
from queueboard.cli import main as queueboard
from queueboard.shop.demo import make_demo_shop
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import close_shop, open_shop
from queueboard.values.actor import Actor
from queueboard.words import Column
from tests import engines
from tests.bench.kills import forked
from tests.bench.machine import asked, heading
from tests.bench.server_picture import on_server
from tests.bench.speed_clock import worked
from tests.bench.years_open import open_more
from tests.terminal.pty import Terminal

WANTED_MS = 500
OPEN_KNIVES = 400
COLUMNS, ROWS = 120, 40
WIDTH = COLUMNS // 4
"""Of one column of the board."""

TO_AND_FRO = (Column.ON_BENCH, Column.RECEIVED)
PLACES = list(Column)
TOO_SELDOM_SECONDS = 2.0
IDLE_SECONDS = 20
MOST_PAUSE_SECONDS = 1.0
PATIENCE_SECONDS = 10
"""Behind which a move counts as not seen."""

Tag = tuple[int, int]
"""The number of a box, and that of a knife in it."""


class Board(Terminal):
    """A board that only stands there."""

    def seen(self, shown: Callable[[str], bool], seconds: float) -> float | None:
        """When the part was drawn behind which the screen fits, by this machine's clock; None when none came."""
        end, at = time.perf_counter() + seconds, time.perf_counter()
        while not shown(self.text()):
            select.select([self.process.fd], [], [], max(0.0, end - time.perf_counter()))
            at = time.perf_counter()
            if not self._read(0):
                raise EOFError(f"the board has ended:\n{self.text()}")
            if at > end:
                return None
        return at


@contextmanager
def board(path: Path, tag: Tag, program: tuple[str, ...] = ("queueboard",)) -> Iterator[Board]:
    """The board of a shop as a person starts it, or by another program, once the knife stands there."""
    words = ("--file", str(path), "--as", "MB")
    one = Board(path, columns=COLUMNS, rows=ROWS, program=(*program, *words))
    try:
        if one.seen(lambda text: stands(text, tag, TO_AND_FRO[1]), PATIENCE_SECONDS * 6) is None:
            raise TimeoutError(f"the knife is not on the board:\n{one.text()}")
        yield one
    finally:
        one.process.kill(signal.SIGKILL)
        one.process.close(force=True)


def stands(text: str, tag: Tag, column: Column) -> bool:
    """True when a knife stands in a column of the board, under the number of its box."""
    left, under = PLACES.index(column) * WIDTH, ""
    for line in text.splitlines()[3:]:
        words = line[left : left + WIDTH].strip(" ▸▹").split()
        if words and words[0].isdecimal():
            under = words[0]
        if words and (under, words[0]) == (str(tag[0]), f"-{tag[1]}"):
            return True
    return False


def moves(path: Path, tag: Tag, seed: int, reads: int, writes: int) -> None:
    """Move the knife, to and fro: at each byte that is read once more, and tell when it was stored."""
    shop, draw, number = open_shop(path, patience_ms=2000), random.Random(seed), 0  # noqa: S311  # no secret hangs on it
    while os.read(reads, 1):
        select.select([], [], [], draw.uniform(0, MOST_PAUSE_SECONDS))
        box = look(shop, datetime.now(UTC)).box(tag[0])
        knives = [knife for knife in box.knives if knife.number == tag[1]] if box is not None else []
        move_knives(shop, Actor(initials="W", now=datetime.now(UTC)), knives, TO_AND_FRO[number % 2])
        os.write(writes, f"{time.perf_counter():020.9f}".encode())
        number += 1


@contextmanager
def window(path: Path, tag: Tag, seed: int) -> Iterator[Callable[[], Callable[[], float]]]:
    """Another process that moves the knife when it is called; what it gives back waits for when that was stored."""
    (orders, to_window), (from_window, told) = os.pipe(), os.pipe()
    child = forked()
    if child == 0:
        os.close(to_window)
        try:
            moves(path, tag, seed, orders, told)
        except BaseException:  # noqa: BLE001  # a child never goes on as its parent
            traceback.print_exc()
        os._exit(0)
    os.close(told)

    def stored() -> float:
        if not select.select([from_window], [], [], PATIENCE_SECONDS)[0]:
            raise TimeoutError("the window did not say that it had stored the move")
        return float(os.read(from_window, 20) or b"nan")

    def move() -> Callable[[], float]:
        os.write(to_window, b".")
        return stored

    try:
        yield move
    finally:
        for end in (to_window, orders, from_window):
            os.close(end)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)


def shown_after(path: Path, tag: Tag, times: int, seed: int, program: tuple[str, ...] = ("queueboard",)) -> list[float]:
    """Milliseconds from each move to its place on the board, sorted; without an end for one that was not seen."""
    found = []
    with board(path, tag, program) as one, window(path, tag, seed) as move:
        for number in range(times + times % 2):
            stored = move()
            shown = partial(stands, tag=tag, column=TO_AND_FRO[number % 2])
            seen, since = one.seen(shown, MOST_PAUSE_SECONDS + PATIENCE_SECONDS), stored()
            if seen is None:
                print(f"move {number + 1} was not seen within {PATIENCE_SECONDS} s:\n{one.text()}", flush=True)
            found.append(float("inf") if seen is None else (seen - since) * 1000)
    return sorted(found)


def idle(path: Path, tag: Tag) -> str:
    """What a board that nobody touches costs, in hundredths of a core, its server's processes beside it."""
    with board(path, tag) as one:
        one.seen(lambda _: False, 3)
        processes = [one.process.pid, *(servers() if engines.on_server() else [])]
        before, began = [worked(process) for process in processes], time.perf_counter()
        one.seen(lambda _: False, IDLE_SECONDS)
        took = time.perf_counter() - began
        parts = [(worked(process) - was) / took * 100 for process, was in zip(processes, before, strict=True)]
    beside = f", the server {sum(parts[1:]):.2f} % in {len(parts) - 1} processes" if parts[1:] else ""
    return f"untouched for {IDLE_SECONDS} s the board costs {parts[0]:.2f} % of a core{beside}"


def servers() -> list[int]:
    """The processes of the server."""
    (first,) = engines.ruling().execute("SELECT pg_backend_pid()").fetchone() or (0,)
    parent = int(Path(f"/proc/{first}/stat").read_text(encoding="ascii").rpartition(")")[2].split()[1])
    children = Path(f"/proc/{parent}/task/{parent}/children").read_text(encoding="ascii").split()
    return [parent, *(int(child) for child in children if int(child) != first)]


def busy_shop(path: Path) -> Tag:
    """Make the invented shop with many open knives in a file; a knife of it that can be seen in both places."""
    close_shop(make_demo_shop(path, datetime.now(UTC)))
    open_more(path, OPEN_KNIVES)
    shop = open_shop(path)
    boxes = look(shop, datetime.now(UTC)).boxes
    close_shop(shop)
    first = next(box for box in boxes if all(box.in_column(column) for column in TO_AND_FRO))
    return first.box.number, first.in_column(TO_AND_FRO[1])[0].number


def row(name: str, found: list[float]) -> bool:
    """Print one line of the table; True when all but one of twenty were in time."""
    at = found[int(len(found) * 0.95)]
    late = sum(one > WANTED_MS for one in found)
    print(f"{name:<50}{len(found):>6}{statistics.median(found):>8.0f}{at:>10.0f}{found[-1]:>9.0f}{late:>7}", flush=True)
    return at <= WANTED_MS


def main() -> int:
    """Print the table."""
    if sys.argv[1:2] == ["--board"]:
        watching.LOOK_SECONDS = float(sys.argv[2])
        del sys.argv[1:3]
        return queueboard()
    times, seed = asked(40, 7)
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as name:
        print(heading("tests.bench.server_seen", seed))
        file = Path(name) / "file" / "shop.qb"
        file.parent.mkdir(mode=0o700)
        tag = busy_shop(file)
        shop = on_server(file, Path(name))
        close_shop(shop)
        print(f"milliseconds, {OPEN_KNIVES} open knives; late is above {WANTED_MS}")
        print(f"{'':<50}{'moves':>6}{'middle':>8}{'19 of 20':>10}{'slowest':>9}{'late':>7}")
        held = row("on a server", shown_after(shop.path, tag, times, seed))
        seldom = ("tests.bench.server_seen", "--board", str(TOO_SELDOM_SECONDS))
        control = row(f"control: looks every {TOO_SELDOM_SECONDS:.0f} s", shown_after(shop.path, tag, 12, seed, seldom))
        print(f"    {idle(shop.path, tag)}")
        os.environ[engines.ENGINE] = "sqlite"
        held &= row("two windows on one file", shown_after(file, tag, times, seed))
        print(f"    {idle(file, tag)}")
        os.environ[engines.ENGINE] = "postgresql"
    return 0 if held and not control else 1


if __name__ == "__main__":
    sys.exit(main())
