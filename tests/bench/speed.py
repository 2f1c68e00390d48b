"""Every figure of speed, each beside its base: python -m tests.bench.speed [--ten FILE] [--runs 9] [--only NAME].

Base and ours are measured by turns in one run, so that a busy or slow machine slows both: only the ratios mean
something elsewhere. A line shows the median and the middle half of either, the ratio of the medians, what was asked
for and whether it is met. What the program shows is clocked on a real pseudo-terminal of 120 by 40, by the wall less
the wait for a processor that others had; what it only works out is clocked by the processor's own time. --ten and
--one name files of `tests.bench.years`, of ten years and of one, which saves making them; they are copied, not written.

What was printed is kept in `printed/speed.txt`; --table makes the table of DEVELOPERS.md from it.
"""

import argparse
import gc
import os
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.cli import GARBAGE_FROM
from queueboard.records.reading import customers_of
from tests.bench.machine import heading
from tests.bench.speed_growth import growth
from tests.bench.speed_keys import keys
from tests.bench.speed_reads import opened, picture, questions
from tests.bench.speed_shops import Shops, size_mb
from tests.bench.speed_start import day_command, first_paint, idle
from tests.bench.speed_table import Figure, for_developers, table, worked_by_turns
from tests.terminal.pty import ROOT

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


KEPT = Path(__file__).with_name("printed") / "speed.txt"
DEVELOPERS = ROOT / "DEVELOPERS.md"
BEGINS, ENDS = "<!-- speed -->\n", "<!-- end of speed -->\n"
"""Between them stands the table in DEVELOPERS.md."""


def control(shops: Shops, runs: int) -> str:
    """A program that does the same twice must be found too slow."""
    with opened(shops.ten) as (shop, _):
        once, twice = worked_by_turns(
            lambda: customers_of(shop.database),
            lambda: (customers_of(shop.database), customers_of(shop.database)),
            runs,
        )
    slow = Figure(name="", base="", base_runs=tuple(once), our_runs=tuple(twice), most=1.5)
    return f"control: the same done twice is found too slow    {'NO' if slow.is_met else 'yes'}, {slow.ratio:.2f} times"


def with_table(text: str, printed: str) -> str:
    """DEVELOPERS.md with the figures of a printed table in their place."""
    before, _, rest = text.partition(BEGINS)
    _, _, after = rest.partition(ENDS)
    return f"{before}{BEGINS}{for_developers(printed)}\n{ENDS}{after}"


def main() -> None:
    """Measure what was asked for, and print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--ten", type=Path, help="a shop file of ten years")
    parser.add_argument("--one", type=Path, help="a shop file of one year and the same morning")
    parser.add_argument("--runs", type=int, default=9)
    parser.add_argument("--only", choices=MEASURES, action="append", help="one of them; several may be given")
    parser.add_argument("--folder", type=Path, help="where the shops are made, on the disk that is to be measured")
    parser.add_argument("--table", action="store_true", help="only put what is kept as printed into DEVELOPERS.md")
    args = parser.parse_args()
    if args.table:
        text = with_table(DEVELOPERS.read_text(encoding="utf-8"), KEPT.read_text(encoding="utf-8"))
        DEVELOPERS.write_text(text, encoding="utf-8")
        return
    gc.set_threshold(GARBAGE_FROM)  # as the program does; what is measured in this process is its work
    with TemporaryDirectory(dir=args.folder) as folder:
        shops = Shops(Path(folder), args.ten, args.one)
        runs_not_seed = heading("tests.bench.speed", args.runs).replace("seed", "runs")
        print(f"{runs_not_seed} · file of {size_mb(shops.ten)} MB")
        for name in args.only or MEASURES:
            print(f"# {name}, load of the machine {os.getloadavg()[0]:.1f}")
            print(table(MEASURES[name](shops, args.runs)), flush=True)
        print(control(shops, args.runs))


if __name__ == "__main__":
    main()
