"""What reading costs: a picture and the questions of a day, against the same queries put to sqlite3 alone."""

import sqlite3
import statistics
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from functools import partial
from pathlib import Path
from unittest.mock import patch

from queueboard.planning import order
from queueboard.planning.order import plan_work
from queueboard.shop.finding import find_gone
from queueboard.shop.looking import look
from queueboard.shop.noting import note_box
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.owing import owing
from queueboard.shop.undoing import box_history
from queueboard.values.actor import Actor
from tests.bench.speed_shops import FEW, MANY, Shops, morning_of
from tests.bench.speed_table import Figure, by_turns, processor_ms, worked_by_turns
from tests.shop.place import of_file

NAME, TAG = "Household 00300", "150"
"""A customer and a box number of every shop of these years."""

SAME = "the same queries to sqlite3 alone"
DIRECT = "the fewest queries that find the same, to sqlite3 alone"


@contextmanager
def opened(path: Path) -> Iterator[tuple[Shop, datetime]]:
    """A shop and a moment in its morning, with what it has measured read already."""
    shop, now = open_shop(path), morning_of(path)
    try:
        look(shop, now)
        yield shop, now
    finally:
        close_shop(shop)


def queries_of(path: Path, work: Callable[[Shop], object], warm: Shop) -> list[str]:
    """The queries that some work puts to a shop, with their values in them.

    The work is done on a handle of its own, which knows only what *warm* has measured: what it may have kept from
    earlier work is not in the base.
    """
    shop, asked = open_shop(path), list[str]()
    try:
        shop.minutes_cache = warm.minutes_cache
        of_file(shop).set_trace_callback(asked.append)
        work(shop)
        of_file(shop).set_trace_callback(None)
    finally:
        close_shop(shop)
    return [sql for sql in asked if sql.lstrip().startswith(("SELECT", "WITH"))]


def alone(path: Path, queries: list[str]) -> Callable[[], object]:
    """All rows of these queries, by sqlite3 on a connection of its own."""
    connection = sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True)

    def ask() -> object:
        return [connection.execute(sql).fetchall() for sql in queries]

    return ask


def planner_alone(shop: Shop, now: datetime) -> Callable[[], object]:
    """The plan of a picture, from the same work and hours."""
    given: list[Callable[[], object]] = []

    def keep(*args: object, **kwargs: object) -> object:
        given.append(lambda: plan_work(*args, **kwargs))  # type: ignore[arg-type]  # handed on as it came
        return given[0]()

    with patch.object(order, "plan_work", keep):
        look(shop, now)
    return given[0]


def picture(shops: Shops, runs: int) -> Iterator[Figure]:
    """Queries, plan, forecast and totals of the board, against its queries and its plan."""
    for path, open_knives in ((shops.ten, FEW), (shops.ten_full, MANY)):
        with opened(path) as (shop, now):
            read, plan = alone(path, queries_of(path, lambda other: look(other, now), shop)), planner_alone(shop, now)
            parts = [statistics.median(times) for times in worked_by_turns(read, plan, runs)]
            for name, ours in (("behind a change", _behind_a_change), ("read anew", _read_anew)):
                base_runs, our_runs = by_turns(
                    partial(processor_ms, partial(_both, read, plan)), partial(ours, shop, now), runs
                )
                yield Figure(
                    name=f"a picture {name}, {open_knives:,} open",
                    base="all its queries to sqlite3 alone, and the plan",
                    base_runs=tuple(base_runs),
                    our_runs=tuple(our_runs),
                    most=1.5,
                    beside=f"of the base {parts[0]:.1f} ms are queries, {parts[1]:.1f} ms the plan",
                )


def _both(read: Callable[[], object], plan: Callable[[], object]) -> None:
    read()
    plan()


def _behind_a_change(shop: Shop, now: datetime) -> float:
    """Clock the picture that follows an action; the action is not in it."""
    box = look(shop, now).boxes[0].box
    note_box(shop, Actor(initials="MB", now=now), box, "asks" if box.note != "asks" else "asks again")
    return processor_ms(lambda: look(shop, now))


def _read_anew(warm: Shop, now: datetime) -> float:
    """Clock the picture of a handle that has read nothing but what is learned of minutes."""
    shop = open_shop(warm.path)
    try:
        shop.minutes_cache = warm.minutes_cache
        return processor_ms(lambda: look(shop, now))
    finally:
        close_shop(shop)


def questions(shops: Shops, runs: int) -> Iterator[Figure]:
    """Finding, a customer's totals and the history of knives in the file of ten years."""
    path = shops.ten
    with opened(path) as (shop, now):
        (customer_id,) = _first(shop, f"SELECT id FROM customer WHERE name = '{NAME}'")
        (box_id,) = _first(shop, f"SELECT max(id) FROM box WHERE customer_id = {customer_id}")
        asked: tuple[tuple[str, Callable[[Shop], object], list[str] | None], ...] = (
            ("find by name", lambda one: find_gone(one, NAME), direct_find(shop, f"c.name LIKE '%{NAME}%'")),
            ("find by tag", lambda one: find_gone(one, TAG), direct_find(shop, f"b.number = {TAG}")),
            ("a customer's totals", lambda one: owing(one, now, customer_id), None),
            ("a knife's history", lambda one: box_history(one, box_id), None),
        )
        for name, work, direct in asked:
            bases = [(SAME, queries_of(path, work, shop))] + ([(DIRECT, direct)] if direct else [])
            for base, queries in bases:
                base_runs, our_runs = worked_by_turns(alone(path, queries), partial(work, shop), runs)
                yield Figure(name=name, base=base, base_runs=tuple(base_runs), our_runs=tuple(our_runs), most=3.0)


def direct_find(shop: Shop, condition: str) -> list[str]:
    """The fewest queries for the twelve newest boxes that are gone and fit, with what is shown of each."""
    boxes = f"""SELECT b.*, c.* FROM box b JOIN customer c ON c.id = b.customer_id
    WHERE b.closed_us IS NOT NULL AND {condition} ORDER BY b.closed_us DESC, b.id DESC LIMIT 12"""
    ids = ", ".join(str(row[0]) for row in shop.database.rows(boxes))
    return [boxes] + [
        f"SELECT * FROM {table} WHERE box_id IN ({ids})"
        for table in ("knife", "label", "close_out", "payment", "charge")
    ]


def _first(shop: Shop, sql: str) -> tuple[int, ...]:
    return tuple(int(str(cell)) for cell in shop.database.rows(sql)[0])
