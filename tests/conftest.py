"""What every test starts from: no colours, themes, initials or shop files of the person's own terminal."""

import atexit
import gc
import os
import shutil
import sys
import tempfile
from collections.abc import Generator, Iterator

import pytest
from hypothesis import settings

from tests import engines, lending

OWN = ("QUEUEBOARD_", "TEXTUAL_")
"""How the variables begin that change what the program does."""

for name in [name for name in os.environ if name in {"NO_COLOR", "TEXTUAL"} or name.startswith(OWN)]:
    if name not in engines.CHOICE:
        del os.environ[name]
os.environ["TEXTUAL_ANIMATIONS"] = "none"  # read when textual is first imported
os.environ["XDG_CONFIG_HOME"] = tempfile.mkdtemp(prefix="queueboard-tests-")  # no choice of the person's own
atexit.register(shutil.rmtree, os.environ["XDG_CONFIG_HOME"], ignore_errors=True)

# Compiled code is kept, whatever the shell says: each worker and each program that a test starts would compile anew.
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False

# The same examples every time, so that a change that lands is one that was tried; no deadline, for a busy machine is no
# mistake of the program. `pytest --hypothesis-profile=search` looks for examples that nobody has seen yet.
settings.register_profile("steady", deadline=None, derandomize=True)
settings.register_profile("search", deadline=None)
settings.load_profile("steady")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers() -> int:
    """One more than processors: some tests wait for a program they started. Each more imports all tests once more."""
    return (os.cpu_count() or 1) + 1


@pytest.hookimpl(trylast=True)
def pytest_collection_finish() -> None:
    """Leave what was imported and collected out of the search for garbage: it stays to the end, and is large.

    Every screen makes and drops many objects; searching all the modules and tests behind them took a quarter of the
    processor time of the board's tests.
    """
    if "textual.app" in sys.modules:
        from tests.quick_screens import quick_screens

        quick_screens()
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 50, 100)


def pytest_configure(config: pytest.Config) -> None:
    """Start the server that the tests were asked to run on, once for all workers; a missing one is a failure."""
    for marker in engines.MARKERS:
        config.addinivalue_line("markers", marker)
    engines.begin()


def pytest_unconfigure() -> None:
    """Stop the server that was started for the tests."""
    engines.end()


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave out what is about the other engine, and count it as left out."""
    left_out = [item for item in items if not engines.concerned(item)]
    items[:] = [item for item in items if engines.concerned(item)]
    config.hook.pytest_deselected(items=left_out)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Which tests say something of an engine is not left to memory."""
    with engines.insisting(item):
        return (yield)


@pytest.fixture(scope="session", autouse=engines.on_server())
def _databases() -> Iterator[None]:
    """On a server every new shop gets a database of its own."""
    with lending.databases():
        yield


@pytest.fixture(autouse=engines.on_server())
def _given_back() -> Iterator[None]:
    """Those of a test go with it."""
    with lending.given_back():
        yield
