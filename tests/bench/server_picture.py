"""How fast a big shop on a server is read: python -m tests.bench.server_picture [FILE or KNIVES] [ROUNDS].

A shop of ten years (`python -m tests.bench.years FILE`, or one of so many knives made here) is taken to a server. Then
by turns: the bare driver runs every statement of a whole picture and keeps the rows; the shop reads the open work, and
makes a picture behind a change and one on a handle that has read nothing yet. The plan is clocked by itself: it is no
work of the server's. By the clock: the quickest, the middle and the slowest of twenty; on a machine that others work on
only the quickest tells what the work itself takes.
"""

import os
import sqlite3
import statistics
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

import psycopg
from peewee import QueryEvent

from queueboard.records import server
from queueboard.records.cells import whole
from queueboard.records.engine import FileEngine
from queueboard.records.instants import from_us
from queueboard.records.pointing import address_in
from queueboard.records.reading import read_open_work
from queueboard.records.server import ServerDatabase
from queueboard.shop.looking import glance, look
from queueboard.shop.noting import note_box
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.values.actor import Actor
from tests import engines, lending
from tests.bench import years
from tests.bench.machine import heading
from tests.bench.speed_reads import planner_alone

Statement = tuple[str, tuple[object, ...]]


def on_server(file: Path, folder: Path) -> Shop:
    """The shop of a file, on the server; its rows are copied as they are, which millions of them want."""
    there = folder / "there.qb"
    lending.new_database(there)
    whole_file = sqlite3.connect(f"{file.absolute().as_uri()}?mode=ro", uri=True)
    with closing(whole_file) as rows, closing(server.connect(str(address_in(there)), 1000)) as database:
        server.make(database, partial(copied, rows))
    shop = open_shop(there)
    shop.database.run("ANALYZE")
    return shop


def copied(rows: sqlite3.Connection, raw: server.ServerRaw) -> None:
    """Every row of every table."""
    for name, columns in FileEngine(rows).columns().items():
        names = ", ".join(f'"{column}"' for column in columns)
        with raw.connection.cursor() as cursor, cursor.copy(f"COPY {name} ({names}) FROM STDIN") as copy:
            for row in rows.execute(f"SELECT {names} FROM {name} ORDER BY id"):
                copy.write_row(row)
    server.number_on(raw)


@contextmanager
def noted(shop: Shop) -> Iterator[list[Statement]]:
    """What the driver is asked meanwhile."""
    asked_for = list[Statement]()

    def note(event: QueryEvent) -> None:
        asked_for.append((event.sql, tuple(event.params or ())))

    shop.database.query_hooks.append(note)
    yield asked_for
    shop.database.query_hooks.remove(note)


def bare(connection: "psycopg.Connection[tuple[object, ...]]", statements: list[Statement]) -> None:
    """The same statements by the driver alone, all rows fetched."""
    for sql, values in statements:
        cursor = connection.execute(sql, values)
        if cursor.description is not None:
            cursor.fetchall()


def open_work(shop: Shop) -> None:
    """The open work as values."""
    with shop.reading() as database:
        read_open_work(database)


def clocked(work: Callable[[], object]) -> float:
    """Milliseconds of the clock: a server's work is not this process's."""
    began = time.perf_counter()
    work()
    return (time.perf_counter() - began) * 1000


def anew(shop: Shop, work: Callable[[], object]) -> float:
    """As clocked, where no open work was kept from before; what was learned of minutes is."""
    shop.work_cache = None
    return clocked(work)


def behind_a_change(shop: Shop, now: datetime, work: Callable[[], object]) -> float:
    """As clocked, behind an action that is not clocked itself."""
    box = look(shop, now).boxes[0].box
    note_box(shop, Actor(initials="MB", now=now), box, "asks" if box.note != "asks" else "asks again")
    return clocked(work)


def measure(shop: Shop, now: datetime, rounds: int) -> Iterator[tuple[str, list[float]]]:
    """Each work with its milliseconds, all of them by turns; the bare driver first."""
    before = look(shop, now)
    shop.work_cache = None
    with noted(shop) as statements:
        look(shop, now)
    print(f"{len(before.boxes)} open boxes, {sum(len(box.knives) for box in before.boxes)} knives in them, ", end="")
    print(f"{len(statements)} statements a picture")
    print(f"{'milliseconds':<48}{'quickest':>9}{'middle':>9}{'slow':>9}   times the driver's quickest, middle")
    with closing(psycopg.connect(str(address_in(shop.path)), autocommit=True)) as connection:
        plan = planner_alone(shop, now)
        works: dict[str, Callable[[], float]] = {
            "the bare driver, every statement of a picture": partial(clocked, partial(bare, connection, statements)),
            "open work as values": partial(anew, shop, lambda: open_work(shop)),
            "picture read anew, plan of before": partial(anew, shop, lambda: glance(shop, now, before)),
            "picture read anew, with its plan": partial(anew, shop, lambda: look(shop, now)),
            "picture behind a change, plan of before": partial(
                behind_a_change, shop, now, lambda: glance(shop, now, before)
            ),
            "the plan by itself": partial(clocked, plan),
        }
        found = [[work() for work in works.values()] for _ in range(rounds + 2)][2:]
        for number, name in enumerate(works):
            yield name, sorted(row[number] for row in found)


def main() -> None:
    """Print the table."""
    which, rounds = (sys.argv[1:] + ["20000", "20"][len(sys.argv) - 1 :])[:2]
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as name:
        file = Path(which)
        if which.isdecimal():
            file = Path(name) / "years.qb"
            years.make(file, int(which))
        shop = on_server(file, Path(name))
        if not isinstance(shop.database, ServerDatabase):
            raise TypeError("the shop was to be on a server")
        now = from_us(whole(shop.database.one("SELECT max(at_us) FROM history")))
        print(heading("tests.bench.server_picture", 0))
        print(f"{shop.database.one('SELECT count(*) FROM knife')} knives in all, ", end="")
        base = quickest_base = 0.0
        for name_of_work, found in measure(shop, now, int(rounds)):
            middle, slow = statistics.median(found), found[int(len(found) * 0.95)]
            base, quickest_base = base or middle, quickest_base or found[0]
            print(f"{name_of_work:<48}{found[0]:>9.2f}{middle:>9.2f}{slow:>9.2f}", end="")
            print(f"{found[0] / quickest_base:>10.2f}{middle / base:>8.2f}", flush=True)
        close_shop(shop)


if __name__ == "__main__":
    main()
