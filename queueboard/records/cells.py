"""Cells of a row as the values they stand for."""

from datetime import date, datetime
from enum import Enum
from typing import TypeVar

from queueboard.records.database import Cell
from queueboard.records.instants import from_us

Word = TypeVar("Word", bound=Enum)


def words_by_cell(words: type[Word]) -> dict[Cell, Word]:
    """The words of a closed list by what a cell holds for each: looked up, they cost a tenth of being made."""
    return {word.value: word for word in words}


def whole(cell: Cell) -> int:
    """A cell that STRICT tables guarantee to be a whole number."""
    if not isinstance(cell, int):
        raise TypeError(f"a whole number was expected, the shop file holds {cell!r}")
    return cell


def whole_or_none(cell: Cell) -> int | None:
    """A whole number, where there is one."""
    return None if cell is None else whole(cell)


def instant_or_none(cell: Cell) -> datetime | None:
    """An instant in UTC, where there is one."""
    return None if cell is None else from_us(whole(cell))


def day_or_none(cell: Cell) -> date | None:
    """A day, where there is one."""
    return None if cell is None else date.fromisoformat(str(cell))
