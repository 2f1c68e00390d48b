"""How many knives of each kind have come as far as the bench: counted once, then read on from history."""

import json
from collections import Counter
from collections.abc import Iterable, Mapping

from queueboard.records.cells import whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.telling import lines_after
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Benched:
    """How many knives had come as far as the bench at a line of history, which is named by its hash too."""

    line: int
    hash: str
    counts: Mapping[str, int]
    """By kind."""


def benched(database: ShopDatabase) -> Mapping[str, int]:
    """How many knives have ever come as far as the bench, by kind, in the transaction that goes on.

    A count that was made in a transaction that came to nothing is known by its line, which then has another hash.
    """
    kept = database.benched
    newest = database.rows("SELECT id, hash FROM history ORDER BY id DESC LIMIT 1")
    line, mark = (whole(newest[0][0]), str(newest[0][1])) if newest else (0, "")
    if kept is not None and (kept.line, kept.hash) == (line, mark):
        return kept.counts
    counts = None if kept is None else _read_on(database, kept)
    database.benched = Benched(line=line, hash=mark, counts=_counted(database) if counts is None else counts)
    return database.benched.counts


def _counted(database: ShopDatabase) -> Mapping[str, int]:
    rows = database.rows("SELECT kind, count(*) FROM knife WHERE place <> 'received' GROUP BY kind")
    return {str(kind): whole(count) for kind, count in rows}


def _read_on(database: ShopDatabase, kept: Benched) -> Mapping[str, int] | None:
    """The counts now; None where they must be counted anew."""
    lines = lines_after(database, kept.line)
    if lines is None or database.one("SELECT hash FROM history WHERE id = ?", (kept.line,)) != kept.hash:
        return None
    was = _first_told(lines)
    marks = ", ".join("?" * len(was)) or "NULL"
    rows = database.rows(f"SELECT id, kind, place FROM knife WHERE id IN ({marks})", tuple(was))
    now = {whole(row[0]): (str(row[1]), str(row[2])) for row in rows}
    counts = Counter(kept.counts)
    for knife_id, before in was.items():
        if before.get("place", "received") != "received":
            counts[before["kind"] if "kind" in before else now[knife_id][0]] -= 1
    counts.update(kind for kind, place in now.values() if place != "received")
    return counts


def _first_told(lines: Iterable[tuple[Cell, ...]]) -> dict[int, dict[str, str]]:
    """By its id what lines tell of a knife as it stood before all of them; nothing of one that came with them.

    A line that does not tell the kind left it as it was; one that takes a knife away tells all of it.
    """
    was: dict[int, dict[str, str]] = {}
    for entity, knife_id, before, _ in lines:
        if entity == "knife":
            told = {} if before is None else dict(json.loads(str(before)))
            first = was.setdefault(whole(knife_id), told)
            if first:
                was[whole(knife_id)] = {**told, **first}
    return was
