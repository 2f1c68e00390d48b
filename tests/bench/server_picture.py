"""How fast a big shop on a server is read for the board: python -m tests.bench.server_picture [KNIVES] [ROUNDS].

A shop of ten years is written, taken to a server, and its open work read again and again: by the bare driver, which
runs the very statements and keeps the rows; by the shop, which makes values of them; and as a whole picture with its
plan. The middle and the slowest of twenty are printed, in milliseconds, and as multiples of the bare driver's.
"""

import os
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory

import psycopg
from peewee import QueryEvent

from queueboard.records.pointing import address_in
from queueboard.records.reading import read_open_work
from queueboard.records.server import ServerDatabase
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests import engines, lending
from tests.bench import years
from tests.bench.machine import asked, heading
from tests.shop.place import by

Statement = tuple[str, tuple[object, ...]]
MORNING = years.MORNING


def on_server(folder: Path, knives: int) -> Shop:
    """A shop of so many knives, on the server."""
    years.make(folder / "years.qb", knives)
    shop = open_shop(folder / "years.qb")
    write_out(shop, folder / "years.jsonl")
    close_shop(shop)
    lending.new_database(folder / "there.qb")
    take_in(folder / "there.qb", folder / "years.jsonl", by())
    there = open_shop(folder / "there.qb")
    there.database.run("ANALYZE")
    return there


def statements_of(shop: Shop) -> list[Statement]:
    """What the driver is asked while the open work is read."""
    asked_for = list[Statement]()

    def note(event: QueryEvent) -> None:
        asked_for.append((event.sql, tuple(event.params or ())))

    with shop.reading() as database:
        database.query_hooks.append(note)
        read_open_work(database)
        database.query_hooks.remove(note)
    return asked_for


def bare(connection: "psycopg.Connection[tuple[object, ...]]", statements: list[Statement]) -> int:
    """The same statements by the driver alone; how many rows came."""
    return sum(len(connection.execute(sql, values).fetchall()) for sql, values in statements)


def read(shop: Shop) -> None:
    """The open work as values."""
    with shop.reading() as database:
        read_open_work(database)


def times(work: Callable[[], object], rounds: int) -> list[float]:
    """Milliseconds of each round, the shortest first; the first round of all is left out."""
    found = []
    for _ in range(rounds + 1):
        began = time.perf_counter()
        work()
        found.append((time.perf_counter() - began) * 1000)
    return sorted(found[1:])


def main() -> None:
    """Print the table."""
    knives, rounds = asked(20_000, 40)
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as name:
        shop = on_server(Path(name), knives)
        if not isinstance(shop.database, ServerDatabase):
            raise TypeError("the shop was to be on a server")
        statements = statements_of(shop)
        print(heading("tests.bench.server_picture", 0))
        print(f"{knives} knives, {len(statements)} statements{'':<12}{'middle ms':>12}{'slow ms':>9}{'times':>7}")
        with closing(psycopg.connect(str(address_in(shop.path)), autocommit=True)) as connection:
            works: dict[str, Callable[[], object]] = {
                "the bare driver": lambda: bare(connection, statements),
                "open work as values": lambda: read(shop),
                "whole picture with its plan": lambda: look(shop, MORNING),
            }
            base = 0.0
            for name_of_work, work in works.items():
                found = times(work, rounds)
                middle, slow = found[rounds // 2], found[int(rounds * 0.95)]
                base = base or middle
                print(f"{name_of_work:<40}{middle:>12.2f}{slow:>9.2f}{middle / base:>7.1f}", flush=True)
        close_shop(shop)


if __name__ == "__main__":
    main()
