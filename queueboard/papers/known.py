"""All that is known of one customer, as text and as plain data for that customer."""

import json
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

from queueboard.papers.facts import Fact
from queueboard.papers.text import columns, page, section
from queueboard.phrases.dates import many
from queueboard.shop.erasing import AllKnown
from queueboard.shop.keeping import new_private_file
from queueboard.values.customer import Customer

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def customers_list(found: Iterable[Customer]) -> str:
    """A line for each customer, with the number that names them in this command."""
    rows = [(str(one.id), one.town or "-", one.name) for one in found]
    return page(columns(rows, right=frozenset({0}))) if rows else ""


def customers_facts(found: Iterable[Customer]) -> dict[str, Fact]:
    """The same as plain data, with the phone."""
    return {
        "customers": [{"id": one.id, "name": one.name, "phone": one.phone, "town": one.town} for one in found],
    }


def known_sheet(known: AllKnown) -> str:
    """The customer's own words, then how much there is of everything else."""
    one = known.customer
    own = (("name", one.name), ("phone", one.phone), ("town", one.town), ("address", one.address), ("notes", one.notes))
    counts = [
        many(len(rows), name.replace("_", " ")) for name, rows in sorted(known.rows.items()) if name != "customer"
    ]
    return page(
        (f"Customer {one.id}",),
        columns([(name, text or "-") for name, text in own]),
        section("Also", (", ".join(counts),)) if counts else (),
        section("Words from before", (f"{many(len(known.earlier_words), 'text')} kept beside history",)),
        ("", "--json prints all of it, --write FILE writes it into a file for that customer."),
    )


def known_facts(known: AllKnown) -> dict[str, Fact]:
    """Every row with every column, instants by ISO 8601; then the words from before."""
    tables: dict[str, Fact] = {
        name: [{_plain(column): _value(column, cell) for column, cell in row.items()} for row in rows]
        for name, rows in sorted(known.rows.items())
    }
    words: list[Fact] = [
        {"at": at.isoformat(), "of": entity, "field": field, "text": text}
        for at, entity, field, text in known.earlier_words
    ]
    return {"customer": known.customer.id, "rows": tables, "earlier_words": words}


def write_known(known: AllKnown, target: Path) -> None:
    """Write the same into a new file that only its owner may read."""
    new_private_file(target, json.dumps(known_facts(known), indent=2, ensure_ascii=False) + "\n")


def _plain(column: str) -> str:
    return column if column == "paused_total_us" else column.removesuffix("_us")


def _value(column: str, cell: int | str | None) -> Fact:
    if column.endswith("_us") and isinstance(cell, int) and column != "paused_total_us":
        return (_EPOCH + timedelta(microseconds=cell)).isoformat()
    return cell
