"""Every figure of speed, each beside its base: python -m tests.bench.speed [--ten FILE] [--runs 9] [--only NAME].

Base and ours are measured by turns in one run, so that a busy or slow machine slows both: only the ratios mean
something elsewhere. A line shows the median and the middle half of either, the ratio of the medians, what was asked
for and whether it is met. What the program shows is clocked on a real pseudo-terminal of 120 by 40; what it only works
out is clocked by the processor's own time, in this process. --ten names a file of `tests.bench.years`, which saves
making one; it is copied, not written.
"""

import argparse
import os
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.machine import heading
from tests.bench.speed_growth import growth
from tests.bench.speed_keys import keys
from tests.bench.speed_reads import picture, questions
from tests.bench.speed_shops import Shops, size_mb
from tests.bench.speed_start import day_command, first_paint, idle
from tests.bench.speed_table import Figure, table

MEASURES: dict[str, Callable[[Shops, int], Iterator[Figure]]] = {
    "paint": first_paint,
    "picture": picture,
    "questions": questions,
    "growth": growth,
    "keys": keys,
    "idle": idle,
    "day": day_command,
}
"""By the name that --only takes."""


def main() -> None:
    """Measure what was asked for, and print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--ten", type=Path, help="a shop file of ten years")
    parser.add_argument("--runs", type=int, default=9)
    parser.add_argument("--only", choices=MEASURES, action="append", help="one of them; several may be given")
    parser.add_argument("--folder", type=Path, help="where the shops are made, on the disk that is to be measured")
    args = parser.parse_args()
    with TemporaryDirectory(dir=args.folder) as folder:
        shops = Shops(Path(folder), args.ten)
        figures = [figure for name in args.only or MEASURES for figure in MEASURES[name](shops, args.runs)]
        load = os.getloadavg()[0]
        print(f"{heading('tests.bench.speed', args.runs)} · load {load:.1f} · {size_mb(shops.ten)} MB")
    print(table(figures))


if __name__ == "__main__":
    main()
