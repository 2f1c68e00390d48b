"""The lines of a market day while they are typed in: a file beside the shop file, whole after each Enter.

It is there from the first line until its boxes are taken in and that day is over, or a new pad is begun, so that undo
gives the lines back to be mended. It belongs to the shop and not to a person: one types in the morning, another in the
evening. Only the owner may read it.
"""

import json
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import field, replace
from datetime import date, datetime
from pathlib import Path

from queueboard.errors import FileError
from queueboard.plainfiles import write_whole
from queueboard.records.telling import newest_line
from queueboard.shop.market import taken_in
from queueboard.shop.opening import Shop
from queueboard.slotted import dataclass

if sys.platform != "win32":
    import fcntl

SOMEBODY_NEW = "new"


@dataclass(frozen=True, slots=True, kw_only=True)
class PadLine:
    """One line as it was typed."""

    id: int
    text: str
    whose: str = ""
    """Empty for whoever is proposed, SOMEBODY_NEW, or the id of a known customer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pad:
    """All that was typed of one market day."""

    id: str
    """Tells this pad from every other."""
    day: date
    since_line: int = 0
    """The newest line of history when it was begun."""
    tags: tuple[int, int] | None = None
    """The tags of this day, first and last; None for those of the settings."""
    lines: tuple[PadLine, ...] = field(default=())

    @property
    def next_id(self) -> int:
        """The id of the next line."""
        return 1 + max((line.id for line in self.lines), default=0)

    def line(self, line_id: int) -> PadLine | None:
        """The line with this id; None when it was taken off."""
        return next((line for line in self.lines if line.id == line_id), None)


def pad_path(shop: Shop) -> Path:
    """Where the pad of a shop lies."""
    return shop.path.parent / "typed" / f"{shop.path.stem}-market.json"


def read_pad(shop: Shop) -> Pad | None:
    """The pad as it was left; None where none is, or what lies there is none. FileError when it cannot be read."""
    try:
        text = pad_path(shop).read_text(encoding="utf-8")
    except FileNotFoundError:
        return None
    except (OSError, ValueError) as error:
        raise FileError(f"What was typed of the market cannot be read: {error}.") from error
    try:
        return _pad(json.loads(text))
    except (ValueError, TypeError, KeyError, AttributeError):
        return None


def pad_of(shop: Shop, now: datetime) -> tuple[Pad, bool]:
    """The pad to go on with, and whether its lines are in the shop's file; a new one where its day is over.

    The instant is in the zone of the shop, whose day counts.
    """
    pad = read_pad(shop)
    if pad is None:
        return new_pad(shop, now), False
    taken = taken_in(shop, pad.id, pad.since_line)
    if taken and now.date() > pad.day:
        forget_pad(shop)
        return new_pad(shop, now), False
    return pad, taken


def new_pad(shop: Shop, now: datetime) -> Pad:
    """An empty pad; nothing lies on the disk until its first line."""
    with shop.reading() as database:
        newest = newest_line(database)
    since_line = 0 if newest is None else newest[0]
    return Pad(id=f"{now.isoformat()} {since_line}", day=now.date(), since_line=since_line)


def put_line(shop: Shop, pad: Pad, line: PadLine) -> Pad:
    """Keep a line, in place of the one with its id; the pad as it is then. FileError when the disk does not take it."""
    with _alone(shop):
        now = _newest(shop, pad)
        if line.id and now.line(line.id) is not None:
            lines = tuple(line if one.id == line.id else one for one in now.lines)
        else:
            lines = (*now.lines, replace(line, id=now.next_id))
        return _write(shop, replace(now, lines=lines))


def strike_line(shop: Shop, pad: Pad, line_id: int) -> Pad:
    """Take a line off; the pad as it is then."""
    with _alone(shop):
        now = _newest(shop, pad)
        return _write(shop, replace(now, lines=tuple(one for one in now.lines if one.id != line_id)))


def set_tags(shop: Shop, pad: Pad, tags: tuple[int, int]) -> Pad:
    """Keep which tags were printed for this day; the pad as it is then."""
    with _alone(shop):
        return _write(shop, replace(_newest(shop, pad), tags=tags))


def forget_pad(shop: Shop) -> None:
    """Let go of what was typed."""
    pad_path(shop).unlink(missing_ok=True)


def _newest(shop: Shop, pad: Pad) -> Pad:
    """The pad as another window may have left it."""
    kept = read_pad(shop)
    return kept if kept is not None and kept.id == pad.id else pad


@contextmanager
def _alone(shop: Shop) -> Iterator[None]:
    """Let no other window write the pad between reading and writing it."""
    path = pad_path(shop).with_suffix(".lock")
    try:
        path.parent.mkdir(mode=0o700, exist_ok=True)
        with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT, 0o600), "w") as file:
            if sys.platform != "win32":
                fcntl.flock(file, fcntl.LOCK_EX)
            yield
    except OSError as error:
        raise FileError(f"What is typed here cannot be kept: {error.strerror or error}. Free some room.") from error


def _write(shop: Shop, pad: Pad) -> Pad:
    write_whole(pad_path(shop), json.dumps(_facts(pad)))
    return pad


def _facts(pad: Pad) -> dict[str, object]:
    return {
        "id": pad.id,
        "day": pad.day.isoformat(),
        "since_line": pad.since_line,
        "tags": pad.tags,
        "lines": [[line.id, line.text, line.whose] for line in pad.lines],
    }


def _pad(facts: dict[str, object]) -> Pad:
    tags, lines = facts["tags"], facts["lines"]
    if not isinstance(lines, list):
        raise TypeError("lines")
    return Pad(
        id=str(facts["id"]),
        day=date.fromisoformat(str(facts["day"])),
        since_line=int(str(facts["since_line"])),
        tags=(int(tags[0]), int(tags[1])) if isinstance(tags, list) else None,
        lines=tuple(PadLine(id=int(one[0]), text=str(one[1]), whose=str(one[2])) for one in lines),
    )
