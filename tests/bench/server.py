"""What a shop on a server is worth: python -m tests.bench.server [KILLS] [MOVES] [SEED].

Windows race for one knife, each with the version that it saw; the control writes whatever it saw, and must lose some.
Then the server is killed with SIGKILL, all its processes at once, while windows work: all that was said to be saved
must be there, and nothing twice, though each window goes on with what it was told had failed. The control asks the
server not to wait for its disk, and must lose some.
"""

import os
import random
import select
import signal
from contextlib import closing, suppress
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.errors import ChangedError, FileError
from queueboard.records.auditing import audit
from queueboard.records.cells import whole
from queueboard.shop.looking import look
from queueboard.shop.noting import note_box
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests import engines
from tests.bench.kills import forked
from tests.bench.machine import asked, heading
from tests.bench.writers import HEADING, PATIENCE_MS, line, race
from tests.shop.place import NOW, by, parcel, small_shop

WINDOWS = 3
PAUSE_SECONDS = 0.05
"""How long a window waits before it tries again what was refused."""


@dataclass
class Tally:
    """What became of the windows' acts."""

    kills: int = 0
    said: int = 0
    """Acts that were said to be done."""
    lost: int = 0
    twice: int = 0
    sound: bool = True


def works(path: Path, window: int, writes: int, *, careless: bool) -> None:
    """Note after note on a box of one's own, each told as done once it is; what failed is tried again."""
    shop, parent = _opened(path), os.getppid()
    for number in count():
        while os.getppid() == parent and not _noted(shop, window, f"window {window} note {number}", careless=careless):
            select.select([], [], [], PAUSE_SECONDS)
        os.write(writes, b".")


def _opened(path: Path) -> Shop:
    while True:
        with suppress(FileError):
            return open_shop(path, patience_ms=PATIENCE_MS)


def _noted(shop: Shop, window: int, text: str, *, careless: bool) -> bool:
    """True when it was done, or when the shop says that it was done before although nobody heard."""
    try:
        if careless:
            with shop.reading():
                pass
            shop.database.run("SET synchronous_commit = off")
        note_box(shop, by(f"W{window}"), look(shop, NOW).boxes[window].box, text)
    except ChangedError:
        return True
    except FileError:
        return False
    return True


def kill(path: Path, kills: int, seed: int, *, careless: bool) -> Tally:
    """Let windows work, and kill the server under them so many times."""
    draw, tally = random.Random(seed), Tally(kills=kills)  # noqa: S311  # no secret hangs on it
    children = []
    for window in range(WINDOWS):
        reads, writes = os.pipe()
        child = forked()
        if child == 0:
            with suppress(BaseException):
                works(path, window, writes, careless=careless)
            os._exit(1)
        os.close(writes)
        children.append((child, reads))
    said = [0] * WINDOWS
    for _ in range(kills):
        said[0] += len(os.read(children[0][1], 1))  # somebody works again
        select.select([], [], [], draw.uniform(0, 0.3))
        engines.kill()
    for child, _ in children:
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
    for window, (_, reads) in enumerate(children):
        with open(reads, "rb") as rest:  # noqa: PTH123  # an open pipe has no path
            said[window] += len(rest.read())
    return _held(path, said, tally)


def _held(path: Path, said: list[int], tally: Tally) -> Tally:
    """Hold what was said to be done against what is there."""
    tally.said = sum(said)
    shop = _opened(path)
    told = "SELECT text, count(*) FROM personal WHERE field = 'note' AND side = 'after' GROUP BY text"
    with closing(shop):
        there = {str(text): whole(times) for text, times in shop.database.rows(told)}
        tally.sound = list(audit(shop.database.raw())) == []
    wanted = [f"window {window} note {number}" for window, acts in enumerate(said) for number in range(acts)]
    tally.lost = sum(text not in there for text in wanted)
    tally.twice = sum(times > 1 for times in there.values())
    return tally


def _three_boxes(folder: Path) -> Path:
    shop = small_shop(folder)
    for _ in range(WINDOWS):
        parcel(shop)
    close_shop(shop)
    engines.settled()
    return shop.path


def main() -> None:
    """Print the tables."""
    kills, moves, seed = asked(25, 2000, 7)
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as folder:
        print(heading("tests.bench.server", seed))
        print(HEADING)
        for careful in (True, False):
            done = race(Path(folder) / f"race {careful}", 8, moves, careful=careful)
            name = "with the version that was seen" if careful else "control: whatever was seen"
            print(line(name, 8, moves, done), flush=True)
        print(f"{'':<50}{'kills':>8}{'said done':>11}{'lost':>6}{'twice':>7}")
        for careless in (False, True):
            tally = kill(_three_boxes(Path(folder) / f"kill {careless}"), kills, seed, careless=careless)
            name = "control: the server does not wait for its disk" if careless else f"{WINDOWS} windows at work"
            sound = "sound" if tally.sound else "NOT SOUND"
            print(f"{name:<50}{tally.kills:>8}{tally.said:>11}{tally.lost:>6}{tally.twice:>7}  {sound}", flush=True)


if __name__ == "__main__":
    main()
