"""Where the automatic copies of a shop file lie, which of the files there are its own, and which are good."""

import hashlib
import re
from contextlib import suppress
from datetime import UTC, date, datetime
from pathlib import Path

_DAY = "[0-9]{4}-[0-9]{2}-[0-9]{2}"


def copies_folder(path: Path) -> Path:
    """The folder for the copies of a shop file: beside it."""
    return path.parent / "copies"


def stem_of(path: Path) -> str:
    """What the names of everything that is kept of a shop file begin with: shop for shop.qb."""
    return path.stem if path.suffix == ".qb" else path.name


def copy_name(path: Path, day: str) -> str:
    """The name of the copy of a day, written by ISO 8601: shop-2026-11-27.qb for shop.qb."""
    return f"{stem_of(path)}-{day}.qb"


def copies_of(path: Path, folder: Path | None = None) -> tuple[Path, ...]:
    """The copies of this very shop file, the oldest first; those of another file in the same folder are none.

    folder: where to look, else the folder beside the file.
    """
    ours = re.compile(re.escape(copy_name(path, "DAY")).replace("DAY", _DAY))
    found = (copies_folder(path) if folder is None else folder).glob("*.qb")
    return tuple(sorted(copy for copy in found if ours.fullmatch(copy.name)))


def day_of(copy: Path) -> date | None:
    """The day that the name of a copy tells; None for a day that no calendar has."""
    try:
        return date.fromisoformat(copy.stem[-10:])
    except ValueError:
        return None


def sum_file(copy: Path) -> Path:
    """The file beside a copy that it can be checked by, as `sha256sum --check` reads it."""
    return copy.with_name(copy.name + ".sha256")


def sum_of(path: Path) -> str:
    """The SHA-256 of a file, in hexadecimal figures."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def has_sum(copy: Path) -> bool:
    """True when there is a file to check a copy by."""
    return sum_file(copy).is_file()


def as_written(copy: Path) -> bool:
    """True for a copy that is, byte for byte, what was written and verified; one without its sum is not known to be."""
    try:
        told = sum_file(copy).read_text(encoding="utf-8", errors="replace").split()
        return bool(told) and told[0] == sum_of(copy)
    except OSError:
        return False


def known_good(copy: Path) -> bool:
    """True for a copy that was not written to since it was verified, else for one that is as it was written.

    Its sum is written behind it; reading all of a large copy takes longer than all the rest of a start.
    """
    with suppress(OSError):
        if copy.stat().st_mtime_ns < sum_file(copy).stat().st_mtime_ns:
            return True
    return as_written(copy)


def newest_good(path: Path) -> Path | None:
    """The newest copy of a shop file that is as it was written."""
    return next((copy for copy in reversed(copies_of(path)) if as_written(copy)), None)


def newest_copy_words(path: Path) -> str:
    """What to put in the place of a shop file that is lost, as part of a sentence."""
    good = newest_good(path)
    which, copy = ("a copy that you made of it", "COPY") if good is None else ("the newest good copy", _quoted(good))
    return f"{which} back with `queueboard --file {_quoted(path)} restore {copy}`"


def _quoted(path: Path) -> str:
    import shlex

    return shlex.quote(str(path))


def note_elsewhere(path: Path, folder: Path, now: datetime) -> None:
    """Remember when a folder on another disk took a copy; that disk is seldom there when somebody asks."""
    if folder.stat().st_dev == path.stat().st_dev:
        return
    note = _elsewhere_file(path)
    note.parent.mkdir(mode=0o700, exist_ok=True)
    note.touch(mode=0o600)
    note.write_text(f"{now.astimezone(UTC).isoformat()} {folder.absolute()}\n", encoding="utf-8", errors="replace")


def elsewhere(path: Path) -> tuple[datetime, str] | None:
    """When a folder on another disk last took a copy, and which; None where none is known of."""
    try:
        when, _, folder = _elsewhere_file(path).read_text(encoding="utf-8", errors="replace").strip().partition(" ")
        at = datetime.fromisoformat(when)
    except (OSError, ValueError):
        return None
    return None if at.tzinfo is None else (at, folder)


def _elsewhere_file(path: Path) -> Path:
    return copies_folder(path) / f"{stem_of(path)}-elsewhere.txt"
