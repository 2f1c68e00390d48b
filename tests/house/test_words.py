"""The words on the screen are the trade's; words of code and of offices stay off it."""

import ast
import re
from collections.abc import Iterator
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.running import build_parser
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from tests.house.keys_table import holders, written
from tests.house.test_readme import commands
from tests.house.tree import ROOT, Source, sources

NEVER = re.compile(
    r"\b(tickets?|issues?|items?|skus?|tasks?|workflows?|sprints?|backlogs?|assignees?|resolved?|resolves|journal"
    r"|records|stores?|slack|forecasts?|tardiness|tardy|waivers?|imports?|imported|filters?|filtered|pass|passes)\b",
    re.IGNORECASE,
)
"""Words of offices and of our own code.

The screen says history, shop file, minutes free, done by, take in, show only."""


BOX = "BOX"
"""Stands for the number of an open box."""
SPOKEN = (
    *("day", "late", "labels", "boxes", "owing", "shelf", "said", "evening", "month", "swaps", "market", "pad"),
    *("compare", "chart", "settings", "check", f"box {BOX}", f"message {BOX} --ready", f"card {BOX}", f"slip {BOX}"),
    *(f"stub {BOX}", f"tags {BOX}", "find tallis", "loose chef 20 black", "promise 4 chef --on fri", "customer tallis"),
    *(
        "export NEW.jsonl",
        "take NEW.jsonl --file OTHER.qb",
        "backup NEW.qb",
        "restore NEW.qb",
        "start --file NEWEST.qb",
    ),
    *("demo --file NEWER.qb", "orders ORDERS.csv", "orders ORDERS.csv --take --as MB"),
)
"""Every command with what it needs; a name in capitals is a file of the test."""
REFUSED = (
    "box 9",
    "find nobody",
    "take NO.jsonl --file NONE.qb",
    "orders BAD.csv",
    "customer nobody",
    "day --paper A9",
)
"""Commands that end with a sentence about what is wrong."""
ORDERS = "name,knives,comes on\nBo Kestle,3,2099-05-04\n"
"""An order that can be taken in."""


def docstrings(source: Source) -> set[ast.Constant]:
    """The strings in a file that are statements of their own: docstrings and notes under a field."""
    return {
        node.value
        for node in ast.walk(source.tree)
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }


def sentences(source: Source) -> Iterator[tuple[int, str]]:
    """Strings of two words or more: what a person may come to read, with their line."""
    unread = docstrings(source)
    for node in ast.walk(source.tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in unread and " " in node.value:
            yield node.lineno, node.value


def test_no_screen_shows_a_word_of_offices() -> None:
    """The screens kept beside the tests show none of the words that belong to offices or code."""
    offenders = [
        f"{path.relative_to(ROOT)}:{number} {found.group()}: {line.strip()}"
        for path in sorted((ROOT / "tests" / "screens").rglob("*.txt"))
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1)
        for found in NEVER.finditer(line)
    ]

    assert not offenders, "\n".join(offenders)


def test_no_sentence_in_the_program_uses_a_word_of_offices() -> None:
    """No sentence that the program could say, in a notice, an error or a title, has one of these words."""
    offenders = [
        f"{source.where}:{line} {found.group()}: {text.strip()}"
        for source in sources("queueboard")
        if source.room != "records"
        for line, text in sentences(source)
        for found in NEVER.finditer(text)
    ]

    assert not offenders, "\n".join(offenders)


def test_the_closed_lists_have_none_either() -> None:
    """No value of the closed lists in words.py is such a word."""
    (words,) = [source for source in sources("queueboard") if source.where == "queueboard/words.py"]
    values = [node.value for node in ast.walk(words.tree) if isinstance(node, ast.Constant)]

    assert len(values) > 60
    assert not [value for value in values if isinstance(value, str) and " " not in value and NEVER.fullmatch(value)]


def open_number(file: Path) -> int:
    """The number of an open box."""
    shop = open_shop(file)
    try:
        return look(shop, datetime.now(UTC)).boxes[0].box.number
    finally:
        close_shop(shop)


def said_by(command: str, number: int, file: Path, folder: Path, capsys: pytest.CaptureFixture[str]) -> str:
    """All that a command prints, its file and a box filled in."""
    words = [
        str(folder / word) if word.partition(".")[0].isupper() and "." in word else word for word in command.split()
    ]
    words = [str(number) if word == BOX else word for word in words]
    with suppress(SystemExit):  # argparse has said what is wrong with what was typed
        main([*([] if "--file" in words else ["--file", str(file)]), *words], clock=lambda: datetime.now(UTC))
    said = capsys.readouterr()
    return (said.out + said.err).replace(str(folder), "").replace(str(file), "")


def test_no_command_says_a_word_of_offices(shop_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What each command prints of the invented shop, as lists, papers, reports and refusals, has none of the words."""
    (tmp_path / "ORDERS.csv").write_text(ORDERS, encoding="utf-8")
    (tmp_path / "BAD.csv").write_text("name,knives\n,many\n", encoding="utf-8")
    file = tmp_path / "shop.qb"
    file.write_bytes(shop_file.read_bytes())
    file.chmod(0o600)
    number = open_number(file)
    said = {command: said_by(command, number, file, tmp_path, capsys) for command in (*SPOKEN, *REFUSED)}

    assert {command.split()[0] for command in SPOKEN} == {name for name, _ in commands(build_parser())}
    assert not [command for command, text in said.items() if not text.strip()]
    assert not [(command, found.group()) for command, text in said.items() for found in NEVER.finditer(text)]


def test_no_help_of_a_command_says_one(capsys: pytest.CaptureFixture[str]) -> None:
    """What --help prints, of the program and of each command, has none of the words."""
    offenders = []
    for name, parser in (("", build_parser()), *commands(build_parser())):
        parser.print_help()
        offenders += [(name, found.group()) for found in NEVER.finditer(capsys.readouterr().out)]

    assert not offenders


def test_no_key_is_called_by_one() -> None:
    """Labels and sentences of keys, a single word too, have none of the words."""
    keys = [binding for holder in holders() for binding in written(holder)]

    assert not [key.id for key in keys if NEVER.search(f"{key.description} {key.tooltip}")]


@pytest.mark.parametrize("text", ["3 tickets left", "Stored in the journal.", "a second pass", "TASK"])
def test_such_a_word_would_be_found(text: str) -> None:
    """The control: a sentence that has one is caught, in capitals and in the plural too."""
    assert NEVER.search(text)
