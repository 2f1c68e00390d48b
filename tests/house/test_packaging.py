"""What is built is what is here: every room, the screens' styles and the starter settings travel in the wheel."""

import shutil
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest

from tests.house.tree import PACKAGE, ROOT

SUFFIXES = {".tcss", ".sql", ".typed", ".py", ".j2"}
LISTED = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"]["packages"]


def test_every_room_is_packed() -> None:
    """The packages written out in pyproject.toml are the folders of the package, and the seed beside it."""
    rooms = {
        ".".join(folder.relative_to(ROOT).parts)
        for folder in [PACKAGE, *PACKAGE.rglob("*")]
        if folder.is_dir() and any(folder.glob("*.py"))
    }
    seeds = {
        ".".join(["queueboard", "_seed", *folder.relative_to(ROOT / "seed").parts])
        for folder in [ROOT / "seed", *(ROOT / "seed").rglob("*")]
        if folder.is_dir() and folder.name != "__pycache__"
    }

    assert set(LISTED) == rooms | seeds


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder that holds only what the wheel holds."""
    copy = tmp_path_factory.mktemp("checkout")
    for name in ("queueboard", "seed"):
        shutil.copytree(ROOT / name, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md"):
        shutil.copy(ROOT / name, copy / name)
    build = "from setuptools.build_meta import build_wheel; build_wheel('out')"
    subprocess.run([sys.executable, "-c", build], cwd=copy, check=True, capture_output=True)
    (wheel,) = (copy / "out").glob("*.whl")
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(copy / "unpacked")
    return copy / "unpacked"


def test_the_wheel_has_everything_that_is_not_code(unpacked: Path) -> None:
    """The wheel holds each style sheet, each template, each seed file and the mark that says it is typed."""
    here = {path.relative_to(ROOT) for path in PACKAGE.rglob("*") if path.suffix in SUFFIXES}
    seed = {path for path in (ROOT / "seed").rglob("*") if path.is_file() and "__pycache__" not in path.parts}
    expected = here | {Path("queueboard", "_seed", path.relative_to(ROOT / "seed")) for path in seed}

    packed = {path.relative_to(unpacked) for path in unpacked.rglob("*") if path.is_file()}

    assert not expected - packed
    assert Path("queueboard", "py.typed") in packed


def test_the_wheel_runs_far_from_the_checkout(unpacked: Path, tmp_path: Path) -> None:
    """From an unpacked wheel, in another folder, the demo shop is made and then lists its boxes."""
    demo = str(tmp_path / "demo.qb")

    def queueboard(*arguments: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-P", "-m", "queueboard", *arguments],
            cwd=tmp_path,
            env={"PYTHONPATH": str(unpacked), "HOME": str(tmp_path), "PATH": "/usr/bin:/bin", "PYTHONUTF8": "1"},
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            check=False,
        )

    made = queueboard("demo", "--file", demo)
    listed = queueboard("--file", demo, "boxes")

    assert made.returncode == 0, made.stderr
    assert listed.returncode == 0, listed.stderr
    assert "417" in listed.stdout
