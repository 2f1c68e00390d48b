"""Making a new shop file; an existing one is never started over."""

import secrets
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from queueboard.records import database as db
from queueboard.records.instants import to_us
from queueboard.records.making import making, there_already
from queueboard.records.pointing import address_in
from queueboard.settings.reading import read_settings
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.values.actor import Actor

PATIENCE_MS = 10_000
"""Nobody else writes a file that is just being made; a slow disk may."""


def start_shop(path: Path, actor: Actor, settings_text: str) -> Shop:
    """Make a new shop file from a text of settings, and open it; an existing file is refused."""
    with new_shop(path, actor, settings_text):
        pass
    return open_shop(path)


@contextmanager
def new_shop(path: Path, actor: Actor, settings_text: str) -> Iterator[Shop]:
    """A new shop that can be worked in while it is made; it appears whole at the end, or not at all.

    One on a server is made in a file, and taken there at the end in one transaction.
    """
    db.check_library()
    address = address_in(path)
    if address is None and path.exists():
        raise there_already(path)
    read_settings(settings_text)
    if address is not None:
        from queueboard.shop.on_server import new_on_server

        with new_on_server(path, address) as made, _new_file(made, actor, settings_text) as shop:
            yield shop
        return
    with _new_file(path, actor, settings_text) as shop:
        yield shop


@contextmanager
def _new_file(path: Path, actor: Actor, settings_text: str) -> Iterator[Shop]:
    salt = secrets.token_hex(16)
    with making(path) as made:
        with db.faults(path):
            db.create(made, salt, to_us(actor.now))
            shop = Shop(path, db.connect(made, PATIENCE_MS), salt)
        try:
            db.hurry(shop.database)
            take_settings(shop, actor, settings_text)
            yield shop
        finally:
            close_shop(shop)
