"""All that is known of one customer: which rows, which words beside history, and how the words are emptied."""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from pathlib import Path

from queueboard.records.auditing import Life, lives
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.engine import references, written
from queueboard.records.migrations import STEPS
from queueboard.records.tables import STATE
from queueboard.records.writing import Values, Writing

Reached = dict[str, set[int]]
"""Ids of rows by table, of those that are there and those that were taken away."""

NOBODYS = frozenset({"spot"})
"""Tables whose words name no person: a spot is a place on a blade, and the shop's figures rest on its name."""

GONE = "erased"
"""What stands where something must stand."""

FIRST_LINES = "SELECT entity_id, hash FROM history WHERE entity = 'customer' AND before IS NULL ORDER BY id"
"""What names each customer: the first line about them."""

_AT_ONCE = 500


def reached_from(database: ShopDatabase, customer_id: int) -> Reached:
    """Everything that hangs on a customer, on entries put together with it, and on their boxes and knives."""
    from graphlib import TopologicalSorter

    parents = references(len(STEPS))
    order = TopologicalSorter({name: set(links.values()) - {name} for name, links in parents.items()})
    reached: Reached = {name: set() for name in STATE}
    reached["customer"].add(customer_id)
    for name in order.static_order():
        # Once more as long as something was found: an entry can be put together with one that comes later.
        while sum(_reach(life, parents[name], reached) for life in lives(database.raw(), name)):
            pass
    return reached


def _reach(life: Life, links: dict[str, str], reached: Reached) -> bool:
    """True for a row that hangs on one that was reached, and was not known to."""
    if not links or life.entity_id in reached[life.entity]:
        return False
    row = life.known
    if life.entity == "found_knife" and row.get("settled_us") is None:
        return False  # it still lies somewhere, and nobody knows whose it is
    if any(row.get(column) in reached[parent] for column, parent in links.items()):
        reached[life.entity].add(life.entity_id)
        return True
    return False


def words_of(database: ShopDatabase, reached: Reached) -> tuple[int, ...]:
    """Ids of the words beside history that tell of these rows, the reasons of the steps on them included."""
    found: set[int] = set()
    for name, ids in reached.items():
        for some in _portions(() if name in NOBODYS else ids):
            marks = ", ".join("?" * len(some))
            lines = f"SELECT id, group_id FROM history WHERE entity = ? AND entity_id IN ({marks})"
            found |= _ids(
                database,
                f"SELECT id FROM personal WHERE text <> '' AND history_id IN (SELECT id FROM ({lines}) AS told) "
                f"UNION SELECT p.id FROM personal p JOIN history h ON h.id = p.history_id WHERE p.text <> '' "
                f"AND p.side = 'reason' AND h.group_id IN (SELECT group_id FROM ({lines}) AS told)",
                (name, *some, name, *some),
            )
    return tuple(sorted(found))


def empty_words(database: ShopDatabase, words: tuple[int, ...]) -> None:
    """Empty words beside history; the lines themselves hold only digests, and stay as they are."""
    for some in _portions(set(words)):
        database.run(f"UPDATE personal SET text = '' WHERE id IN ({', '.join('?' * len(some))})", some)


def blank_rows(writing: Writing, reached: Reached) -> None:
    """Take people's words out of the rows themselves; amounts, counts, days and places on the board stay."""
    for name, ids in reached.items():
        table = STATE[name]
        if name in NOBODYS or not table.personal:
            continue
        needed = _needed(name)
        for row_id in sorted(ids):
            row = writing.row(table, row_id)
            blanks = {} if row is None else _blanks(row, table.personal, needed)
            if blanks:
                writing.change(table, row_id, None, **blanks)


def _blanks(row: Values, personal: frozenset[str], needed: frozenset[str]) -> Values:
    return {name: GONE if name in needed else "" for name in personal if row[name] not in (None, "")}


def _needed(table: str) -> frozenset[str]:
    """The columns in which the layout wants at least one sign."""
    return frozenset(re.findall(r"length\((\w+)\) BETWEEN 1 AND", written(table)))


def erased_customers(database: ShopDatabase) -> frozenset[int]:
    """Ids of the customers who were erased."""
    return _ids(database, "SELECT customer_id FROM erased_customer")


def hash_of_customer(database: ShopDatabase, customer_id: int) -> str:
    """What names a customer in every copy of the file, and tells nothing: the hash of the first line about them."""
    return str(
        database.one(
            "SELECT hash FROM history WHERE entity = 'customer' AND entity_id = ? ORDER BY id LIMIT 1", (customer_id,)
        )
    )


def customers_by_hash(database: ShopDatabase, hashes: frozenset[str]) -> tuple[int, ...]:
    """Ids of the customers that these hashes name, of those who are not erased in this file."""
    gone = erased_customers(database)
    rows = database.rows(FIRST_LINES)
    return tuple(int(str(row[0])) for row in rows if row[1] in hashes and row[0] not in gone)


def brings_back(copy: Path, hashes: frozenset[str]) -> bool:
    """True for a copy, of any layout, that holds the words of customers whom these hashes name; it is only read.

    False for one that cannot be read: whoever looks the copies over is told of it elsewhere.
    """
    with (
        suppress(sqlite3.DatabaseError, UnicodeDecodeError),
        closing(sqlite3.connect(f"{copy.absolute().as_uri()}?mode=ro", uri=True)) as raw,
    ):
        told = raw.execute(
            "SELECT entity_id, hash FROM history WHERE entity = 'customer' AND before IS NULL"
        ).fetchall()
        known = raw.execute("SELECT 1 FROM sqlite_master WHERE name = 'erased_customer'").fetchone()
        gone = {one for (one,) in raw.execute("SELECT customer_id FROM erased_customer")} if known else set()
        return any(figure in hashes and customer not in gone for customer, figure in told)
    return False


def earlier_words(database: ShopDatabase, words: tuple[int, ...]) -> tuple[tuple[int, str, str, str], ...]:
    """Words beside history: when (microseconds), of what, which field, and the text, the oldest first."""
    rows: list[tuple[Cell, ...]] = []
    for some in _portions(set(words)):
        rows += database.rows(
            "SELECT h.at_us, h.entity, p.field, p.text FROM personal p JOIN history h ON h.id = p.history_id "
            f"WHERE p.id IN ({', '.join('?' * len(some))}) ORDER BY p.id",
            some,
        )
    return tuple((int(str(row[0])), str(row[1]), str(row[2]), str(row[3])) for row in rows)


def _portions(ids: set[int] | tuple[()]) -> Iterator[tuple[int, ...]]:
    every = sorted(ids)
    return (tuple(every[start : start + _AT_ONCE]) for start in range(0, len(every), _AT_ONCE))


def _ids(database: ShopDatabase, sql: str, values: tuple[Cell, ...] = ()) -> frozenset[int]:
    return frozenset(int(str(row[0])) for row in database.rows(sql, values))
