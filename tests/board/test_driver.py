"""What the board is drawn on, when it goes away."""

import io
import os
import signal

import pytest
from textual.drivers._writer_thread import MAX_QUEUED_WRITES, WriterThread

from queueboard.board.driver import Paper


class Gone(io.StringIO):
    """A terminal whose window was closed."""

    def write(self, text: str) -> int:
        """Refuse, as the system does."""
        raise OSError(5, "Input/output error")


def test_more_is_drawn_than_anybody_takes(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever is handed to a terminal that has gone is let go, and the board is told once that it has gone."""
    told: list[int] = []
    monkeypatch.setattr(os, "kill", lambda _, number: told.append(number))
    thread = WriterThread(Paper(Gone()))  # type: ignore[arg-type]  # it only writes, flushes, asks the number
    thread.start()

    for _ in range(3 * MAX_QUEUED_WRITES):
        thread.write("418-3")
    thread.stop()

    assert not thread.is_alive()
    assert told == [signal.SIGHUP]


def test_what_is_there_is_drawn_on() -> None:
    """A terminal that is there gets every letter."""
    screen = io.StringIO()
    paper = Paper(screen)

    paper.write("418")
    paper.write("-3")
    paper.flush()

    assert screen.getvalue() == "418-3"


def test_a_terminal_of_few_signs_gets_others_cell_for_cell() -> None:
    """A bar, a rule and a name on a terminal of ISO 8859-1: no sign is taken apart, none takes two cells."""
    bytes_drawn = io.BytesIO()
    paper = Paper(io.TextIOWrapper(bytes_drawn, encoding="iso-8859-1"))

    paper.write("\x1b[1m█░ ─ Müller · Łukasz")
    paper.flush()

    assert bytes_drawn.getvalue().decode("iso-8859-1") == "\x1b[1m#. - Müller · ?ukasz"
