"""A file of orders read line by line: boxes that customers say they will send.

Two forms are read. CSV by RFC 4180: a first line that names its columns, then a line for each box. JSON Lines: an
object for each box, with the same names (each line is JSON by RFC 8259). What is wrong with a line is said with its
number, and never keeps the others from being read.
"""

import csv
import json
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from io import StringIO

from queueboard.clean import clean, clean_name, shown
from queueboard.errors import TypedError
from queueboard.intake.lines import read_lines
from queueboard.plainfiles import LONGEST_READ
from queueboard.settings.shapes import Settings
from queueboard.slotted import dataclass
from queueboard.values.new import NewAnnounced, NewCustomer
from queueboard.words import GoesBy

COLUMNS: Mapping[str, str] = {
    "name": "whose box it is; the one column that must be there",
    "phone": "tells customers of one name apart",
    "town": "",
    "address": "",
    "knives": "how many, in figures",
    "kinds": "the knives in shorthand with commas between: `4 chef 8, 1 bread`; their number stands for `knives`",
    "expected_on": "the day it should come: `2026-12-01`",
    "goes_back": "`parcel` or `pick-up`; `parcel` where nothing stands",
    "note": "anything to remember, such as the order's own number",
}
"""What a file of orders may hold, with what each column means."""

MOST_ORDERS = 500
LONGEST_KINDS = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One line that reads as a box."""

    line: int
    """Where it begins in the file, from 1."""
    box: NewAnnounced
    """With a new customer, whoever it is: who is known already only the shop can tell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BadLine:
    """A line that cannot be taken in, and why not."""

    line: int
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Orders:
    """A file of orders, read."""

    good: tuple[Order, ...]
    bad: tuple[BadLine, ...]


def read_orders(text: str, settings: Settings) -> Orders:
    """Read a whole file; TypedError where it is no such file at all: no name column, unknown columns, too many."""
    if len(text) > LONGEST_READ:
        raise TypedError(f"This file is longer than {LONGEST_READ} characters; take it in in parts.")
    good: list[Order] = []
    bad: list[BadLine] = []
    for line, cells in _lines(text):
        if isinstance(cells, str):
            bad.append(BadLine(line=line, why=cells))
            continue
        try:
            good.append(Order(line=line, box=_box(cells, settings)))
        except TypedError as error:
            bad.append(BadLine(line=line, why=str(error)))
        if len(good) + len(bad) > MOST_ORDERS:
            raise TypedError(f"There are more than {MOST_ORDERS} lines in this file; take it in in parts.")
    if not good and not bad:
        raise TypedError("There is no order in this file.")
    return Orders(good=tuple(good), bad=tuple(bad))


Cells = Mapping[str, str]


def _lines(text: str) -> Iterator[tuple[int, Cells | str]]:
    """The lines with their numbers, each as its cells, or as a sentence that says why it cannot be read."""
    return _json_lines(text) if text.lstrip().startswith("{") else _csv_lines(text)


def _csv_lines(text: str) -> Iterator[tuple[int, Cells | str]]:
    reader = csv.reader(StringIO(text, newline=""), strict=True)
    names: Sequence[str] | None = None
    while True:
        line = reader.line_num + 1
        try:
            cells = next(reader, None)
        except csv.Error as error:
            if names is None:
                raise TypedError(f"The first line cannot be read as CSV: {error}.") from None
            yield line, f"it cannot be read as CSV: {error}; quotes around a cell are doubled inside it"
            return
        if cells is None:
            return
        if not any(cell.strip() for cell in cells):
            continue
        if names is None:
            names = _header(cells)
        elif len(cells) > len(names):
            yield line, f"it has {len(cells)} cells, the first line names {len(names)}; quote a cell with a comma"
        else:
            yield line, dict(zip(names, cells, strict=False))


def _header(cells: Sequence[str]) -> tuple[str, ...]:
    names = tuple(cell.strip().casefold() for cell in cells)
    _known(names)
    if "name" not in names:
        raise TypedError(f"The first line names no column “name”. The columns are: {', '.join(COLUMNS)}.")
    return names


def _known(names: Sequence[str]) -> None:
    """Refuse names that nothing is known of, and those that stand twice."""
    for name in names:
        if name not in COLUMNS:
            raise TypedError(f"“{shown(name)}” is no column of orders. They are: {', '.join(COLUMNS)}.")
        if names.count(name) > 1:
            raise TypedError(f"“{name}” stands there twice.")


def _json_lines(text: str) -> Iterator[tuple[int, Cells | str]]:
    for line, written in enumerate(text.split("\n"), start=1):
        if written.strip():
            yield line, _object(written)


def _object(written: str) -> Cells | str:
    try:
        pairs = json.loads(written, object_pairs_hook=list)
    except (ValueError, RecursionError):
        return 'it is no JSON; each line is one whole object, such as {"name": "Maren Tallis", "knives": 6}'
    if not isinstance(pairs, list) or not all(isinstance(pair, tuple) for pair in pairs):
        return 'it is no JSON object; each line is one, such as {"name": "Maren Tallis", "knives": 6}'
    try:
        _known([str(name) for name, _ in pairs])
    except TypedError as error:
        return str(error)
    odd = [name for name, value in pairs if not isinstance(value, str | int | None) or isinstance(value, bool)]
    if odd:
        return f"“{odd[0]}” is neither text nor a whole number"
    return {name: "" if value is None else str(value) for name, value in pairs}


def _box(cells: Cells, settings: Settings) -> NewAnnounced:
    """One line as a box that is announced."""
    kinds, note = _kinds(cells, settings)
    return NewAnnounced(
        new_customer=NewCustomer(
            name=clean_name(cells.get("name", "")),
            phone=clean(cells.get("phone", ""), limit=60, field="phone"),
            town=clean(cells.get("town", ""), limit=120, field="town"),
            address=clean(cells.get("address", ""), limit=500, field="address"),
        ),
        expected_knives=_count(cells, kinds),
        expected_on=_day(cells.get("expected_on", "")),
        goes_by=_way(cells.get("goes_back", "")),
        carrier_days=settings.parcels.carrier_days if _way(cells.get("goes_back", "")) is GoesBy.PARCEL else 0,
        note=note,
    )


def _kinds(cells: Cells, settings: Settings) -> tuple[int | None, str]:
    """How many knives the shorthand names (None without one), and the note with it in front."""
    kinds = clean(cells.get("kinds", ""), limit=LONGEST_KINDS, field="kinds")
    note = clean(cells.get("note", ""), limit=1000, field="note")
    if not kinds:
        return None, note
    return sum(line.count for line in read_lines(kinds, settings)), " · ".join(filter(None, (kinds, note)))


def _count(cells: Cells, kinds: int | None) -> int | None:
    typed = cells.get("knives", "").strip()
    if not typed:
        return kinds
    if not (typed.isascii() and typed.isdigit() and len(typed) <= 3 and int(typed) >= 1):
        raise TypedError(f"“{shown(typed)}” knives? A whole number from 1 to 999 stands there, or nothing.")
    if kinds is not None and int(typed) != kinds:
        raise TypedError(f"{typed} knives, but the kinds add up to {kinds}.")
    return int(typed)


def _day(typed: str) -> date | None:
    try:
        return date.fromisoformat(typed.strip()) if typed.strip() else None
    except ValueError:
        raise TypedError(f"“{shown(typed)}” is no day; a day is written like 2026-12-01.") from None


def _way(typed: str) -> GoesBy:
    """The way back by its word; a parcel where nothing stands."""
    word = typed.strip().casefold()
    for way in GoesBy:
        if word == way.value or (not word and way is GoesBy.PARCEL):
            return way
    raise TypedError(f"“{shown(typed)}” is no way back; they are {' and '.join(way.value for way in GoesBy)}.")
