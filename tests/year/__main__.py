"""Prints what the planner's figures are worth in invented shops: python -m tests.year [--shops N]."""

import argparse
from itertools import chain
from time import process_time

from tests.year.tables import parameters, promise_tables, set_up_table, snapshot_table


def main() -> None:
    """Print every table, and how long it took."""
    asked = argparse.ArgumentParser(prog="python -m tests.year", description=__doc__)
    asked.add_argument("--shops", type=int, default=3, help="shops for each year; 100 times as many for one look")
    shops = asked.parse_args().shops
    start = process_time()
    tables = (parameters(), snapshot_table(100 * shops), promise_tables(shops), set_up_table(shops))
    for line in chain.from_iterable(chain(table, [""]) for table in tables):
        print(line, flush=True)
    print(f"{process_time() - start:.0f} s of one core")


if __name__ == "__main__":
    main()
