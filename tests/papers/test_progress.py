"""Work that takes longer shows how far it is, on a terminal only."""

import argparse
import io
import sys
from pathlib import Path

import pytest

from queueboard.cli.common import shop_of
from queueboard.papers.output import print_text
from queueboard.papers.progress import AFTER_SECONDS, _standing, bar
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.checking import check
from queueboard.shop.keeping import copy_to
from queueboard.shop.opening import close_shop
from queueboard.shop.restoring import restore
from queueboard.values.progress import Doing, listening
from tests.shop.place import NOW, by, demo_shop, small_shop


class Terminal(io.StringIO):
    """Standard error on a terminal."""

    def isatty(self) -> bool:
        return True


def everything(folder: Path) -> None:
    """A shop is copied, written out, taken in, looked over and put back."""
    shop = demo_shop(folder / "shop.qb", NOW)
    copy_to(shop, folder / "copy.qb", NOW)
    write_out(shop, folder / "out.jsonl")
    close_shop(shop)
    take_in(folder / "taken.qb", folder / "out.jsonl", by())
    check(folder / "taken.qb", NOW)
    restore(folder / "taken.qb", folder / "copy.qb", by())


@pytest.mark.sqlite_file
def test_each_long_work_says_how_far_it_is(tmp_path: Path) -> None:
    """From copying to putting back each piece of work grows towards its whole, and comes to it."""
    told: list[tuple[Doing, int, int]] = []

    with listening(lambda *how_far: told.append(how_far)):
        everything(tmp_path)

    every = set(Doing) - {Doing.HANDING_OVER}  # which only a server asks for; tests/shop/test_on_server.py
    assert {doing for doing, *_ in told} == every
    assert all(0 <= done <= total for _, done, total in told)
    assert {doing for doing, done, total in told if done == total} == every


@pytest.mark.sqlite_file
@pytest.mark.parametrize("after_seconds", [0.0, AFTER_SECONDS * 3600])
def test_a_bar_stands_only_once_it_takes_longer(
    after_seconds: float, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Past the threshold the terminal shows what is done and how much of it; before it, nothing at all."""
    monkeypatch.setattr(sys, "stderr", screen := Terminal())

    with bar(after_seconds):
        everything(tmp_path)

    assert ("looking history over" in screen.getvalue()) is (after_seconds == 0)
    assert bool(screen.getvalue()) is (after_seconds == 0)


@pytest.mark.sqlite_file
def test_what_is_piped_has_no_bar(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A script reads sentences, never a bar."""
    with bar(0):
        everything(tmp_path)

    assert capsys.readouterr().err == ""


def test_work_that_does_not_tell_how_far_it_is_says_what_goes_on(monkeypatch: pytest.MonkeyPatch) -> None:
    """With words for it they stand there once it takes longer; what is printed takes them away first, for good."""
    monkeypatch.setattr(sys, "stderr", screen := Terminal())
    monkeypatch.setattr(sys, "stdout", io.StringIO())

    with bar(3600, "month: working it out"):
        standing = _standing.get()
        assert standing is not None
        assert screen.getvalue() == ""
        standing.say_working()
        assert "month: working it out" in screen.getvalue()
        assert "%" not in screen.getvalue()
        print_text("November\n")
        drawn = screen.getvalue()
        standing.say_working()
        standing(Doing.COPYING, 1, 2)

    assert screen.getvalue() == drawn


def test_a_bar_inside_another_is_that_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """A command that stands under a bar already draws no second one over it."""
    monkeypatch.setattr(sys, "stderr", Terminal())

    with bar(3600, "backup: working it out"):
        standing = _standing.get()
        with bar():
            assert _standing.get() is standing
    assert _standing.get() is None


def test_every_command_that_opens_the_shop_stands_under_a_bar(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The words are the command's name and that it works."""
    monkeypatch.setattr(sys, "stderr", Terminal())
    shop = small_shop(tmp_path)
    close_shop(shop)

    with shop_of(argparse.Namespace(file=shop.path, called="month")):
        standing = _standing.get()
        assert standing is not None
        assert standing.words == "month: working it out"
