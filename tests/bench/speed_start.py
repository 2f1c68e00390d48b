"""What opening costs: the first paint, the memory behind it, the processor while nobody types, a command of the day."""

import re
import resource
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from tests.bench.speed_pty import Program, kept_environment
from tests.bench.speed_shops import Shops
from tests.bench.speed_table import Figure, by_turns
from tests.terminal.pty import ROOT

IDLE_SECONDS, IDLE_RUNS = 20, 3
IDLE_BASE = 1.0
"""Per cent of a core."""

KNIFE_LINE = re.compile(r"^ +-\d+ \w", re.MULTILINE)
"""A card of the board: a knife under its box."""

STILL = ("-m", "tests.bench.speed_bare", "still")
BASES = ("a bare app of one line", "our board on an empty shop")
UNWANTED = ("textual", "holidays")


@dataclass
class Starts:
    """What several starts of one program came to."""

    command: tuple[str, ...]
    seen: Callable[[str], bool]
    worked: list[float] = field(default_factory=list)
    resident: list[float] = field(default_factory=list)

    def once(self) -> float:
        """Milliseconds until the first frame with something on it."""
        program = Program(*self.command)
        try:
            first = program.first(self.seen)
            self.worked.append(program.worked_seconds() * 1000)
            self.resident.append(program.resident_mb())
        finally:
            program.close()
        return first


def board(path: Path) -> tuple[str, ...]:
    """The command that opens the board on a shop."""
    return ("-m", "queueboard", "--file", str(path), "--as", "MB")


def bare_is_there(text: str) -> bool:
    """The base has painted."""
    return "pressed 0 times" in text


def cards_are_there(text: str) -> bool:
    """The board has painted the boxes and knives of its shop."""
    return KNIFE_LINE.search(text) is not None


def first_paint(shops: Shops, runs: int) -> Iterator[Figure]:
    """Of the board at ten years' size, with its memory; a day's first start is told beside it."""
    bare = Starts(STILL, bare_is_there)
    empty = Starts(board(shops.empty), lambda text: "The shop is empty." in text)
    ten = Starts(board(shops.ten), cards_are_there)
    first_of_day = ten.once()
    empty.once()
    against_bare = by_turns(bare.once, ten.once, runs)
    ratio = _middle(ten.worked[2:]) / _middle(bare.worked[1:])
    yield Figure(
        name="first paint, ten years, 400 open knives",
        base=BASES[0],
        base_runs=tuple(against_bare[0]),
        our_runs=tuple(against_bare[1]),
        most=2.2,
        wished=2.0,
        beside=f"processor alone {ratio:.2f} times; a day's first start, which copies the file, {first_of_day:.0f} ms",
    )
    yield Figure(
        name="memory behind the first paint",
        base=BASES[0],
        base_runs=tuple(bare.resident[1:]),
        our_runs=tuple(ten.resident[2:]),
        most=1.4,
        unit="MB resident",
    )
    mark = len(ten.worked) + 1
    against_empty = by_turns(empty.once, ten.once, runs)
    ratio = _middle(ten.worked[mark:]) / _middle(empty.worked[2:])
    yield Figure(
        name="first paint, ten years, 400 open knives",
        base=BASES[1],
        base_runs=tuple(against_empty[0]),
        our_runs=tuple(against_empty[1]),
        most=1.1,
        beside=f"processor alone {ratio:.2f} times",
    )


def idle(shops: Shops, runs: int) -> Iterator[Figure]:
    """The processor while the board stands there and looks for other windows; held against a hundredth of a core."""
    bare, ours = Program(*STILL), Program(*board(shops.ten))
    try:
        bare.first(bare_is_there)
        ours.first(cards_are_there)
        shares: list[float] = []
        bare_shares: list[float] = []
        for _ in range(IDLE_RUNS):
            before, bare_before, began = ours.worked_seconds(), bare.worked_seconds(), time.perf_counter()
            ours.let_stand(IDLE_SECONDS)
            took = time.perf_counter() - began
            shares.append((ours.worked_seconds() - before) / took * 100)
            bare_shares.append((bare.worked_seconds() - bare_before) / took * 100)
    finally:
        bare.close()
        ours.close()
    whole = tuple(sum(shares) / len(shares) for _ in shares)  # a look each minute falls into one of the three
    yield Figure(
        name="idle, polling, ten years",
        base="a hundredth of a core",
        base_runs=(IDLE_BASE,) * len(whole),
        our_runs=whole,
        most=1.0,
        unit="% of a core over a minute",
        beside=f"the bare app {sum(bare_shares) / len(bare_shares):.2f} %",
    )


def day_command(shops: Shops, runs: int) -> Iterator[Figure]:
    """`day --json` in a new process, against one that only loads what any such command must load."""
    ours = [sys.executable, "-m", "queueboard", "--file", str(shops.ten), "day", "--json"]
    base = [sys.executable, "-c", "import peewee, sqlite3"]
    base_runs, our_runs = by_turns(lambda: _children_ms(base), lambda: _children_ms(ours), runs)
    loaded = _run([sys.executable, "-X", "importtime", *ours[1:]])
    found = [name for name in UNWANTED if re.search(rf"\| +{name}$", loaded, re.MULTILINE)]
    yield Figure(
        name="day --json, a new process, ten years",
        base='python -c "import peewee, sqlite3"',
        base_runs=tuple(base_runs),
        our_runs=tuple(our_runs),
        most=2.0,
        wished=1.5,
        beside=f"it loads {' and '.join(found) or 'neither textual nor holidays'}",
    )


def _children_ms(command: list[str]) -> float:
    """What the processor did for a program of its own."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    _run(command)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return (after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime) * 1000


def _run(command: list[str]) -> str:
    """Run to the end; what it said on standard error."""
    done = subprocess.run(command, cwd=ROOT, env=kept_environment(), capture_output=True, text=True, check=True)
    return done.stderr


def _middle(values: list[float]) -> float:
    return sorted(values)[len(values) // 2]
