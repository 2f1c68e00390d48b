"""A failure of the program: one sentence, a report for the owner's eyes, nothing of anybody's in either."""

import stat
import sys
from pathlib import Path

import pytest
from ptyprocess import PtyProcess

from queueboard.board.crash import NAME, report_text, write_report
from queueboard.shop.opening import Shop

ROOT = Path(__file__).parents[2]

FAILING = """
import sys
from datetime import datetime, UTC
from pathlib import Path
from textual._xterm_parser import XTermParser
from queueboard.board.run import run_board
from queueboard.board.screens.board import BoardScreen
from queueboard.shop.opening import open_shop

def fail(self):
    name = self.desk.picture.boxes[0].customer.name
    raise ValueError(f"no such {name}")

def garble(self, text):
    raise ValueError("no such key")

if sys.argv[2] == "key":
    BoardScreen.action_undo = fail
else:
    XTermParser.feed = garble
sys.exit(run_board(open_shop(Path(sys.argv[1])), "MB", lambda: datetime.now(UTC)))
"""


def failure(words: str) -> ValueError:
    """An error with a person's words in it, raised and caught."""
    secret = words
    try:
        raise ValueError(secret)
    except ValueError as error:
        return error


def test_the_report_has_places_and_no_words() -> None:
    """The kind of error and where it was stand in the report; neither its words nor any value does."""
    text = report_text(failure("Maren Tallis 0555"), "2026-11-26 09:12")

    assert "builtins.ValueError" in text
    assert "board/test_crash.py:" in text
    assert "textual " in text
    assert "Maren" not in text
    assert str(ROOT) not in text


def test_the_report_is_for_the_owner_only(tmp_path: Path) -> None:
    """Nobody else may read the report, also when an older one lay there for all to read."""
    (tmp_path / NAME).write_text("an earlier one")
    (tmp_path / NAME).chmod(0o644)

    path = write_report(failure("x"), tmp_path, "now")

    assert path is not None
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert "an earlier one" not in path.read_text()


def test_a_folder_that_cannot_be_written_is_no_second_failure(tmp_path: Path) -> None:
    """Where no report can be written there is none, and nothing more goes wrong."""
    assert write_report(failure("x"), tmp_path / "not here", "now") is None


@pytest.mark.parametrize("where", ["key", "reading keys"])
def test_a_failing_program_gives_the_terminal_back(two_boxes: Shop, tmp_path: Path, where: str) -> None:
    """A failure, also where keys are read, ends the board with code 1, a sentence and a report; no name in either."""
    script = tmp_path / "failing.py"
    script.write_text(FAILING)
    process = PtyProcess.spawn(
        [sys.executable, str(script), str(two_boxes.path), where],
        cwd=str(ROOT),
        env={"PYTHONPATH": str(ROOT), "TERM": "xterm-256color", "LANG": "C.UTF-8", "HOME": str(tmp_path)},
        dimensions=(24, 80),
    )
    raw = b""
    while b"Verrin" not in raw:
        raw += process.read(65536)
    process.write(b"u")
    try:
        while True:
            raw += process.read(65536)
    except EOFError:
        process.wait()
    after = raw[raw.rfind(b"\x1b[?1049l") :].decode(errors="replace")

    assert process.exitstatus == 1
    assert "queueboard failed and has closed" in after
    assert "Traceback" not in after
    assert "Verrin" not in after
    report = (two_boxes.path.parent / NAME).read_text()
    assert "ValueError" in report
    assert "Verrin" not in report
    assert "Tallis" not in report
