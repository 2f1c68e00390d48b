"""Who may import whom, on paper and in a running command."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.tree import ROOT

SLOW = ("textual", "holidays", "jinja2", "segno")
"""Libraries that cost a daily command more time than everything else it does."""


def modules_after(code: str) -> set[str]:
    """The first words of all modules that a fresh Python has loaded after running some lines of ours."""
    ending = "\nimport json, sys\nsys.stderr.write(json.dumps(sorted(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code + ending], cwd=ROOT, capture_output=True, text=True, check=True)
    return {name.partition(".")[0] for name in json.loads(done.stderr)}


def test_rooms_import_only_what_they_may() -> None:
    """The import rules in pyproject.toml hold."""
    lint = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run([lint, "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False)

    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize("room", ["values", "settings.shapes", "planning.order", "parcels.closing", "clean", "words"])
def test_a_pure_room_loads_neither_database_nor_screen(room: str) -> None:
    """Loading a room that only computes brings in no database, no screen and no slow library."""
    loaded = modules_after(f"import queueboard.{room}")

    assert not loaded & {"peewee", "sqlite3", "rich", *SLOW}


@pytest.mark.parametrize("command", ["day", "late", "labels", "boxes", "box 417", "find 417"])
def test_a_daily_command_loads_nothing_slow(command: str, shop_file: Path) -> None:
    """A daily command on a shop's file runs to its end without the libraries of screen, holidays and templates."""
    arguments = ["--file", str(shop_file), *command.split()]

    loaded = modules_after(f"from queueboard.cli import main\ntry:\n    main({arguments})\nexcept SystemExit: pass")

    assert not loaded & set(SLOW)
    assert "peewee" in loaded
