"""How fast a big shop on a server is read: python -m tests.bench.server_picture [FILE or KNIVES] [ROUNDS].

A shop of ten years (`python -m tests.bench.years FILE`, or one of so many knives made here) gets 400 open knives and is
taken to a server. In each round the shop reads its open work, makes pictures on a handle that has read nothing yet and
one behind a change; and right behind each the bare driver runs the very statements that were asked, on a connection of
its own that has them prepared, and keeps all rows. The plan is no work of the server's: it is clocked by itself, and
the pictures that have one are held against the statements alone and against statements and plan.

Clocked is what the processors did for this program and for its part of the server together: one waits while the other
works, so that on a calm machine it is what the wall's clock says, and on a busy one it still is what the work takes.
The control reads its open work twice, and must cost about twice as much.
"""

import os
import shutil
import sqlite3
import statistics
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
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
from tests.bench.speed_clock import worked
from tests.bench.speed_reads import planner_alone
from tests.bench.years_open import open_more

Statement = tuple[str, tuple[object, ...]]

OPEN_KNIVES = 400
WARMING_UP = 6
"""Rounds, behind which the bare driver has everything prepared."""

WANTED_TIMES = 3.0


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
    """Every row of every table, whose guards are asleep meanwhile: they were sound where they come from."""
    raw.execute("SET LOCAL session_replication_role = replica")
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


def twice(work: Callable[[], object]) -> None:
    """Do it once more."""
    work()
    work()


def forget(shop: Shop) -> None:
    """Let no open work be kept from before; what was learned of minutes is."""
    shop.work_cache = None


def change(shop: Shop, now: datetime) -> None:
    """An action, behind which a picture has something to read on."""
    box = look(shop, now).boxes[0].box
    note_box(shop, Actor(initials="MB", now=now), box, "asks" if box.note != "asks" else "asks again")


@dataclass(frozen=True)
class Clock:
    """Milliseconds that the processors work for this program and for some processes of the server."""

    processes: tuple[int, ...]

    def took(self, work: Callable[[], object]) -> float:
        """What some work takes."""
        began = self._now()
        work()
        return (self._now() - began) * 1000

    def _now(self) -> float:
        return time.process_time() + sum(map(worked, self.processes))


@dataclass
class Work:
    """One kind of work and what was measured of it, in milliseconds, a figure for each round."""

    name: str
    before: Callable[[], object]
    """Done before each round, and not clocked."""
    ours: Callable[[], object]
    planned: bool = False
    """True when a plan is part of it."""
    statements: int = 0
    base_ms: list[float] = field(default_factory=list)
    our_ms: list[float] = field(default_factory=list)
    plan_ms: list[float] = field(default_factory=list)


def works_of(shop: Shop, now: datetime) -> tuple[Work, ...]:
    """All that is measured."""
    before = look(shop, now)
    anew, behind = partial(forget, shop), partial(change, shop, now)
    control = "control: the open work read twice"
    return (
        Work("open work as values", anew, partial(open_work, shop)),
        Work("picture read anew, plan of before", anew, partial(glance, shop, now, before)),
        Work("picture behind a change, plan of before", behind, partial(glance, shop, now, before)),
        Work("picture read anew", anew, partial(look, shop, now), planned=True),
        Work("picture behind a change", behind, partial(look, shop, now), planned=True),
        Work(control, anew, partial(twice, partial(open_work, shop))),
    )


def measure(shop: Shop, now: datetime, rounds: int) -> tuple[Work, ...]:
    """All works by turns, each with the bare driver right behind it; the first rounds only warm up."""
    works, plan = works_of(shop, now), planner_alone(shop, now)
    with closing(psycopg.connect(str(address_in(shop.path)), autocommit=True)) as connection:
        connection.prepare_threshold = server.PREPARED_AFTER
        connection.prepared_max = server.MOST_PREPARED
        clock = Clock((connection.info.backend_pid, backend(shop)))
        for number in range(WARMING_UP + rounds):
            for work in works:
                work.before()
                with noted(shop) as statements:
                    ours = clock.took(work.ours)
                if work is works[-1]:
                    del statements[len(statements) // 2 :]
                base = clock.took(partial(bare, connection, statements))
                planned = clock.took(plan) if work.planned else 0.0
                if number >= WARMING_UP:
                    work.statements = len(statements)
                    for kept, figure in ((work.our_ms, ours), (work.base_ms, base), (work.plan_ms, planned)):
                        kept.append(figure)
    return works


def backend(shop: Shop) -> int:
    """The process of the server that works for a shop's handle."""
    return whole(shop.database.one("SELECT pg_backend_pid()"))


def row(work: Work) -> float:
    """Print one line of the table; how many times the bare driver it costs, in the middle."""
    print(f"{work.name:<42}{work.statements:>5}", end="")
    for figures in (work.base_ms, work.our_ms):
        print(f"{min(figures):>9.2f}{statistics.median(figures):>8.2f}", end="")
    for add in (False, True)[: 1 + work.planned]:
        base = [one + plan * add for one, plan in zip(work.base_ms, work.plan_ms, strict=True)]
        print(f"{min(work.our_ms) / min(base):>9.2f}{_times(work.our_ms, base):>8.2f}", end="")
    print(flush=True)
    return _times(work.our_ms, work.base_ms)


def _times(ours: list[float], base: list[float]) -> float:
    return statistics.median(ours) / statistics.median(base)


def main() -> int:
    """Print the table."""
    which, rounds = (sys.argv[1:] + ["20000", "20"][len(sys.argv) - 1 :])[:2]
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as name:
        file = Path(name) / "years.qb"
        if which.isdecimal():
            years.make(file, int(which))
        else:
            shutil.copyfile(which, file)
            close_shop(open_shop(file))  # an older layout is led on to today's
        open_more(file, OPEN_KNIVES)
        shop = on_server(file, Path(name))
        if not isinstance(shop.database, ServerDatabase):
            raise TypeError("the shop was to be on a server")
        now = from_us(whole(shop.database.one("SELECT max(at_us) FROM history")))
        print(heading("tests.bench.server_picture", 0))
        boxes = look(shop, now).boxes
        print(f"{shop.database.one('SELECT count(*) FROM knife')} knives in all, {len(boxes)} open boxes, ", end="")
        print(f"{sum(len(box.on_hand) for box in boxes)} knives in them that are here")
        heads = ("the bare driver", "ours", "times", "plan in both")
        print(f"{'milliseconds':<42}{'asks':>5}" + "".join(f"{head:>17}" for head in heads))
        print(f"{'':<47}" + f"{'quickest':>9}{'middle':>8}" * len(heads))
        works = measure(shop, now, int(rounds))
        times = [row(work) for work in works]
        plans = [figure for work in works if work.planned for figure in work.plan_ms]
        print(f"the plan by itself: {min(plans):.2f} at its quickest, {statistics.median(plans):.2f} in the middle")
        close_shop(shop)
    reading = [one for one, work in zip(times, works, strict=True) if not work.planned][:-1]
    return 0 if max(reading) <= WANTED_TIMES and times[-1] > 1.5 * times[0] else 1


if __name__ == "__main__":
    sys.exit(main())
