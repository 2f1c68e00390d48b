"""What was counted of the days at the bench, kept beside the shop file, so that no start counts three months anew.

Nothing rests on it: where it is missing, is damaged, or was counted from another history it says nothing.
"""

import hashlib
import json
from contextlib import suppress
from datetime import date
from pathlib import Path

from queueboard.planning.learning import WorkedDay
from queueboard.records.copies import stem_of
from queueboard.records.database import ShopDatabase
from queueboard.slotted import dataclass

COUNTED_AS = 1
"""To be raised when days come to be counted in another way, so that none counted in the old way is taken for one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptDays:
    """The days on which something was done at the bench, as they are known from a line of history on."""

    settings_id: int
    """The settings they were counted with."""
    line: int
    """The id of the line of history that was the newest then."""
    until: date
    """The first day that is not counted: it was not over."""
    days: tuple[tuple[date, WorkedDay], ...]
    """Oldest first."""


def kept_file(path: Path) -> Path:
    """Where the days of a shop file are kept: shop-days.json for shop.qb."""
    return path.with_name(f"{stem_of(path)}-days.json")


def read_days(path: Path, database: ShopDatabase) -> KeptDays | None:
    """The days kept beside a shop file; None where nothing is kept that was counted from its history."""
    try:
        told, _, text = kept_file(path).read_text(encoding="utf-8").partition("\n")
        if told != _sum(text):
            return None
        kept = json.loads(text)
        head, line, days = kept["hash"], int(kept["line"]), kept["days"]
    except (OSError, ValueError, KeyError):
        return None
    if kept["counted_as"] != COUNTED_AS or head != _hash(database, line):
        return None
    return KeptDays(
        settings_id=kept["settings_id"],
        line=line,
        until=date.fromisoformat(kept["until"]),
        days=tuple((date.fromisoformat(day), _worked(*counted)) for day, *counted in days),
    )


def write_days(path: Path, database: ShopDatabase, kept: KeptDays) -> None:
    """Keep them for the next start; where that cannot be written, it will count them again."""
    days = [(day.isoformat(), *_counted(worked)) for day, worked in kept.days]
    text = json.dumps(
        {
            "counted_as": COUNTED_AS,
            "hash": _hash(database, kept.line),
            "line": kept.line,
            "settings_id": kept.settings_id,
            "until": kept.until.isoformat(),
            "days": days,
        }
    )
    target = kept_file(path)
    passing = target.with_name(target.name + ".part")
    with suppress(OSError):
        passing.touch(mode=0o600)
        passing.write_text(f"{_sum(text)}\n{text}", encoding="utf-8")
        passing.replace(target)


def _counted(day: WorkedDay) -> tuple[object, ...]:
    return (day.open_seconds, day.starter_seconds, day.knives, day.boxes, day.set_up_seconds, day.bench_seconds)


def _worked(
    open_seconds: list[int], starter_seconds: list[int], knives: int, boxes: int, set_up_seconds: int, bench: int
) -> WorkedDay:
    return WorkedDay(
        open_seconds=tuple(open_seconds),
        starter_seconds=tuple(starter_seconds),
        knives=knives,
        boxes=boxes,
        set_up_seconds=set_up_seconds,
        bench_seconds=bench,
    )


def _sum(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()


def _hash(database: ShopDatabase, line: int) -> str:
    """The hash of a line of history, which stands for all lines before it; empty for one that is not there."""
    return str(database.one("SELECT hash FROM history WHERE id = ?", (line,)) or "")
