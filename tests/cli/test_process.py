"""The program as a process of its own: pipes, full disks, terminals that cannot draw."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from queueboard.cli import INTERRUPTED
from queueboard.cli.common import FINE, NOTHING_FOUND, REFUSED, USAGE
from tests.house.tree import ROOT
from tests.pictures import HOSTILE_NAMES


def run(file: str, *arguments: str, **environment: str) -> subprocess.CompletedProcess[bytes]:
    """The program as a process of its own, without a terminal."""
    return subprocess.run(
        [sys.executable, "-m", "queueboard", "--file", file, *arguments],
        cwd=ROOT,
        env={"PATH": os.environ["PATH"], "HOME": os.environ.get("HOME", "/"), **environment},
        capture_output=True,
        check=False,
    )


def test_a_reader_that_has_enough_is_no_trouble(file: str) -> None:
    """`queueboard boxes --json | head -1` ends without a word on standard error."""
    command = f"'{sys.executable}' -m queueboard --file '{file}' boxes --json | head -1"
    done = subprocess.run(["bash", "-c", f"set -o pipefail; {command}"], cwd=ROOT, capture_output=True, check=False)

    assert done.returncode == FINE
    assert done.stderr == b""
    assert done.stdout == b"{\n"


def test_an_old_terminal_s_letters_are_no_trouble(file: str) -> None:
    """Where only ASCII can be written, names lose letters but nothing fails; JSON loses none."""
    plain = {"PYTHONIOENCODING": "ascii", "LC_ALL": "C"}

    assert run(file, "boxes", **plain).returncode == FINE
    boxes = json.loads(run(file, "boxes", "--json", **plain).stdout)["boxes"]
    assert {box["customer"]["name"] for box in boxes} == set(HOSTILE_NAMES)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_full_disk_behind_the_output_is_one_sentence(file: str) -> None:
    """Output that cannot be written ends with the code for refused and a sentence."""
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "queueboard", "--file", file, "boxes"],
            cwd=ROOT,
            stdout=full,
            stderr=subprocess.PIPE,
            check=False,
        )

    assert done.returncode == REFUSED
    assert done.stderr.startswith(b"The output could not be written: No space left")
    assert b"Traceback" not in done.stderr


def test_a_dumb_terminal_is_refused_by_the_board(empty: str) -> None:
    """Without a terminal that can be drawn on, the board says which commands print text."""
    done = run(empty, TERM="dumb")

    assert done.returncode == USAGE
    assert b"queueboard day" in done.stderr


def shell(line: str, file: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """A line of shell in which `queueboard` is the program on this file."""
    command = f"'{sys.executable}' -m queueboard --file '{file}'"
    return subprocess.run(
        ["bash", "-c", line.replace("queueboard", command)],
        cwd=ROOT,
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.parametrize("command", ["boxes", "boxes --json", "find Ola", "settings", "--help"])
def test_closed_output_is_one_sentence(command: str, file: str) -> None:
    """Where standard output was closed, the command says that nothing can be printed."""
    done = shell(f"queueboard {command} >&-", file)

    assert (done.returncode, done.stderr) == (REFUSED, "Nothing can be printed: standard output is closed.\n")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
@pytest.mark.parametrize("command", ["boxes", "boxes --json", "settings", "--help"])
def test_full_output_is_one_sentence(command: str, file: str) -> None:
    """Where standard output takes no more, one sentence and nothing else stands on standard error."""
    done = shell(f"queueboard {command} >/dev/full", file)

    assert (done.returncode, done.stderr) == (REFUSED, "The output could not be written: No space left on device.\n")


@pytest.mark.parametrize("gone", ["2>&-", "2>/dev/full"])
@pytest.mark.parametrize(
    ("command", "code"), [("boxes", FINE), ("box 99999", NOTHING_FOUND), ("box four", USAGE), ("--as", USAGE)]
)
def test_nobody_to_hear_the_trouble_changes_no_code(gone: str, command: str, code: int, file: str) -> None:
    """With standard error closed or full, the exit code is the same and no other sentence appears anywhere."""
    done = shell(f"queueboard {command} {gone}", file)

    assert done.returncode == code
    assert done.stderr == ""
    assert bool(done.stdout) == (code == FINE)


@pytest.mark.parametrize("closed", ["<&-", ">&-", "2>&-"])
def test_a_closed_stream_is_no_terminal(closed: str, file: str) -> None:
    """The board wants all three streams to be a terminal, and says so without one of them."""
    assert shell(f"queueboard {closed}", file, TERM="xterm").returncode == USAGE


@pytest.mark.parametrize("command", ["boxes", "boxes --json", "settings", "--help"])
def test_a_reader_that_went_away_is_no_trouble(command: str, file: str) -> None:
    """Whoever closes the pipe before the first line has enough; nothing is said about it."""
    done = shell(f"(trap '' PIPE; until ! printf x 2>/dev/null; do :; done; queueboard {command}) | true", file)

    assert done.stderr == ""


INTERRUPTING = """
import os, signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
import {module} as module
def interrupt(*args, **kwargs):
    os.kill(os.getpid(), signal.SIGINT)
    signal.pause()
module.{name} = interrupt
from queueboard.cli import main
sys.exit(main(sys.argv[1:]))
"""
"""Where the tests run in the background, what they start is deaf to Ctrl+C unless it says otherwise."""


@pytest.mark.parametrize(
    ("module", "name"),
    [
        pytest.param("queueboard.records.database", "look_before_opening", marks=pytest.mark.sqlite_file),
        pytest.param("queueboard.shop.on_server", "open_on_server", marks=pytest.mark.server),
        ("queueboard.shop.looking", "look"),
        ("queueboard.papers.day_sheet", "day_sheet"),
        ("queueboard.papers.output", "print_text"),
    ],
)
def test_a_command_stopped_by_ctrl_c_has_its_own_code(module: str, name: str, file: str) -> None:
    """Ctrl+C at any step of a command ends it with 130 and one word."""
    code = INTERRUPTING.format(module=module, name=name)
    done = subprocess.run(
        [sys.executable, "-c", code, "day", "--file", file], cwd=ROOT, capture_output=True, check=False
    )

    assert (done.returncode, done.stdout, done.stderr) == (INTERRUPTED, b"", b"Stopped.\n")


def test_ctrl_c_while_the_program_loads_has_the_same_code() -> None:
    """Ctrl+C in the first moment, while the program is still being read, is no different."""
    code = """
import os, signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
class Interrupts:
    def find_spec(self, name, path, target=None):
        if name == "peewee":
            os.kill(os.getpid(), signal.SIGINT)
            signal.pause()
sys.meta_path.insert(0, Interrupts())
from queueboard.cli import main
sys.exit(main(["day"]))
"""
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, check=False)

    assert (done.returncode, done.stdout, done.stderr) == (INTERRUPTED, b"", b"Stopped.\n")


def test_ctrl_c_while_a_shop_is_made_leaves_nothing(tmp_path: Path) -> None:
    """A start that is stopped midway takes its half-made file along."""
    code = INTERRUPTING.format(module="queueboard.shop.starting", name="take_settings")
    arguments = ["start", "--file", str(tmp_path / "new" / "shop.qb")]
    done = subprocess.run([sys.executable, "-c", code, *arguments], cwd=ROOT, capture_output=True, check=False)

    assert (done.returncode, done.stderr) == (INTERRUPTED, b"Stopped.\n")
    assert list(tmp_path.iterdir()) == []


def test_a_narrow_terminal_gets_every_command(file: str) -> None:
    """Twenty columns break no command and no help."""
    for command in ("day", "late", "labels", "boxes", "--help", "day --help"):
        assert shell(f"queueboard {command}", file, COLUMNS="20").returncode == FINE
