"""README says what the program does: its commands, its keys and the two lines that start everything."""

import argparse
import re
import subprocess
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

from queueboard.cli.running import build_parser
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from queueboard.words import Column
from tests.house import keys_table
from tests.house.tree import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def commands(parser: argparse.ArgumentParser) -> Iterator[tuple[str, argparse.ArgumentParser]]:
    """Each command of the program with its own parser."""
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            yield from action.choices.items()


def options(parser: argparse.ArgumentParser) -> set[str]:
    """The long options of a parser, help aside."""
    names = {name for action in parser._actions for name in action.option_strings if name.startswith("--")}
    return names - {"--help"}


def marked(mark: str) -> str:
    """The command that stands under a mark in README."""
    found = re.search(rf"<!-- {mark} -->\n+```\w*\n(.+?)\n```", README, re.DOTALL)
    assert found, f"README has no command marked {mark}"
    return found[1]


def test_every_command_is_in_readme() -> None:
    """README names every command of the program in its list of commands."""
    missing = [name for name, _ in commands(build_parser()) if f"`queueboard {name}" not in README]

    assert not missing


def test_every_option_is_in_readme() -> None:
    """README names every option of the program and of each of its commands."""
    parsers = [build_parser(), *(parser for _, parser in commands(build_parser()))]
    missing = sorted({name for parser in parsers for name in options(parser) if name not in README})

    assert not missing


def test_readme_names_no_command_that_is_not_there() -> None:
    """Every `queueboard WORD` in README is a command of the program."""
    named = set(re.findall(r"queueboard ([a-z]+)", re.sub(r"(?s)<!--.*?-->", "", README)))
    known = {name for name, _ in commands(build_parser())}

    assert named & known
    assert {word for word in named if re.search(rf"[`/]queueboard {word}", README)} <= known


def test_readme_opens_with_the_job_then_two_commands_then_a_picture() -> None:
    """One paragraph, the demo's command, the tests' command and the board's picture stand in this order."""
    _title, paragraph, *_ = README.split("\n\n")
    places = [
        README.index(part) for part in (paragraph, marked("open the demo"), marked("run all tests"), "](.pictures/")
    ]

    assert len(paragraph) > 200
    assert places == sorted(places)


def test_the_script_of_all_checks_runs_readme_s_own_command() -> None:
    """.ci/run holds no test command of its own; it reads README and DEVELOPERS, whole, and those end in pytest."""
    script = ROOT / ".ci" / "run"

    def shown(what: str) -> str:
        return subprocess.run(["bash", script, what], capture_output=True, text=True, check=True).stdout.strip()

    assert shown("--show") == marked("run all tests")
    assert shown("--show").endswith("pytest")
    assert shown("--show-server") in DEVELOPERS
    assert shown("--show-server").endswith("QUEUEBOARD_TEST_ENGINE=postgresql .venv/bin/pytest")
    assert "pytest" not in script.read_text(encoding="utf-8")


def test_the_keys_in_readme_are_the_keys_of_the_board() -> None:
    """README's table of keys is what `python -m tests.house.keys_table` writes."""
    written = README.partition(keys_table.START)[2].partition(keys_table.END)[0]

    assert written == keys_table.table()


def test_the_numbers_in_readme_are_on_the_invented_shop_s_board(shop_file: Path) -> None:
    """What README bids type works in the demo: its knives are there and move on, of its boxes something can go."""
    named = set(re.findall(r"`(?:queueboard box )?([1-9][0-9]{2})(?:-([0-9]+))?`", README))
    shop = open_shop(shop_file)
    picture = look(shop, datetime.now(UTC))
    close_shop(shop)

    assert {bool(knife) for _, knife in named} == {True, False}
    for number, knife in named:
        box = picture.box(int(number))
        assert box is not None
        assert box.ready_count
        assert not knife or any(one.tag == f"{number}-{knife}" for one in box.in_column(Column.ON_BENCH))
