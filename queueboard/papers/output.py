"""The way out to standard output and standard error; nothing that leaves here can command a terminal."""

import io
import json
import os
import re
import sys
from collections.abc import Mapping
from typing import TYPE_CHECKING, TextIO

from queueboard.clean import without_turns
from queueboard.errors import FileError
from queueboard.papers.plain_signs import signs_for
from queueboard.papers.progress import end_bar

if TYPE_CHECKING:
    from queueboard.papers.facts import Fact

_CONTROLS = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff]")
"""Control characters but for the line end, and halves of characters."""


def harmless(text: str) -> str:
    """The text without signs that could command a terminal or turn its lines."""
    return _CONTROLS.sub("", without_turns(text))


def print_text(text: str) -> None:
    """Print; on a terminal without control characters (a comment in settings may hold any), else as it is."""
    _write(harmless(text) if sys.stdout is not None and sys.stdout.isatty() else text)


def print_json(facts: Mapping[str, "Fact"]) -> None:
    """Print as JSON in plain ASCII, which every terminal and every script reads alike."""
    _write(json.dumps(facts, indent=2) + "\n")


def print_csv(text: str) -> None:
    """Print CSV with its own line ends, in UTF-8 whatever the machine's usual; on a terminal without controls."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(encoding="utf-8", newline="")
    print_text(text)


def print_trouble(sentence: str) -> None:
    """Print one sentence to standard error; where nobody can hear it, the exit code has to do."""
    if sys.stderr is None:
        return
    try:
        sys.stderr.write(harmless(sentence).translate(signs_for(sys.stderr)) + "\n")
        sys.stderr.flush()
    except OSError:
        let_go(sys.stderr)


def _write(text: str) -> None:
    """Write to standard output, to the end; FileError says why not, but for a reader who has enough."""
    if sys.stdout is None:
        raise FileError("Nothing can be printed: standard output is closed.")
    end_bar()
    try:
        sys.stdout.write(text.translate(signs_for(sys.stdout)))
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        let_go(sys.stdout)
        raise FileError(f"The output could not be written: {error.strerror}.") from None


def let_go(stream: TextIO) -> None:
    """Lead a stream that failed into nothing: what is left in it must not fail again when Python ends."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
