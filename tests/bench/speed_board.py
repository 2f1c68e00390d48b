"""The board as it is, which besides writes down how long each action waited for the disk.

`python -m tests.bench.speed_board TIMES ...` opens `queueboard ...`; to the file TIMES goes a line for each action: the
milliseconds of its whole transaction, and those from its last change until it was safe. Both by the clock that the
whole key is measured with, so that what other programs took is not taken off twice.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from queueboard.cli import main
from queueboard.records.writing import Writing
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor
from tests.bench.speed_clock import unhindered

_writing = Shop.writing


def _timed(times: Path) -> None:
    """Let every transaction of this process leave its two times in a file."""

    @contextmanager
    def writing(self: Shop, actor: Actor, operation: str) -> Iterator[Writing]:
        began = unhindered()
        with _writing(self, actor, operation) as open_one:
            yield open_one
            changed = unhindered()
        safe = unhindered()
        with times.open("a", encoding="ascii") as file:
            file.write(f"{(safe - began) * 1000:.3f} {(safe - changed) * 1000:.3f}\n")

    Shop.writing = writing  # type: ignore[method-assign]  # the one place through which every action goes


if __name__ == "__main__":
    _timed(Path(sys.argv.pop(1)))
    sys.exit(main())
