"""The tools that look at this tree: what they are told is true of it, and nothing of the person's own leaks in."""

import subprocess
import sys
import tomllib

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
