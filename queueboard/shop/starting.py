"""Making a new shop file; an existing one is never started over."""

import secrets
from pathlib import Path

from queueboard.errors import SettingsError
from queueboard.records import database as db
from queueboard.records.instants import to_us
from queueboard.settings.reading import read_settings
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop
from queueboard.values.actor import Actor

PATIENCE_MS = 10_000
"""Nobody else writes a file that is just being made; a slow disk may."""


def start_shop(path: Path, actor: Actor, settings_text: str, *, throw_away: bool = False) -> Shop:
    """Make a new shop file from a text of settings; an existing file is refused.

    throw_away leaves out the waiting for the disk: only for demo and test files.
    """
    db.check_library()
    if path.exists():
        raise db.there_already(path)
    read_settings(settings_text)
    salt = secrets.token_hex(16)
    db.create(path, salt, to_us(actor.now))
    shop = Shop(path, db.connect(path, PATIENCE_MS), salt)
    if throw_away:
        shop.database.rows("PRAGMA synchronous = OFF")
    try:
        take_settings(shop, actor, settings_text)
    except SettingsError:
        close_shop(shop)
        for end in ("", "-wal", "-shm", "-journal"):
            path.with_name(path.name + end).unlink(missing_ok=True)
        raise
    return shop
