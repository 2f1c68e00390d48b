"""The way out to standard output and standard error; nothing that leaves here can command a terminal."""

import json
import re
import sys
from collections.abc import Mapping

from queueboard.papers.facts import Fact

_CONTROLS = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff]")
"""Control characters but for the line end, and halves of characters."""


def harmless(text: str) -> str:
    """The text without signs that could command a terminal."""
    return _CONTROLS.sub("", text)


def print_text(text: str) -> None:
    """Print; on a terminal without control characters (a comment in settings may hold any), else as it is."""
    sys.stdout.write(harmless(text) if sys.stdout.isatty() else text)


def print_json(facts: Mapping[str, Fact]) -> None:
    """Print as JSON in plain ASCII, which every terminal and every script reads alike."""
    sys.stdout.write(json.dumps(facts, indent=2) + "\n")


def print_trouble(sentence: str) -> None:
    """Print one sentence to standard error."""
    sys.stderr.write(harmless(sentence) + "\n")
