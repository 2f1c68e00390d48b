"""The program as a process of its own: pipes, full disks, terminals that cannot draw."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from queueboard.cli.common import FINE, REFUSED, USAGE
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
    assert done.stderr.startswith(b"The machine refused: No space left")
    assert b"Traceback" not in done.stderr


def test_a_dumb_terminal_is_refused_by_the_board(empty: str) -> None:
    """Without a terminal that can be drawn on, the board says which commands print text."""
    done = run(empty, TERM="dumb")

    assert done.returncode == USAGE
    assert b"queueboard day" in done.stderr
