"""How long keys wait when the server falls silent without a word: python -m tests.bench.server_silent [ROUNDS] [SEED].

The board of the invented shop stands open in a terminal, and reaches its server by a wire. In each round nothing passes
the wire any more from a moment by chance on, for some seconds, and nobody is told; keys are pressed one after the other
meanwhile. Clocked, by the wall, is the time from each key until the terminal shows what it does: the cursor on another
row, or, where the first key is one that stores, that the server does not answer. The slowest of each round counts. The
control waits five seconds for a server's first answer, and must be found too slow.
"""

import os
import random
import statistics
import sys
import time
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.cli import main as queueboard
from queueboard.records.pointing import point
from queueboard.shop.opening import Shop, close_shop
from tests import engines
from tests.bench.machine import asked, heading
from tests.bench.server_picture import on_server
from tests.bench.server_seen import PATIENCE_SECONDS, Board, Tag, board, busy_shop
from tests.wire import Wire

WANTED_MS = 1000
SILENT_SECONDS = 4
TOO_PATIENT_SECONDS = 5.0
AWAY, BACK = "server does not answer", "server answers again"
DOWN, UP = "\x1b[B", "\x1b[A"


def cursor(text: str) -> int:
    """The row of the cursor on the board."""
    return next((number for number, line in enumerate(text.splitlines()) if line.startswith("▸")), -1)


def pressed(one: Board, keys: str, shown: "partial[bool]") -> float:
    """Milliseconds from pressing keys until the terminal shows what they do."""
    began = time.perf_counter()
    one.type(keys)
    seen = one.seen(shown, PATIENCE_SECONDS)
    if seen is None:
        raise TimeoutError(f"{keys!r} was not answered within {PATIENCE_SECONDS} s:\n{one.text()}")
    return (seen - began) * 1000


def says(text: str, *, words: str) -> bool:
    """True when a sentence stands on the screen, however it is wrapped."""
    return words in " ".join(text.split())


def left(text: str, *, row: int) -> bool:
    """True when the cursor is on another row."""
    return cursor(text) not in (row, -1)


def silent_round(one: Board, wire: Wire, tag: Tag, pause: float, *, stores: bool) -> float:
    """The slowest key of one silence; behind it the server answers again."""
    if stores:
        one.type(f"{tag[0]}-{tag[1]}")
    one.seen(lambda _: False, pause)
    with wire.silent():
        end, found = time.perf_counter() + SILENT_SECONDS, []
        if stores:
            found.append(pressed(one, "+", partial(says, words=AWAY)))
        while time.perf_counter() < end:
            for key in (DOWN, UP):
                found.append(pressed(one, key, partial(left, row=cursor(one.text()))))
                one.seen(lambda _: False, 0.03)
    if one.seen(partial(says, words=BACK), PATIENCE_SECONDS) is None:
        raise TimeoutError(f"the board did not find the server again:\n{one.text()}")
    return max(found)


def rounds(shop: Shop, wire: Wire, tag: Tag, seed: int, times: int, *program: str) -> dict[bool, list[float]]:
    """The slowest key of each round; True: of those that begin with a key that stores."""
    draw, found = random.Random(seed), {True: list[float](), False: list[float]()}  # noqa: S311  # no secret hangs on it
    path = shop.path.with_name("wired.qb")
    point(path, wire.address(engines.named(shop.path)))
    with board(path, tag, program or ("queueboard",)) as one:
        for number in range(times):
            slowest = silent_round(one, wire, tag, draw.uniform(0.5, 1), stores=number % 2 == 0)
            found[number % 2 == 0].append(slowest)
    return {stores: sorted(times) for stores, times in found.items()}


def moves(shop: Shop) -> int:
    """How many lines of history tell of knives that the board's person moved."""
    return int(str(shop.database.one("SELECT count(*) FROM history WHERE operation = 'move_knives' AND by = 'MB'")))


def row(name: str, found: list[float]) -> bool:
    """Print one line of the table; True when no key waited too long."""
    late = sum(one > WANTED_MS for one in found)
    print(f"{name:<50}{len(found):>7}{statistics.median(found):>8.0f}{found[-1]:>9.0f}{late:>6}", flush=True)
    return not late


def main() -> int:
    """Print the table."""
    if sys.argv[1:2] == ["--board"]:
        from queueboard.records import server

        server.ANSWER_SECONDS = float(sys.argv[2])
        del sys.argv[1:3]
        return queueboard()
    times, seed = asked(12, 7)
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as name, Wire() as wire:
        print(heading("tests.bench.server_silent", seed))
        file = Path(name) / "file" / "shop.qb"
        file.parent.mkdir(mode=0o700)
        tag = busy_shop(file)
        shop = on_server(file, Path(name))
        before = moves(shop)
        print(f"the slowest key of a silence of {SILENT_SECONDS} s, ms; late is above {WANTED_MS}")
        print(f"{'':<50}{'rounds':>7}{'middle':>8}{'slowest':>9}{'late':>6}")
        found = rounds(shop, wire, tag, seed, times)
        held = [row("the first key stores", found[True]), row("keys that only look", found[False])]
        patient = ("tests.bench.server_silent", "--board", str(TOO_PATIENT_SECONDS))
        control = row("control: waits 5 s for an answer", rounds(shop, wire, tag, seed, 2, *patient)[False])
        stored = moves(shop) - before
        print(f"moves that the refused keys left behind: {stored}")
        close_shop(shop)
    return 0 if all(held) and not control and not stored else 1


if __name__ == "__main__":
    sys.exit(main())
