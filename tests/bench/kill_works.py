"""What a child does over and over until it is killed, and how it is told afterwards whether anything is missing.

A new kind of work is one entry in WORKS.
"""

import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import dataclass
from datetime import timedelta
from functools import cache
from itertools import chain
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.records.copies import as_written, copies_folder, copy_name
from queueboard.records.instants import to_us
from queueboard.records.migrations import STEPS
from queueboard.records.tables import KnifeRow
from queueboard.records.writing import Values
from queueboard.shop import closing as leaving
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.erasing import erase, find_customers
from queueboard.shop.keeping import copy_to, daily_copy
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import note_box
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.restoring import restore
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox
from queueboard.words import CameBy, Column, GoesBy, Settling
from tests.records.test_migrating import OLDER, old_file
from tests.shop.acts import LENIENT
from tests.shop.place import NOW, box, by, chef, own_path, parcel, small_shop
from tests.shop.undo_closing import close

KILLER = "K"
ERASED = 60
"""How many customers there are to be erased."""

Doing = Callable[[int], object]
"""One act more, given how many there were."""


@dataclass(frozen=True, slots=True)
class Work:
    """One kind of work."""

    name: str
    begin: Callable[[Path], Doing]
    """Given the shop file, in the child: what is done over and over."""
    missing: Callable[[Path, int], int]
    """Given the shop file and how many acts were said to be done: how many are not there."""
    most_said: int = 8
    """How many acts are waited for at most before a kill."""


def noting(path: Path) -> Doing:
    """Another note on the same box."""
    shop = open_shop(path)
    return lambda number: note_box(shop, by(KILLER), look(shop, NOW).boxes[0].box, f"note {number}")


def moving(path: Path) -> Doing:
    """A whole box to and fro."""
    shop = open_shop(path)
    to = (Column.ON_BENCH, Column.TESTING)
    return lambda number: move_knives(shop, by(KILLER), look(shop, NOW).boxes[0].knives, to[number % 2])


def receiving(path: Path) -> Doing:
    """A box comes in: many rows in one transaction."""
    shop = open_shop(path)
    new = NewBox(customer_id=1, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=9, knives=(chef(mark="nick"),) * 9)
    return lambda _: receive_box(shop, by(KILLER), new)


def goes(shop: Shop, number: int, who: str) -> Iterator[str]:
    """A box from the bench to its customer; a word behind each step that is stored."""

    def actor() -> Actor:
        return by(who)

    for to in (Column.ON_BENCH, Column.TESTING, Column.READY):
        move_knives(shop, actor(), box(shop, number).knives, to)
        yield to
    leaving.begin_close_out(shop, actor(), box(shop, number).box)
    yield "begun"
    leaving.count(shop, actor(), close(shop, number), len(box(shop, number).knives))
    yield "counted"
    leaving.confirm_names(shop, actor(), close(shop, number))
    yield "names"
    leaving.confirm_label(shop, actor(), close(shop, number), "themselves")
    yield "label"
    leaving.settle(shop, actor(), close(shop, number), Settling.ON_ACCOUNT)
    yield "money"
    leaving.send_off(shop, actor(), close(shop, number))
    yield "gone"


def closing_out(path: Path) -> Doing:
    """Box after box over the counter, from coming in to gone."""
    shop = open_shop(path)
    new = NewBox(customer_id=1, came_by=CameBy.COUNTER, goes_by=GoesBy.PICK_UP, counted=2, knives=(chef(),) * 2)

    def one() -> Iterator[str]:
        number = receive_box(shop, by(KILLER), new)
        yield "received"
        yield from goes(shop, number, KILLER)

    steps = chain.from_iterable(one() for _ in iter(int, 1))
    return lambda _: next(steps)


def copying(path: Path) -> Doing:
    """The copy of another day, old ones thinned out."""
    shop = open_shop(path)
    return lambda number: daily_copy(shop, NOW + timedelta(days=number))


def restoring(path: Path) -> Doing:
    """Back to a copy, again and again."""
    return lambda number: restore(path, path.with_name("copy.qb"), by("R", minutes=number))


def taking(path: Path) -> Doing:
    """An export taken into another new file."""
    return lambda number: take_in(path.with_name(f"taken-{number}.qb"), path.with_name("out.jsonl"), by())


def leading_on(path: Path) -> Doing:
    """Another file of an older layout led to today's."""

    def lead(number: int) -> None:
        old = path.with_name(f"old-{number}.qb")
        # The copying is not what is tried here: half a file would be no file of ours.
        Path(shutil.copyfile(path.with_name("older.qb"), path.with_name("half"))).replace(old)
        close_shop(open_shop(old))

    return lead


def erasing(path: Path) -> Doing:
    """Another customer is erased: rows, words beside history, and the list beside the file."""
    shop = open_shop(path)
    return lambda number: erase(shop, by(KILLER), find_customers(shop, to_erase(number))[0], "asked by letter")


def to_erase(number: int) -> str:
    """The name of a customer who is erased."""
    return f"Forgetmenot{number:03}"


def in_two_transactions(path: Path) -> Doing:
    """The control: the state in one transaction, its line of history in the next."""
    shop = open_shop(path)

    def change(number: int) -> None:
        before = _knife(shop)
        shop.database.rows(
            "UPDATE knife SET price_cents = ?, row_version = row_version + 1 WHERE id = 1", (number % 9000,)
        )
        with shop.writing(by(KILLER), "set_price") as writing:
            writing._remember(KnifeRow, 1, before, writing.row(KnifeRow, 1))

    return change


def _knife(shop: Shop) -> Values:
    with shop.reading() as database:
        (row,) = KnifeRow.select().where(KnifeRow.id == 1).dicts().execute(database)
    return dict(row)


def of_history(path: Path, said: int) -> int:
    """Of the child's acts, those that are not in history."""
    return max(0, said - _number(path, "SELECT count(DISTINCT group_id) FROM history WHERE by = ?", KILLER))


def of_copies(path: Path, said: int) -> int:
    """1 where the newest copy that was said to be made is none, or not as it was written."""
    newest = copies_folder(path) / copy_name(path, (NOW + timedelta(days=said - 1)).date().isoformat())
    return int(said > 0 and not as_written(newest))


def of_restores(path: Path, said: int) -> int:
    """1 where the file that lies there is an older one than the last that was said to be put back."""
    last = _number(path, "SELECT coalesce(max(restored_us), 0) FROM restored WHERE restored_by = ?", "R")
    return int(said > 0 and last < to_us(by(minutes=said - 1).now))


def of_taken(path: Path, said: int) -> int:
    """Files that were said to be taken in and are not there."""
    return sum(not path.with_name(f"taken-{number}.qb").exists() for number in range(said))


def of_led_on(path: Path, said: int) -> int:
    """Files that were said to be led on and are not of today's layout."""
    files = (path.with_name(f"old-{number}.qb") for number in range(said))
    return sum(_number(file, "PRAGMA user_version") != len(STEPS) for file in files)


def of_erased(path: Path, said: int) -> int:
    """Acts that are not in history, and names that still stand in the file after they were said to be erased."""
    content = path.read_bytes()
    return of_history(path, said) + sum(to_erase(number).encode() in content for number in range(said))


def _number(path: Path, sql: str, *values: str) -> int:
    with closing(sqlite3.connect(path)) as raw:
        return int(raw.execute(sql, values).fetchone()[0])


WORKS = (
    Work("noting", noting, of_history),
    Work("moving", moving, of_history),
    Work("receiving", receiving, of_history),
    Work("closing out", closing_out, of_history),
    Work("copying", copying, of_copies),
    Work("restoring", restoring, of_restores),
    Work("taking in", taking, of_taken, most_said=2),
    Work("leading on", leading_on, of_led_on, most_said=1),
    Work("erasing", erasing, of_erased),
)
CONTROL = Work("control: history apart", in_two_transactions, of_history)


def prepared(folder: Path, *, log: bool) -> Path:
    """A shop file with a box, a copy, an export and a file of an older layout beside it; log: with write-ahead log."""
    path = own_path(folder)
    for name, content in _made(log=log).items():
        path.with_name(name).write_bytes(content)
        path.with_name(name).chmod(0o600)
    return path


@cache
def _made(*, log: bool) -> dict[str, bytes]:
    """All these files, made once and copied for each kind of work."""
    with TemporaryDirectory() as folder:
        return {file.name: file.read_bytes() for file in _make(Path(folder), log=log).parent.iterdir()}


def _make(folder: Path, *, log: bool) -> Path:
    shop = small_shop(folder)
    take_settings(shop, by(), LENIENT)
    parcel(shop)
    for number in range(ERASED):
        add_customer(shop, by(), name=to_erase(number), town="Dunmere")
    copy_to(shop, shop.path.with_name("copy.qb"), NOW)
    write_out(shop, shop.path.with_name("out.jsonl"))
    shop.database.rows(f"PRAGMA journal_mode = {'WAL' if log else 'DELETE'}")
    close_shop(shop)
    older = old_file(OLDER[-1], shop.path.with_name("older.qb"))
    with closing(sqlite3.connect(older)) as raw:
        raw.execute(f"PRAGMA journal_mode = {'WAL' if log else 'DELETE'}")
    return shop.path
