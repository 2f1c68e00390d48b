"""The tools that look at this tree: what they are told is true of it, and nothing of the person's own leaks in."""

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tests.house.tree import ROOT


def test_every_exemption_of_the_linter_names_something_there() -> None:
    """A pattern under per-file-ignores that fits no file would wait for a file of that name to be let off."""
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    patterns = tomllib.loads(text)["tool"]["ruff"]["lint"]["per-file-ignores"]

    assert patterns
    assert [pattern for pattern in patterns if not any(ROOT.glob(pattern))] == []


def test_no_test_sees_the_shop_of_whoever_runs_it() -> None:
    """Every variable of ours is gone before the first test, also one that is added later."""
    code = "import os, tests.conftest; print([name for name in os.environ if name.startswith('QUEUEBOARD_')])"
    own = {"QUEUEBOARD_AS": "ZZ", "QUEUEBOARD_FILE": "/nowhere/shop.qb", "QUEUEBOARD_LATER": "1"}
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, env=own, capture_output=True, text=True, check=True)

    assert done.stdout == "[]\n"


@pytest.mark.parametrize("fails", ["", "pytest", "ruff", "mypy", "lint-imports", "python"])
def test_whatever_fails_the_script_of_all_checks_fails(fails: str, tmp_path: Path) -> None:
    """Also what runs beside the tests on a server; it is printed behind them, to the end or to what failed."""
    (tmp_path / ".ci").mkdir()
    (tmp_path / "README.md").write_text("<!-- run all tests -->\n```\necho tests\n```\n", encoding="utf-8")
    on_server = "<!-- run all tests on a server -->\n```\n.venv/bin/pytest\n```\n"
    (tmp_path / "DEVELOPERS.md").write_text(on_server, encoding="utf-8")
    script = shutil.copy(ROOT / ".ci" / "run", tmp_path / ".ci")
    tools = tmp_path / ".venv" / "bin"
    tools.mkdir(parents=True)
    for tool in ("pytest", "ruff", "mypy", "lint-imports", "python"):
        (tools / tool).write_text(f"#!/bin/sh\necho ran {tool}\nexit {3 * (tool == fails)}\n", encoding="utf-8")
        (tools / tool).chmod(0o755)

    done = subprocess.run(["bash", script], capture_output=True, text=True, check=False)

    said = [line for line in done.stdout.splitlines() if line.startswith("ran")]
    all_said = ["ran pytest", "ran ruff", "ran ruff", "ran mypy", "ran lint-imports", "ran python"]
    stops = all_said.index(f"ran {fails}") + 1 if fails not in {"", "pytest"} else len(all_said)
    assert (done.returncode, said) == (3 if fails else 0, all_said[:stops])
