"""On what a figure was measured, in one line above it."""

import platform
import sqlite3
from datetime import UTC, datetime


def heading(script: str, seed: int) -> str:
    """Script, seed, versions, day and machine."""
    return (
        f"# {script} seed {seed} · Python {platform.python_version()} · SQLite {sqlite3.sqlite_version} · "
        f"{datetime.now(UTC):%Y-%m-%d} · {platform.system()} {platform.machine()}"
    )
