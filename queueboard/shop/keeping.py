"""Copies of the shop file: made whole, verified, and only then given their name; old ones thinned out."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path

from queueboard.errors import FileError
from queueboard.records import copying, erased_list
from queueboard.records import database as db
from queueboard.records.copies import (
    copies_folder,
    copies_of,
    copy_name,
    day_of,
    known_good,
    newest_copy_words,
    note_elsewhere,
    sum_file,
)
from queueboard.records.making import making
from queueboard.records.thinning import kept
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in


def daily_copy(shop: Shop, now: datetime) -> Path | None:
    """Make today's copy unless there is a good one; its place, or None when today's is there or a server makes its own.

    Today is the shop's own: in its evening another day has begun elsewhere. Older copies are thinned out only behind
    a new one that was verified. A second folder, where the settings name one and it is there, gets the same.
    """
    if shop.on_server:
        return None
    with shop.reading() as database:
        settings = settings_in(database)
    today = now.astimezone(settings.zone).date()
    target = copies_folder(shop.path) / copy_name(shop.path, today.isoformat())
    with _about(target):
        made = not (target.exists() and known_good(target))
        if made:
            target.parent.mkdir(mode=0o700, exist_ok=True)
            _copy(shop, target)
            _tidy(shop.path, target.parent, now)
        shop.backup_at = now if made else datetime.fromtimestamp(target.stat().st_mtime, tz=UTC)
    if settings.keeping.second_folder:
        _second(shop, target, Path(settings.keeping.second_folder), now)
    return target if made else None


def _second(shop: Shop, copy: Path, folder: Path, now: datetime) -> None:
    """Bring a verified copy into a second folder as well; a stick that is not plugged in is no trouble."""
    target = folder / copy.name
    with _about(target):
        if not folder.is_dir():
            return
        if not (target.exists() and known_good(target)):
            if not copying.copy_bytes(copy, target):
                raise FileError(
                    f"The copy in {folder} is not what was written there; it was thrown away. The shop file and the "
                    "copy beside it are whole. Try another stick."
                )
            _tidy(shop.path, folder, now)
        erased_list.bring(shop.path, folder)
        note_elsewhere(shop.path, folder, now)


def _tidy(path: Path, folder: Path, now: datetime) -> None:
    """Behind a new copy: old ones go, and from those that stay the words of who was erased."""
    from queueboard.shop.forgetting import forget_in_copies

    thin_out(path, folder)
    forget_in_copies(path, folder, now)


def thin_out(path: Path, folder: Path) -> None:
    """Take away the copies of a shop file that are too old to be kept; those on a day that is none are left alone."""
    dated = {copy: day for copy in copies_of(path, folder) if (day := day_of(copy)) is not None}
    stays = kept(dated.values())
    for copy, day in dated.items():
        if day not in stays:
            copy.unlink()
            sum_file(copy).unlink(missing_ok=True)


def copy_to(shop: Shop, target: Path, now: datetime) -> None:
    """Copy the shop file to a new file named by the person; an existing file is refused."""
    with _about(target):
        if target.exists():
            raise FileError(f"{target} is there already; nothing was changed. Name a new file for the copy.")
        if not target.parent.is_dir():
            raise FileError(f"There is no folder {target.parent}; make it first, or name another place.")
        _copy(shop, target)
        erased_list.bring(shop.path, target.parent)
        note_elsewhere(shop.path, target.parent, now)
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
    passing = copying.passing_name(target)
    try:
        passing.unlink(missing_ok=True)
        with shop.reading() as database:
            raw = database.raw()
            if not isinstance(raw, sqlite3.Connection):
                raise FileError(
                    "This shop is on a server, where copies are made with the server's own pg_dump (README says how). "
                    "`queueboard export FILE` writes all of it out on this machine."
                )
            copying.copy_whole(raw, passing)
            if not copying.same_content(raw, passing):
                if database.one("PRAGMA quick_check") != "ok":
                    raise db.damaged(shop.path)
                raise FileError(
                    f"The copy {passing} is not whole and was thrown away; the shop file is untouched. Try again."
                )
        copying.give_name(passing, target)
    finally:
        with suppress(OSError):
            passing.unlink(missing_ok=True)


def new_private_file(target: Path, text: str) -> None:
    """Write a text into a new file that only its owner may read; one that is there already is refused."""
    with making(target, "Name a new file for it.") as made:
        made.write_text(text, encoding="utf-8")
