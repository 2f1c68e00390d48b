"""Copies of the shop file: made whole, verified, and only then given their name."""

import hashlib
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path

from queueboard.errors import FileError
from queueboard.records import copying
from queueboard.records.copies import copies_folder, copy_name, newest_copy_words
from queueboard.records.making import to_disk
from queueboard.shop.numbers import settings_in
from queueboard.shop.opening import Shop


def daily_copy(shop: Shop, now: datetime) -> Path | None:
    """Make today's copy unless there is one; its place, or None when today's is there already.

    Today is the shop's own: in its evening another day has begun elsewhere.
    """
    with shop.reading() as database:
        today = now.astimezone(settings_in(database).zone).date()
    target = copies_folder(shop.path) / copy_name(shop.path, today.isoformat())
    with _about(target):
        if target.exists():
            shop.backup_at = datetime.fromtimestamp(target.stat().st_mtime, tz=UTC)
            return None
        target.parent.mkdir(mode=0o700, exist_ok=True)
        _copy(shop, target)
    shop.backup_at = now
    return target


def copy_to(shop: Shop, target: Path, now: datetime) -> None:
    """Copy the shop file to a new file named by the person; an existing file is refused."""
    with _about(target):
        if target.exists():
            raise FileError(f"{target} is there already; nothing was changed. Name a new file for the copy.")
        if not target.parent.is_dir():
            raise FileError(f"There is no folder {target.parent}; make it first, or name another place.")
        _copy(shop, target)
    shop.backup_at = now


def newest_copy(shop: Shop) -> str:
    """What to put in the place of the shop file when it is lost, as part of a sentence."""
    return newest_copy_words(shop.path)


@contextmanager
def _about(target: Path) -> Iterator[None]:
    """Say what the machine refuses as what it is: about the copy, while the shop goes on."""
    try:
        yield
    except OSError as error:
        raise FileError(
            f"The copy {target} could not be made: {error.strerror or error}. The shop file is whole. "
            "Allow writing there, or copy it to another place: queueboard backup FILE."
        ) from error


def _copy(shop: Shop, target: Path) -> None:
    """Copy under a passing name, verify, bring to the disk, and only then give the name."""
    passing = target.with_name(f"{target.name}.{os.getpid()}.part")  # another window may be making the same copy
    try:
        passing.unlink(missing_ok=True)
        with shop.reading() as database:
            copying.copy_whole(database.raw(), passing)
            if not copying.same_content(database, passing):
                raise FileError(
                    f"The copy {passing} is not whole and was thrown away; the shop file is untouched. Try again."
                )
        to_disk(passing)
        passing.replace(target)
        to_disk(target.parent)
        sums = target.with_name(target.name + ".sha256")
        sums.touch(mode=0o600)
        sums.write_text(f"{hashlib.sha256(target.read_bytes()).hexdigest()}  {target.name}\n")
    finally:
        with suppress(OSError):
            passing.unlink(missing_ok=True)
