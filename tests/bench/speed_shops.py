"""The shops that the figures of speed are measured on, in a folder of their own."""

import shutil
import sqlite3
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cached_property
from pathlib import Path

from queueboard.records.instants import from_us
from queueboard.seedfiles import seed_text
from queueboard.shop.opening import close_shop
from queueboard.shop.starting import start_shop
from queueboard.values.actor import Actor
from tests.bench import years
from tests.bench.years_open import open_more

KNIVES_A_YEAR = 25_000
FEW, MANY = 400, 2_000
"""Open knives of a busy shop, and of one that drowns."""


@dataclass(frozen=True)
class Shops:
    """Each is made when it is first asked for."""

    folder: Path
    given: Path | None
    """A file of ten years that was made before; it is copied, never written."""
    given_year: Path | None = None
    """One of a year, of the same morning."""

    @cached_property
    def empty(self) -> Path:
        """Just started: the starter's settings and nothing else."""
        path = self._at("empty")
        close_shop(start_shop(path, Actor(initials="MB", now=datetime.now(UTC)), seed_text("settings.toml")))
        return path

    @cached_property
    def ten(self) -> Path:
        """Ten years, 250,000 knives, FEW of them open."""
        return self._ten("ten", FEW)

    @cached_property
    def ten_full(self) -> Path:
        """Ten years with MANY open knives."""
        return self._ten("ten-full", MANY)

    @cached_property
    def one(self) -> Path:
        """One year of the same shop, a tenth of the knives; the same boxes are open on the same morning."""
        path = self._at("one")
        if self.given_year is None:
            years.make(path, KNIVES_A_YEAR, 1, morning_of(self.ten))
        else:
            shutil.copyfile(self.given_year, path)
        open_more(path, FEW)
        return path

    def _ten(self, name: str, knives: int) -> Path:
        path = self._at(name)
        if self.given is None:
            years.make(path, 10 * KNIVES_A_YEAR, 10, datetime.now(UTC))
        else:
            shutil.copyfile(self.given, path)
        open_more(path, knives)
        return path

    def _at(self, name: str) -> Path:
        """Each lies in its own folder, as its copies and papers will."""
        folder = self.folder / name
        folder.mkdir(mode=0o700)
        return folder / "shop.qb"


def morning_of(path: Path) -> datetime:
    """A few minutes behind the newest thing that was done in a shop."""
    connection = sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True)
    try:
        (newest,) = connection.execute("SELECT max(at_us) FROM history").fetchone()
    finally:
        connection.close()
    return from_us(newest) + timedelta(minutes=5)


def size_mb(path: Path) -> int:
    """Of a file, for the heading."""
    return round(path.stat().st_size / 1_000_000)
