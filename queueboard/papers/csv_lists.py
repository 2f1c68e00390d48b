"""Every list as CSV: one row of plain facts a line, to be opened by a spreadsheet without anything in it being run.

Line ends and quoting follow RFC 4180, the text is UTF-8 without a mark in front. What a person typed may begin with a
sign by which a spreadsheet takes a cell for a formula; such a cell gets an apostrophe in front, as OWASP advises
(owasp.org/www-community/attacks/CSV_Injection). So does a text that begins with an apostrophe itself: who takes one
apostrophe away from each text that has it has the very text again. Numbers stay numbers.
"""

import csv
import io
from collections.abc import Iterator, Mapping, Sequence

from queueboard.papers.facts import Fact
from queueboard.slotted import dataclass

Cell = int | float | str
"""What a cell holds; an empty text where nothing is known."""

_OPENERS = "=+-@\t\r\n＝＋－＠"
"""Signs that may open a formula: OWASP's list, and the wide forms of four of them (from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListTable:
    """How the facts of a list become rows."""

    rows: tuple[str, ...]
    """The key of the list in its facts; with a second one a row is an entry of that list inside the first."""
    columns: tuple[str, ...]
    """Keys of an entry; a point leads into a table inside it: customer.name. Lists are joined by a space."""
    after: tuple[str, ...] = ()
    """The key of a list whose entries follow behind; what they do not have stays empty."""


_BOX = (
    *("number", "customer.name", "customer.phone", "customer.town", "came_by", "goes_by", "received_at", "ship_by"),
    *("lateness", "late_minutes", "minutes_left", "on_hand", "can_leave", "counts.received", "counts.on_bench"),
    *("counts.testing", "counts.ready", "waiting_for", "packing", "price_cents", "paid_cents", "owed_cents"),
    *("label.carrier", "label.expires_on", "note"),
)
_GONE = ("left_at", "handed_to", "carrier", "settled")
_KNIFE = (
    *("tag", "kind", "edge", "length_mm", "condition", "column", "mark", "wish", "note", "rework", "declined"),
    *("waiting_for", "price_cents"),
)
_CHANGE = ("name", "pairs", "less.mean_gf", "less.median_gf", "less.percent")

TABLES: Mapping[str, ListTable] = {
    "day": ListTable(
        rows=("runs",),
        columns=("process", "why", "tags", "minutes", "set_up_seconds", "handling_minutes", "start", "end"),
    ),
    "late": ListTable(rows=("boxes",), columns=_BOX),
    "boxes": ListTable(rows=("boxes",), columns=_BOX),
    "find": ListTable(rows=("boxes",), columns=(*_BOX, *_GONE), after=("gone",)),
    "box": ListTable(rows=("box", "knives"), columns=_KNIFE),
    "labels": ListTable(
        rows=("labels",), columns=("number", "customer", "word", "last_day", "owner", "state", "expires_on")
    ),
    "owing": ListTable(
        rows=("accounts", "boxes"),
        columns=(
            *("customer.name", "customer.phone", "customer.town", "days", "hold", "number", "closed", "left_at"),
            *("settled", "paid_cents", "owed_cents"),
        ),
    ),
    "shelf": ListTable(
        rows=("boxes",),
        columns=(
            *("number", "customer.name", "customer.phone", "customer.town", "ready_since", "days", "place", "knives"),
            *("owed_cents", "notice_due", "too_long"),
        ),
    ),
    "swaps": ListTable(
        rows=("kitchens", "sets", "kinds"),
        columns=(
            *("customer.name", "next_round", "hold", "set", "kind", "whole", "clean_here", "dull_here"),
            *("with_kitchen", "missing"),
        ),
    ),
    "market": ListTable(
        rows=("bring",),
        columns=(
            *("number", "customer.name", "customer.phone", "customer.town", "day", "knives", "ready", "owed_cents"),
        ),
    ),
    "evening": ListTable(rows=("done",), columns=("day", "number", "customer", "ready", "gone", "closed")),
    "month": ListTable(
        rows=("kinds",), columns=("month", "kind", "knives", "timed", "seconds_each", "listed_seconds_each")
    ),
    "said": ListTable(rows=("chances",), columns=("from_percent", "boxes", "said_permille", "late")),
    "compare": ListTable(rows=("before_and_after", "kinds"), columns=_CHANGE),
    "chart": ListTable(rows=("charts", "readings"), columns=("process", "belt", "tag", "at", "mean_gf", "signals")),
    "customer": ListTable(rows=("customers",), columns=("id", "name", "phone", "town")),
}
"""One entry for each list that is printed as CSV, by the name of its command."""


def csv_of(name: str, facts: Mapping[str, Fact]) -> str:
    """The list of the command with this name as CSV, its columns named in the first line; KeyError for no list."""
    table = TABLES[name]
    return csv_text(
        [column.replace(".", "_") for column in table.columns],
        ([_cell(entry, column) for column in table.columns] for entry in _all_entries(facts, table)),
    )


def csv_text(head: Sequence[str], rows: Iterator[Sequence[Cell]]) -> str:
    """A table as CSV: texts in quotation marks and harmless, numbers bare, each line ended by CR LF."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([harmless_cell(cell) if isinstance(cell, str) else cell for cell in row] for row in rows)
    return out.getvalue()


def harmless_cell(text: str) -> str:
    """The text as no spreadsheet takes it for a formula, also behind blanks: an apostrophe in front where it might."""
    begins = text.lstrip(" \u00a0\ufeff")[:1]
    return f"'{text}" if (begins and begins in _OPENERS) or text.startswith("'") else text


def typed_cell(cell: str) -> str:
    """What was typed, out of a harmless cell."""
    return cell.removeprefix("'")


def _all_entries(facts: Mapping[str, Fact], table: ListTable) -> Iterator[Mapping[str, Fact]]:
    yield from _entries(facts, table.rows)
    if table.after:
        yield from _entries(facts, table.after)


def _entries(facts: Mapping[str, Fact], path: Sequence[str]) -> Iterator[Mapping[str, Fact]]:
    """The rows under a path; what stands around a row is read as if it stood in it."""
    inner = facts[path[0]]
    for entry in inner if isinstance(inner, list) else [inner]:
        if isinstance(entry, dict):
            row = {**facts, **entry}
            yield from _entries(row, path[1:]) if path[1:] else [row]


def _cell(entry: Mapping[str, Fact], column: str) -> Cell:
    found: Fact = dict(entry)
    for key in column.split("."):
        found = found.get(key) if isinstance(found, dict) else None
    if isinstance(found, list):
        return " ".join(str(one) for one in found)
    if isinstance(found, bool):
        return "yes" if found else "no"
    return found if isinstance(found, int | float | str) else ""
