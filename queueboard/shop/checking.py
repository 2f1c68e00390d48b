"""A look at the shop file itself: what SQLite, history and the copies say of it. Nothing in it is changed."""

import sqlite3
import stat
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from peewee import DatabaseError

from queueboard.errors import SettingsError
from queueboard.records import database as db
from queueboard.records import looking_over
from queueboard.records.auditing import NOT_READABLE
from queueboard.records.copies import as_written, copies_of, elsewhere, stem_of
from queueboard.records.migrations import STEPS
from queueboard.records.pointing import insist_on_file
from queueboard.records.shares import share_of
from queueboard.shop.settings_now import settings_in
from queueboard.values.health import Copies, Health

PATIENCE_MS = 10_000


def check(path: Path, now: datetime) -> Health:
    """Look a shop file over at now (aware); a missing, foreign, newer or shortened one raises FileError."""
    insist_on_file(path)
    db.check_library()
    db.look_before_opening(path)
    with db.faults(path):
        database = db.connect(path, PATIENCE_MS)
        try:
            with database.reading():
                found = looking_over.look_over(database.raw())
                zone = _zone(database)
        finally:
            database.close()
    file = path.stat()
    return Health(
        path=path,
        now=now.astimezone(zone),
        sqlite_version=sqlite3.sqlite_version,
        journal_mode=found.journal_mode,
        wal_reset_fixed=db.has_wal_reset_fix(sqlite3.sqlite_version_info),
        layout=found.layout,
        newest_layout=len(STEPS),
        pages=found.pages,
        page_bytes=found.page_bytes,
        file_bytes=file.st_size,
        unfinished=db.unfinished(path),
        integrity=found.integrity,
        unmatched=found.unmatched,
        history=found.history,
        lines=found.lines,
        share=share_under(path),
        others_may_read=bool(stat.S_IMODE(file.st_mode) & 0o077),
        copies=_copies(path, zone),
    )


def share_under(path: Path) -> str:
    """The network file system that a file lies on; empty for a disk of this machine."""
    return share_of(path.parent)


def _zone(database: db.ShopDatabase) -> ZoneInfo:
    """The shop's zone; UTC where its settings cannot be read any more."""
    try:
        return settings_in(database).zone
    except (*NOT_READABLE, SettingsError, DatabaseError):
        return ZoneInfo("UTC")


def _copies(path: Path, zone: ZoneInfo) -> Copies:
    good = {copy: as_written(copy) for copy in copies_of(path)}
    newest = next((copy for copy in reversed(good) if good[copy]), None)
    second = elsewhere(path)
    stem = stem_of(path)
    aside = (*path.parent.glob(f"{stem}-aside-*"), *path.parent.glob(f"{stem}-before-layout-*.qb"))
    return Copies(
        newest_good=newest,
        made=None if newest is None else datetime.fromtimestamp(newest.stat().st_mtime, tz=UTC).astimezone(zone),
        spoiled=tuple(copy for copy, whole in good.items() if not whole),
        elsewhere="" if second is None else second[1],
        elsewhere_at=None if second is None else second[0].astimezone(zone),
        aside=tuple(sorted(aside)),
    )
