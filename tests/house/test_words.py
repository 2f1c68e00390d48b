"""The words on the screen are the trade's; words of code and of offices stay off it."""

import ast
import re
from collections.abc import Iterator

from tests.house.tree import ROOT, Source, sources

NEVER = re.compile(
    r"\b(tickets?|issues?|items?|skus?|tasks?|workflows?|sprints?|backlogs?|assignees?|resolved?|resolves|journal"
    r"|records|stores?|slack|forecasts?|tardiness|tardy|waivers?|imports?|imported|filters?|filtered|pass|passes)\b",
    re.IGNORECASE,
)
"""Words of offices and of our own code.

The screen says history, shop file, minutes free, done by, take in, show only."""


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
