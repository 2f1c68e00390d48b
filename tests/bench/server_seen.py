"""How soon a board shows what another window does on a server: python -m tests.bench.server_seen [MOVES] [SEED].

A board stands open and nobody presses a key. A window of its own process moves a knife, at a moment by chance, and says
when the server had stored it; clocked is the time from there until the knife stands in its other column on the screen.
"""

import asyncio
import os
import random
import statistics
import time
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.words import Column
from tests import engines
from tests.bench.kills import forked
from tests.bench.machine import asked, heading
from tests.board.dump import dump
from tests.board.host import LARGE
from tests.shop.place import NOW, box, by, counter, small_shop

WANTED_MS = 500


def moves(path: Path, number: int, seed: int, reads: int, writes: int) -> None:
    """Move the knives of a box to and fro: at each byte that is read once more, and tell when it was stored."""
    shop, draw = open_shop(path), random.Random(seed)  # noqa: S311  # no secret hangs on it
    while os.read(reads, 1):
        time.sleep(draw.uniform(0, 0.3))
        knives = box(shop, number).knives
        there = Column.TESTING if knives[0].column is Column.ON_BENCH else Column.ON_BENCH
        move_knives(shop, by("W"), knives, there)
        os.write(writes, f"{time.monotonic_ns():020}".encode())


async def watched(shop: Shop, times: int, to_window: int, from_window: int) -> list[float]:
    """Milliseconds from each move to its place on the board."""
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))
    found = []
    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        for _ in range(times):
            before = dump(app)
            os.write(to_window, b".")
            while dump(app) == before:
                await pilot.pause(0.005)
            seen = time.monotonic_ns()
            found.append((seen - int(os.read(from_window, 20))) / 1e6)
    return found


def main() -> None:
    """Print the table."""
    times, seed = asked(40, 7)
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as folder:
        shop = small_shop(Path(folder))
        number = counter(shop).box.number
        (orders, to_window), (from_window, told) = os.pipe(), os.pipe()
        close_shop(shop)
        child = forked()
        if child == 0:
            os.close(to_window)
            with suppress(BaseException):
                moves(shop.path, number, seed, orders, told)
            os._exit(0)
        shop = open_shop(shop.path)
        found = sorted(asyncio.run(watched(shop, times, to_window, from_window)))
        close_shop(shop)
        os.close(to_window)
        os.close(orders)
        os.waitpid(child, 0)
        print(heading("tests.bench.server_seen", seed))
        late = sum(one > WANTED_MS for one in found)
        print(f"{times} moves of another window: shown after {statistics.median(found):.0f} ms in the middle, ", end="")
        print(f"{found[int(times * 0.95)]:.0f} ms the slowest of twenty, {found[-1]:.0f} ms the slowest; ", end="")
        print(f"later than {WANTED_MS} ms: {late}")


if __name__ == "__main__":
    main()
