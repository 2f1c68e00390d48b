"""The four plain statements on one row of a table, written out once for each table and set of columns.

peewee writes a statement anew each time it is used, which costs more than SQLite takes to run it.
"""

from collections.abc import Collection, Mapping
from functools import cache

from peewee import Model

from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.row import name_of


@cache
def columns(table: type[Model]) -> tuple[str, ...]:
    """The columns of a table, as its class names them."""
    return tuple(field.column_name for field in _meta(table).sorted_fields)


@cache
def _defaults(table: type[Model]) -> dict[str, Cell]:
    """What a row has where nothing is said."""
    return {field.column_name: field.default for field in _meta(table).sorted_fields if field.default is not None}


def _meta(table: type[Model]):  # type: ignore[no-untyped-def]  # peewee has no type for it
    return table._meta  # noqa: SLF001  # peewee's own name for what it knows of a table


def select(database: ShopDatabase, table: type[Model], row_id: int) -> dict[str, Cell] | None:
    """The row with this id; None when it is not there."""
    found = database.rows(_select(table), (row_id,))
    return dict(zip(columns(table), found[0], strict=True)) if found else None


def select_many(database: ShopDatabase, table: type[Model], ids: Collection[int]) -> dict[int, dict[str, Cell]]:
    """Those of the rows that are there, by id."""
    marks = ", ".join("?" * len(ids))
    found = database.rows(f"{_select_all(table)} WHERE id IN ({marks})", tuple(ids))
    rows = (dict(zip(columns(table), row, strict=True)) for row in found)
    return {int(str(row["id"])): row for row in rows}


def insert(database: ShopDatabase, table: type[Model], values: Mapping[str, Cell]) -> int:
    """Add a row, with the table's defaults where nothing is said; returns its id."""
    row = {**_defaults(table), **values}
    return database.insert(_insert(table, tuple(row)), tuple(row.values()))


def update(database: ShopDatabase, table: type[Model], row_id: int, version: int, values: Mapping[str, Cell]) -> bool:
    """Change a row that has this version; False when there is none."""
    cursor = database.run(_update(table, tuple(values)), (*values.values(), row_id, version))
    return cursor.rowcount == 1


def delete(database: ShopDatabase, table: type[Model], row_id: int) -> None:
    """Take a row away."""
    database.run(f"DELETE FROM {name_of(table)} WHERE id = ?", (row_id,))


@cache
def _select(table: type[Model]) -> str:
    return f"{_select_all(table)} WHERE id = ?"


@cache
def _select_all(table: type[Model]) -> str:
    return f"SELECT {_named(columns(table))} FROM {name_of(table)}"


@cache
def _insert(table: type[Model], names: tuple[str, ...]) -> str:
    return f"INSERT INTO {name_of(table)} ({_named(names)}) VALUES ({', '.join('?' * len(names))})"


@cache
def _update(table: type[Model], names: tuple[str, ...]) -> str:
    sets = ", ".join(f'"{name}" = ?' for name in names)
    return f"UPDATE {name_of(table)} SET {sets} WHERE id = ? AND row_version = ?"


def _named(names: tuple[str, ...]) -> str:
    """Quoted, since history has a column `by`."""
    return ", ".join(f'"{name}"' for name in names)
