"""Erasing reaches the copies: what thinning keeps for good is made anew without the words of who was erased."""

from datetime import datetime
from pathlib import Path

from queueboard.errors import FileError
from queueboard.records import copying, erased_list, erasing, looking_over, putting_back
from queueboard.records import database as db
from queueboard.records.copies import copies_of, day_of
from queueboard.records.thinning import only_for_their_year
from queueboard.shop.erasing import erase_again
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor

PATIENCE_MS = 10_000
NOBODY = "shop"
"""Who acts in a copy, where nobody is asked."""


def forget_in_copies(path: Path, folder: Path, now: datetime) -> tuple[Path, ...]:
    """Erase in the copies of a folder that stay for nothing but their year who was erased since; those made anew.

    All other copies are thinned out within twelve months of copies. A copy that is not sound is left alone.
    """
    hashes = erased_list.listed(erased_list.list_in(path.parent, path))
    dated = {day: copy for copy in copies_of(path, folder) if (day := day_of(copy)) is not None}
    old = [dated[day] for day in sorted(only_for_their_year(dated))] if hashes else []
    return tuple(copy for copy in old if erasing.brings_back(copy, hashes) and _made_anew(copy, hashes, now))


def _made_anew(copy: Path, hashes: frozenset[str], now: datetime) -> bool:
    """Make a copy anew out of sight, look it over, and let it take the name of the old one; False for a damaged one."""
    try:
        with putting_back.workshop(copy) as folder:
            made = folder / "made.qb"
            putting_back.fetch(copy, made)
            if not _erased(made, hashes, now):
                return False
            copying.give_name(made, copy)
            return True
    except OSError as error:
        raise FileError(
            f"{copy} still holds the words of somebody who was erased since, and could not be made anew: "
            f"{error.strerror or error}. It is as it was; free some room there, and open the board again tomorrow."
        ) from error


def _erased(made: Path, hashes: frozenset[str], now: datetime) -> bool:
    with db.faults(made):
        database = db.connect(made, PATIENCE_MS)
        try:
            if not looking_over.look_over(database.raw()).sound:
                return False
            db.bring_up(database.raw())
            shop = Shop(made, database, str(database.one("SELECT salt FROM shop")))
            erase_again(shop, Actor(initials=NOBODY, now=now), hashes)
            database.one("PRAGMA journal_mode = DELETE")
            return looking_over.look_over(database.raw()).sound
        finally:
            database.close()
