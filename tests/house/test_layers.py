"""Who may import whom, on paper and in a running command."""

import json
import subprocess
import sys
from argparse import ArgumentParser
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path

import pytest

from queueboard.cli import SERVER_DRIVERS
from queueboard.cli.common import Command
from queueboard.cli.running import FAMILIES
from tests.house.tree import ROOT

SLOW = ("textual", "holidays", "jinja2", "segno")
"""Libraries that cost a daily command more time than everything else it does."""

NOT_FOR_A_LIST = {
    "rich",
    "dateutil",
    "asyncio",
    "statistics",
    "random",
    "difflib",
    "csv",
    "tempfile",
    "platformdirs",
    "importlib.metadata",
    "queueboard.board",
    "queueboard.papers.pages",
    "queueboard.papers.text",
    "queueboard.shop.receiving",
    "queueboard.shop.moving",
    "queueboard.shop.keeping",
    "queueboard.cli.keeping",
    "queueboard.cli.market",
    "queueboard.records.tables",
    "queueboard.records.writing",
}
"""What `queueboard day --json` gets along without besides: each is a hundredth of its time or more."""

NOT_FOR_THE_FIRST_PAINT = {
    "holidays",
    "jinja2",
    "segno",
    "dateutil",
    "statistics",
    "importlib.metadata",
    "textual.widgets._markdown",
    "textual.widgets._text_area",
    "queueboard.board.forms",
    "queueboard.board.screens.dialogs",
    "queueboard.board.screens.box",
    "queueboard.board.screens.close_out",
    "queueboard.board.screens.day",
    "queueboard.board.screens.find",
    "queueboard.board.screens.tray",
    "queueboard.papers.pages",
    "queueboard.papers.text",
    "queueboard.papers.facts",
    "queueboard.intake.lines",
    "queueboard.phrases.whole_box",
    "queueboard.shop.moving",
    "queueboard.shop.running",
    "queueboard.shop.receiving",
    "queueboard.shop.quoting",
    "queueboard.shop.closing",
    "queueboard.shop.testing",
    "queueboard.shop.finding",
    "queueboard.shop.keeping",
    "queueboard.records.tables",
    "queueboard.records.writing",
}
"""What the board is shown without: each is loaded by the key that needs it."""

FIRST_PAINT = """
import asyncio, datetime, pathlib
from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.shop.opening import open_shop

async def paint():
    desk = Desk(open_shop(pathlib.Path({path!r})), "MB", lambda: datetime.datetime.now(datetime.UTC))
    async with QueueboardApp(desk).run_test() as pilot:
        await pilot.pause()
        assert pilot.app.screen.columns.all()[0].rows

asyncio.run(paint())
"""


def loaded_after(code: str) -> set[str]:
    """All modules that a fresh Python has loaded after running some lines of ours."""
    beginning = "from queueboard import cli\ncli._be_quick([])\n"  # as the program itself begins
    ending = "\nimport json, sys\nsys.stderr.write(json.dumps(sorted(sys.modules)))"
    done = subprocess.run(
        [sys.executable, "-c", beginning + code + ending], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return set(json.loads(done.stderr))


def modules_after(code: str) -> set[str]:
    """The first words of all modules that a fresh Python has loaded after running some lines of ours."""
    return {name.partition(".")[0] for name in loaded_after(code)}


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


@pytest.mark.parametrize("words", ["day", "late", "labels", "boxes", "box 417", "find 417"])
def test_a_daily_command_loads_nothing_slow(words: str, shop_file: Path) -> None:
    """A daily command on a shop's file runs to its end without the libraries of screen, holidays and templates."""
    loaded = modules_after(command("--file", str(shop_file), *words.split()))

    assert not loaded & set(SLOW)
    assert "peewee" in loaded


def command(*words: str) -> str:
    """Lines that run one command to its end."""
    return f"from queueboard.cli import main\ntry:\n    main({list(words)})\nexcept SystemExit: pass"


@pytest.mark.sqlite_file
def test_the_day_as_json_loads_only_what_it_is_made_of(shop_file: Path) -> None:
    """`queueboard day --json` loads no screen, no paper, no other command, and no library for what it does not do."""
    loaded = loaded_after(command("--file", str(shop_file), "day", "--json"))

    assert not loaded & NOT_FOR_A_LIST
    assert "queueboard.papers.facts" in loaded


@pytest.mark.sqlite_file
def test_the_board_is_shown_before_what_its_keys_need_is_loaded(shop_file: Path) -> None:
    """The first look at the board loads no dialog, no form, no paper and no operation."""
    loaded = loaded_after(FIRST_PAINT.format(path=str(shop_file)))

    assert not loaded & NOT_FOR_THE_FIRST_PAINT
    assert "queueboard.board.screens.board" in loaded


def test_what_must_not_be_loaded_is_there_to_be_loaded() -> None:
    """Each module of ours that is kept out of a start exists, so that a new name lets none slip through."""
    ours = {name for name in NOT_FOR_A_LIST | NOT_FOR_THE_FIRST_PAINT if name.startswith("queueboard")}

    assert not [name for name in ours if find_spec(name) is None]


@pytest.mark.parametrize(("file", "spared"), [("shop.qb", True), ("postgresql://bench@nowhere/shop", False)])
def test_a_shop_in_a_file_loads_no_server_s_driver(file: str, spared: bool) -> None:
    """Drivers of servers, which peewee loads wherever they lie, are left alone unless a server is named."""
    drivers = "[name for name in cli.SERVER_DRIVERS if sys.modules.get(name, 1) is None]"
    code = f"import sys\nfrom queueboard import cli\ncli._be_quick(['--file', {file!r}])\nprint(*{drivers})"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)

    assert done.stdout.split() == [*SERVER_DRIVERS] * spared


def test_each_file_of_commands_adds_those_that_stand_beside_its_name() -> None:
    """The list by which a typed command finds its file names exactly the commands that the file adds."""
    for family, names in FAMILIES.items():
        module = import_module(f"queueboard.cli.{family}")
        seen: list[str] = []

        def add(name: str, _command: Command, _says: str, seen: list[str] = seen) -> ArgumentParser:
            seen.append(name)
            return ArgumentParser()

        module.add_commands(add)
        assert sorted(seen) == sorted(names), family
