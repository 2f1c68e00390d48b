"""The way out to a terminal and to a script."""

import io
import sys

import pytest

from queueboard.papers.output import print_text, print_trouble

SENT = "one\n\x1b[31mtwo\x07 \u202ethree\u2066\u200f\n"


class Terminal(io.StringIO):
    """A stream that a person sees."""

    def isatty(self) -> bool:
        """True: somebody looks."""
        return True


def test_a_terminal_gets_nothing_that_commands_or_turns_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """Controls and direction marks stay away from a terminal and from the sentences of trouble; line ends pass."""
    out, trouble = Terminal(), io.StringIO()
    monkeypatch.setattr(sys, "stdout", out)
    monkeypatch.setattr(sys, "stderr", trouble)

    print_text(SENT)
    print_trouble(SENT)

    assert out.getvalue() == "one\n[31mtwo three\n"
    assert trouble.getvalue() == "one\n[31mtwo three\n\n"


def test_a_script_gets_the_text_as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nobody looks nothing is taken away: settings printed into a file are the settings."""
    out = io.StringIO()
    monkeypatch.setattr(sys, "stdout", out)

    print_text(SENT)

    assert out.getvalue() == SENT
