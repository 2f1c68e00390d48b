"""What changed between two texts of settings, told without a person's own words."""

import re
from collections.abc import Iterator, Mapping
from datetime import date, time
from decimal import Decimal

from queueboard.settings.editing import values_in

MOST_NAMED = 3
"""Up to so many changes are named one by one."""

NAMED_ROWS = ("kinds", "processes")
"""Lists whose rows are called by name: history holds these names anyway. Rows of others are counted from 1."""

_KEY = re.compile(r"[a-z0-9_]{1,40}")
_CLOCK = re.compile(r"\d{1,2}:\d{2}(\s*-\s*\d{1,2}:\d{2})?")
_LONGEST = 40


def changed_words(before: str, after: str) -> str:
    """What changed between two texts that are valid TOML: bench.reserve_percent 10 -> 15 and 2 more; empty for nothing.

    Of figures, clock times, days and yes or no the values are told; of other words only that they changed.
    """
    changes = [_told(*change) for change in _changes("", values_in(before), values_in(after))]
    named, more = changes[:MOST_NAMED], len(changes) - MOST_NAMED
    return ", ".join(named) + (f" and {more} more" if more > 0 else "")


def _changes(path: str, before: object, after: object) -> Iterator[tuple[str, object, object]]:
    """Each value that differs, with where it stands; of a list with more or fewer rows how many there are."""
    if before == after:
        return
    old, new = _rows(before), _rows(after)
    if isinstance(before, Mapping | None) and isinstance(after, Mapping | None):
        for key in dict.fromkeys((*(before or {}), *(after or {}))):
            yield from _changes(_below(path, key), (before or {}).get(key), (after or {}).get(key))
    elif old and new and len(old) == len(new):
        for place, (one, other) in enumerate(zip(old, new, strict=True), start=1):
            name = one.get("name") if path in NAMED_ROWS and one.get("name") == other.get("name") else None
            yield from _changes(_below(path, str(name or place)), one, other)
    elif old or new:
        yield f"rows of {path}", len(old), len(new)
    else:
        yield path, before, after


def _rows(value: object) -> list[Mapping[str, object]]:
    """The rows of a list of tables; none of anything else."""
    return [row for row in value if isinstance(row, Mapping)] if isinstance(value, list) else []


def _below(path: str, key: str) -> str:
    """The path one key deeper; a key that somebody made up only where history may hold it."""
    shown = key if _KEY.fullmatch(key) or path in NAMED_ROWS else "…"
    return f"{path}.{shown}" if path else shown


def _told(path: str, before: object, after: object) -> str:
    old, new = _plain(before), _plain(after)
    return f"{path} changed" if old is None or new is None else f"{path} {old} -> {new}"


def _plain(value: object) -> str | None:
    """The value where it is no person's word: a figure, yes or no, a day, a clock time, a list of these; else None."""
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | Decimal | date | time) or (isinstance(value, str) and _CLOCK.fullmatch(value)):
        return str(value)
    if isinstance(value, list):
        parts = [_plain(one) for one in value]
        whole = ", ".join(part for part in parts if part is not None)
        return whole or "none" if None not in parts and len(whole) <= _LONGEST else None
    return None
